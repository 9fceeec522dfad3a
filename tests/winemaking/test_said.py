"""Which phrases a text states, and which it denies."""

import pytest

from journalbot.winemaking.said import phrases


# text, what it states of these phrases.
@pytest.mark.parametrize(
    ("text", "stated"),
    [
        ("rotten egg, and eggs for lunch", {"rotten egg", "eggs"}),
        ("no eggs", set()),
        ("not sure, eggs?", {"eggs"}),
        ("there is no sign of eggs", set()),
        ("it isn't bad. Eggs", {"eggs"}),
        ("not a good day, though eggs", {"eggs"}),
    ],
)
def test_phrases(text: str, stated: set[str]) -> None:
    assert phrases(text, frozenset(("rotten egg", "egg", "eggs"))) == stated
