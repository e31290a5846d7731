"""What people write that this language says otherwise: one kind of slip a file, with the wording it deserves."""
