"""Numbers that know what they were reckoned from."""
