"""The sheet of changes between two revisions."""
