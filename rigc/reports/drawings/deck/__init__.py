"""The board from above, from below, from the side, and at full size."""
