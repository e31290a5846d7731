"""What the ground sheet is made of."""
