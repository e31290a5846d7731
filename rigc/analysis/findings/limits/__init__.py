"""Limits that guesses may carry a figure over, one subject a file."""
