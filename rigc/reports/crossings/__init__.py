"""The tables of the crossing list."""
