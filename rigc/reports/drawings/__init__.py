"""Drawings: shapes in millimetres, in no format."""
