"""What was changed, and what was built, as tables."""
