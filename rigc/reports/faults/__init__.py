"""The tables of the subject faults."""
