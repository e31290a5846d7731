"""The tables of the mass-and-balance sheet, one module each."""
