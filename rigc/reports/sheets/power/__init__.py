"""For who wires power."""
