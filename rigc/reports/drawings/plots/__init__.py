"""Curves over an axis."""
