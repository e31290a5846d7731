"""What an editor asks of a rig while it is written: pure functions from text, place and compiled state to answers; `server` alone knows the protocol."""
