"""The board as it was built, which is not the design."""
