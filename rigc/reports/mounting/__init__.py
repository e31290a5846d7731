"""Strips, tape and plates as tables."""
