"""What people say who have not seen the reference -> lines of this language, with their own numbers, names and texts in them."""
