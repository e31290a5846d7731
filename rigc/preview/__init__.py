"""A rig as a page in a browser sees it: what is drawn and found now, what a move would do, and what was done. Only `server/` knows HTTP."""
