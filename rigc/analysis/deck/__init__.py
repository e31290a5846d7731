"""What stands where on a deck, and what is in its way."""
