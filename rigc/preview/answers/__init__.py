"""Questions of a page, one a file: what is known -> plain values for JSON."""
