"""Grounds and rings as tables."""
