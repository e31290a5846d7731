"""The path of the sound, in each state of the rig."""
