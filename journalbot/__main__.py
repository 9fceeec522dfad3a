"""`python -m journalbot`."""

from journalbot.cli import run

if __name__ == "__main__":
    run()
