"""The parts of the mains sheet."""
