"""What the parts of the reader hand to each other: a question's pieces, and a Query in the making."""

from collections.abc import Sequence
from typing import NamedTuple

from journalbot.language.text import Text
from journalbot.questions.query import Query, When
from journalbot.questions.signs import Sign
from journalbot.questions.whom import Whom


class Pieces(NamedTuple):
    """A question with what has been found in it so far."""

    text: Text
    signs: list[Sign]
    tokens: list[int]  # those that are still to be read
    explained: set[int]  # those that batches and dates have taken
    when: When
    who: Whom
    in_vessel: bool = False  # the wine meant is called by its vessel

    def has(self, *names: str) -> bool:
        """Whether any sign of these names is there."""
        return any(s.name in names for s in self.signs)


class Draft(NamedTuple):
    """A Query in the making (None: the question was stopped), with the tokens that nothing in it explains."""

    query: Query | None
    left: list[int]
    score: float = 0.0
    grouped: bool = False  # the query says itself which batches
    near: tuple[str, ...] = ()  # measures that come near
    stopped_by: tuple[str, ...] = ()
    who: Whom | None = None  # instead of those found at first


def tokens_of(signs: Sequence[Sign]) -> set[int]:
    """The tokens of these signs."""
    return {i for s in signs for i in range(s.first, s.last)}


def way_token(token: int, signs: Sequence[Sign]) -> bool:
    """Whether a token only says how facts are put together, or that batches are meant."""
    ways = ("way:", "every", "group", "period:", "rank")
    return any(s.first <= token < s.last and s.name.startswith(ways) for s in signs)


def words_of(text: Text, tokens: Sequence[int]) -> tuple[str, ...]:
    """These tokens as typed, each word once."""
    return tuple(dict.fromkeys(text.tokens[i].text for i in tokens))
