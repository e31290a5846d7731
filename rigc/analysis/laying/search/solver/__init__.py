"""The task of a board as a constraint solver reads it: an optional extra, which proves what the search only finds."""
