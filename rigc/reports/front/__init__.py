"""What holds the sheets together: the front page, and the codes by which they are told."""
