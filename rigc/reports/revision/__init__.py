"""What sheets and pages about two revisions, or about a substitute, are made of."""
