"""Levels and parallel ways as tables."""
