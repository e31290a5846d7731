"""The way of the signal through the rig."""
