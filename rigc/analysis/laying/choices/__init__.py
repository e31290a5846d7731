"""What is chosen beside places: the side of the deck, and plugs, where the usual ones leave no room."""
