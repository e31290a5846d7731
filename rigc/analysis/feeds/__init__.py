"""Which outlet feeds which unit: as stated, or chosen."""
