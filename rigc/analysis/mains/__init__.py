"""Each supply at the mains of each country, and the radio bands there."""
