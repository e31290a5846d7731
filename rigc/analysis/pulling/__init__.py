"""What stores hand out for a rig: plugs, cable, ready leads, strips, small parts."""
