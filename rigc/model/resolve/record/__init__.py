"""What was built, measured, changed and noted."""
