"""MIDI, expression and switches: what is sent, set and joined."""
