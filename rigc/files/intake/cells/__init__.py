"""The text of a cell -> what the language says in its place, or why it can't be told."""
