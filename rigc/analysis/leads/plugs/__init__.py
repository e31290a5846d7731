"""The room that plugs take on the decks."""
