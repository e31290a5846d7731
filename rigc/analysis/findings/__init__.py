"""What all checks find, how it is folded, and what facts they still lack."""
