"""Where to put what has no stated place: a task in numbers alone, and the search that solves it."""
