"""Every lead of the rig: its number, its ends, plugs, cable and label."""
