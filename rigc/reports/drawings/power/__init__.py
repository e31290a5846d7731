"""What feeds what."""
