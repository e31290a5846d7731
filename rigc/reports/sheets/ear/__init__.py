"""For who cares how it sounds."""
