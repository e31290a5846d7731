"""For who drills and mounts."""
