"""`python -m journalbot`."""

import sys

from journalbot.cli import main

if __name__ == "__main__":
    sys.exit(main())
