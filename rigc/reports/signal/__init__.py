"""Chains, loops and joins as tables."""
