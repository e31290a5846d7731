"""Text of rigs -> other text of rigs: canonical form, chosen values written in, names changed. No file is touched here."""
