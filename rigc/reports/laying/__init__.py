"""Room on decks, and the places chosen, as tables."""
