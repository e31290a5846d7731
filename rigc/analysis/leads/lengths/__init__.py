"""The way of each lead over or under the deck, and how long it is."""
