"""Sheets -> text in a format."""
