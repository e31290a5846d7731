"""The signal flow on paper: chains and loops as blocks and arrows."""
