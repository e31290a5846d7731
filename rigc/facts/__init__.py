"""Numbers that rigc relies on, each with its source."""
