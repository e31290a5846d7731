"""The tables of the strip sheet that tell of rails, plates and rolls, one module each."""
