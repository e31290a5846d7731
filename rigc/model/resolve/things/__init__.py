"""Blocks of units, supplies, instruments, panels and stock -> the things they describe."""
