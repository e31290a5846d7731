"""The parts of the power table."""
