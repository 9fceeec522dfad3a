"""journalbot: the journal a home winemaker talks to."""
