"""The search for places, in numbers alone."""
