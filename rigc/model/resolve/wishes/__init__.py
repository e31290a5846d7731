"""Statements about signal, power, leads and playing."""
