"""One question of an editor a file: pure functions from what was read and computed to an answer in plain records."""
