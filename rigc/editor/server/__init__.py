"""The protocol: what an editor sends -> the pure answers, in its own records. The only home of pygls."""
