"""Where one types -> what can stand there: words of the language by its grammar, names by what the statement wants."""
