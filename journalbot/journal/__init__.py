"""The journal's SQLite file: notes, the entries read from them, and what follows from those."""
