"""What the sheets of tests, of the built board and of its revisions are made of."""
