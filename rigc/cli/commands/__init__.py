"""Every command: a file here is one."""
