"""What can be wrong here: one rule a file."""
