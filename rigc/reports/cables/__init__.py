"""The tables of the cable list, one module each."""
