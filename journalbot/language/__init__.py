"""Words to mentions: tokens, numbers, quantities, dates, names, spelling. Knows nothing of storage."""
