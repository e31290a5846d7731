"""How loud it is on each lead, and what the input at its end takes."""
