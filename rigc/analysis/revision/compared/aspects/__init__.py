"""What can be said of a revision, one kind of thing a file: `ASPECTS` is a function that yields aspects."""
