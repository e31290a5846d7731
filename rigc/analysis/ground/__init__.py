"""Which grounds are joined, what earths them, the rings they form and what those pick up."""
