"""Tables about chosen places."""
