"""A unit by itself."""
