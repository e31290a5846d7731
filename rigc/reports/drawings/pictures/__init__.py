"""Plans of a deck as large as a space on a page allows: pictures that nobody builds from."""
