"""The tables of the MIDI and control map and of the preset sheet."""
