"""`python -m rigc`."""

import sys

from rigc.cli import main

if __name__ == "__main__":
    sys.exit(main())
