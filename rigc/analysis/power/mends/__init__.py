"""Ways to feed a unit otherwise, as edits of the source."""
