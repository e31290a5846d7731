"""MIDI ways, messages, channels and expression jacks: what the control map is made of."""
