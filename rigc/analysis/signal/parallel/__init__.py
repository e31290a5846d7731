"""Ways side by side: blends, several amps, and how they add up."""
