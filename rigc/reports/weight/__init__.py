"""Masses and their limits as tables."""
