"""Strips and tape: what holds each unit on the deck."""
