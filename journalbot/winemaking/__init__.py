"""The computing: pure functions of numbers in, numbers out. No journal, no language, no wording."""
