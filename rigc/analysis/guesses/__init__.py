"""Results that lean on a guess."""
