"""Wishes for places: what they mean on a board, by how much they are missed, and why."""
