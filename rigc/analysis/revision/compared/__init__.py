"""What two revisions say of a design, aspect by aspect, and what of it differs."""
