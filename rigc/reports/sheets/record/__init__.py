"""For who keeps the rig."""
