"""How sheets fill their pages: how high each block is, which way a page lies, how high its rows are, and which sheets share one."""
