"""What becomes of each lead, and which is made of which."""
