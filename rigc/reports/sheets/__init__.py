"""Every sheet, in a room for the hand that takes it; a file in a room is a sheet."""
