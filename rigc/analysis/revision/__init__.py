"""What differs between two revisions, and the work that follows from it."""
