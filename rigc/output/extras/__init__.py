"""Formats that need a package which not everybody carries."""
