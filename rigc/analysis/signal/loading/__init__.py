"""What hangs on each output and each pickup, and what of the treble is left."""
