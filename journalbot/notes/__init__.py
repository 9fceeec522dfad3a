"""Mentions to entries: clauses, the kinds of entry, what must be asked, corrections, old notebooks."""
