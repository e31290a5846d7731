"""What is bought, cut and handed out for the rig."""
