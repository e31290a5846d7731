"""Numbers with a unit, as written -> numbers in the unit that the model holds."""
