"""For who sets up and plays."""
