"""The tables of the unit schedule: what is stated of each thing, block by block."""
