"""Volts and currents: what each outlet, supply and lead carries and loses."""
