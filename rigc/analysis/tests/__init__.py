"""The tests of the built board: where they are made, and what each reading must keep to."""
