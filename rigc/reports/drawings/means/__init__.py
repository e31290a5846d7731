"""What drawings share: dimensions, hatching, labels that find room, a scale."""
