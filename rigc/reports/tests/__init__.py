"""Tests and readings as tables."""
