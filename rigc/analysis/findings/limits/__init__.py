"""Every number that is judged by a limit, one subject a file, and how sure it is that the limit is kept."""
