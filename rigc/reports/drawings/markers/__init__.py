"""Markers for both ends of each lead."""
