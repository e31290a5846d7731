"""The rig: everything that the sources say, resolved to things and numbers."""
