"""Searches that know numbers and no rig."""
