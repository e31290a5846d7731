"""Whether a substitute fits, told in a page."""
