"""Things that leads hold together in rows: how they go in where little room is, and how few of them are laid best."""
