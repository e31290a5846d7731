"""Ways of sound and of current inside things and from jack to jack."""
