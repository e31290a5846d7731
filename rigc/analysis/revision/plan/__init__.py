"""The work from one board to the next, step by step."""
