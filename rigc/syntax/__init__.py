"""Text -> what was written, as nodes; and every mistake of a file in one run."""
