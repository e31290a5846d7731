"""Outlets, supplies, units and batteries as tables."""
