"""The hands on the disk: reading sources, writing documents all or not at all, the user's cache folder."""
