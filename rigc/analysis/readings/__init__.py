"""Readings: where the usual tests are made on a rig, and what each must keep to."""
