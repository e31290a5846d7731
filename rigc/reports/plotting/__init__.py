"""Parts of a plot: axes and their ticks, curves cut to the frame, labels that do not overlap."""
