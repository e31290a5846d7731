"""What follows from a rig: a room for each subject, in one order, each reading only those below it."""
