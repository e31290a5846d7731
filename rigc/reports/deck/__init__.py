"""The deck on paper: plan, view from below, elevations, holes, clashes of plugs, and a print at full size."""
