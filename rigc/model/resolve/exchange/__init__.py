"""A rig with one unit in the place of another."""
