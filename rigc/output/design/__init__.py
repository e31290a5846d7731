"""The whole computed design as data, and the schema of its shape."""
