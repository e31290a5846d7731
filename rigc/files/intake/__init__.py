"""A client's list of gear, as a spreadsheet -> units as source text, each fact with the cell that it came from, and what must be asked."""
