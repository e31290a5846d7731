"""Results -> sheets: tables, paragraphs and drawings, in no format; the rooms are those of the analysis."""
