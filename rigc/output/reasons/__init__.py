"""What a figure was reckoned from, told: as data, and in words."""
