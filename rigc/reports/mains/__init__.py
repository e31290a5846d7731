"""Mains as tables."""
