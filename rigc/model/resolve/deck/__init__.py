"""Decks, cases and places."""
