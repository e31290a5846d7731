"""Two revisions of a board, one over the other."""
