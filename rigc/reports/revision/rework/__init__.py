"""The steps from one board to the next."""
