"""Whether another unit can stand in for one."""
