"""Loading as tables and words."""
