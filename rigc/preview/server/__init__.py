"""The one room that speaks HTTP, by the standard library: one person asks, on the same machine."""
