"""The markers of leads: their sizes, their table, and their drawing at 1:1."""
