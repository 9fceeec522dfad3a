"""What the trade calls things, as tables: data, not code."""
