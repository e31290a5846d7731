"""What can be wrong with what the sources say: one rule a file."""
