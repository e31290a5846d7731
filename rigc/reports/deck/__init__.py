"""Places and holes as tables."""
