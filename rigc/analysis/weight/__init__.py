"""What the board weighs, in its case and without, and where it balances."""
