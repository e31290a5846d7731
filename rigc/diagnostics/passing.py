"""What is true of one run alone: a finding with this label is not kept for the next."""

STOPPED = "the search for places was interrupted"
