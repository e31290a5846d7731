"""Stated leads that no other statement joins."""
