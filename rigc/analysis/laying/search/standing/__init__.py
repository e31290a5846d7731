"""Whether all have room at all, as many as have, and what can't stand together."""
