"""The parts of the level table."""
