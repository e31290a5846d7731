"""Outlines seen from above: how they meet, how far they are apart."""
