"""Groups placed on sites at least cost, with the proof that there is no cheaper way."""
