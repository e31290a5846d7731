"""What can be wrong, and how it is told."""
