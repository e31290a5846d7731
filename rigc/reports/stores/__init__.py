"""What is bought, cut and handed out, as tables."""
