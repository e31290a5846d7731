"""How the grounds are joined."""
