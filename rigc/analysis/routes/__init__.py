"""The ways of all leads together: which lane each takes, what crosses what."""
