"""For who makes, labels and tests."""
