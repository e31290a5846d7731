"""Places for the things that the source leaves without one."""
