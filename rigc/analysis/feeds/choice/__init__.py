"""Choosing outlets for the units that the source leaves without one."""
