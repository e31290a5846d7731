"""What is heard when one thing breaks, and how that thing is found."""
