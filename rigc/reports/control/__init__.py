"""MIDI, presets and settings as tables."""
