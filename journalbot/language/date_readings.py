"""What the date grammar works on: the words of a note, and a reading of some of them as spans of days."""

from collections.abc import Iterable, Sequence
from datetime import date
from typing import NamedTuple

from journalbot.language import date_words as dw
from journalbot.language.date_spans import FIRST_YEAR, LAST_YEAR, Span, day_or_none, days_in_years, one_day, shifted
from journalbot.language.tokens import Token

CLAUSE_ENDS = frozenset({"", ",", ".", ";", ":", "!", "?", ")", "\n", "and", "but"})
HEADING_ENDS = frozenset({"", ":", "-", "–", "—", ",", ".", "\n"})


class Reading(NamedTuple):
    """What the words up to `stop` may mean: spans of which the note's day picks one; none where no such day exists."""

    stop: int
    options: tuple[Span, ...]
    fixed: bool = False  # the words themselves have picked
    weak: bool = False
    offset: tuple[int, int] | None = None  # months and days from the date spoken of before

    def backward(self, on: date) -> Span | None:
        """The latest that has begun by `on`."""
        if self.fixed:
            return self.options[0] if self.options else None
        return max((s for s in self.options if s.lo <= on), default=None)

    def forward(self, on: date) -> Span | None:
        """The first that is not over by `on`."""
        if self.fixed:
            return self.options[0] if self.options else None
        return min((s for s in self.options if s.hi >= on), default=None)

    def picked(self, modifier: str, on: date) -> "Reading":
        """This reading after "last" or "next": the one strictly before or after `on`; "this" leaves it open."""
        if modifier == "last":
            found = max((s for s in self.options if s.hi < on), default=None)
        elif modifier == "next":
            found = min((s for s in self.options if s.lo > on), default=None)
        else:
            return self
        return self._replace(options=(found,) if found else (), fixed=True, weak=False)

    def moved(self, days: int) -> "Reading":
        """This reading so many days later."""
        return self._replace(options=tuple(s.shifted(days) for s in self.options))


def fixed(stop: int, span: Span | None, weak: bool = False) -> Reading:
    """A reading that the words themselves settle; without a span, of a day that does not exist."""
    return Reading(stop, (span,) if span else (), True, weak)


class Sentence:
    """The words of a note as the grammar sees them: compounds ("mid-October", "Oct2", "Tuesday's") in their parts."""

    __slots__ = ("day_first", "n", "on", "owner", "tokens", "words", "years")

    def __init__(self, tokens: Sequence[Token], on: date, day_first: bool) -> None:
        self.tokens: Sequence[Token] = tokens
        self.owner: list[int] | None = None  # the token that each word is of; nothing where each is its own
        if any(map(_maybe_compound, tokens)):
            parts = [_split(t) if _maybe_compound(t) else (t,) for t in tokens]
            self.tokens = [part for some in parts for part in some]
            self.owner = [k for k, some in enumerate(parts) for _ in some]
        self.words: list[str] = [t.low for t in self.tokens]
        self.on = on
        self.day_first = day_first
        self.n = len(self.words)
        self.years = range(max(on.year - 2, 1), min(on.year + 3, 9999))

    def word(self, i: int) -> str:
        """The word at `i`, or "" outside of the text."""
        return self.words[i] if 0 <= i < self.n else ""

    def adjoins(self, i: int) -> bool:
        """Whether the word at `i` follows the one before it without a space."""
        return 0 < i < self.n and self.tokens[i].start == self.tokens[i - 1].end

    def after(self, i: int) -> int:
        """The place `i`, or the next that is not inside of a compound."""
        while self.owner is not None and 0 < i < self.n and self.owner[i] == self.owner[i - 1]:
            i += 1
        return i

    def integer(self, i: int, digits: int = 4) -> int | None:
        """The whole number of at most so many figures at `i`."""
        word = self.word(i)
        return int(word) if len(word) <= digits and word.isdecimal() else None

    def closed(self, i: int) -> bool:
        """Whether the clause ends at `i` or goes on with a word of grammar or a figure, not with a noun."""
        word = self.word(i)
        return not word or word in dw.FUNCTION_WORDS or not word[0].isalpha() or word in dw.DATE_WORDS

    def ends(self, i: int) -> bool:
        """Whether the clause ends at `i`."""
        return self.word(i) in CLAUSE_ENDS

    def heads_line(self, i: int, stop: int) -> bool:
        """Whether the words from `i` to `stop` are a heading: first in their line, then a mark or nothing."""
        return self.word(i - 1) in ("", "\n", "*", "-", "•") and self.word(stop) in HEADING_ENDS

    def day(self, stop: int, days: int) -> Reading:
        """The reading of the day so many days from the note's."""
        return fixed(stop, one_day(shifted(self.on, days)))

    def month_day(self, stop: int, month: int, day: int, year: int | None) -> Reading:
        """A day of a month; without a year it lies within a year of the note, so 29 February may not exist."""
        if year is not None:
            found = day_or_none(year, month, day)
            return fixed(stop, one_day(found) if found else None)
        near = (s for s in days_in_years(self.years, month, day) if abs((s.lo - self.on).days) <= 365)
        return Reading(stop, tuple(near))

    def weekday_spans(self, weekday: int) -> tuple[Span, ...]:
        """The weekday a week before the latest, the latest (today counts) and the one after it."""
        latest = shifted(self.on, -((self.on.weekday() - weekday) % 7))
        return tuple(one_day(shifted(latest, 7 * k)) for k in (-1, 0, 1))

    def year_at(self, i: int) -> tuple[int, int] | None:
        """A year after a month or a day of one, and where it ends: 2024, '24, of 2024, last year."""
        word = self.word(i)
        j = (
            i + 1
            if word in (",", "of", "in") or (word in ("-", "/") and self.adjoins(i) and self.adjoins(i + 1))
            else i
        )
        if self.word(j) in dw.MODIFIERS and self.word(j + 1) == "year":
            return self.on.year + THREE[dw.MODIFIERS[self.word(j)]] - 1, j + 2
        if (
            self.word(j) == "'"
            and self.adjoins(j + 1)
            and len(self.word(j + 1)) == 2
            and (short := self.integer(j + 1, 2)) is not None
        ):
            return century(short), j + 2
        year = self.integer(j)
        if year is not None and FIRST_YEAR <= year <= LAST_YEAR and self.word(j + 1) not in dw.COUNTED:
            return year, j + 1
        return None


THREE: dict[str, int] = {"last": 0, "this": 1, "next": 2}  # the place of each among last, this and next


def century(short: int) -> int:
    """The year of two figures: 90 to 99 are of the last century."""
    return short + (1900 if short >= FIRST_YEAR - 1900 else 2000)


def _maybe_compound(token: Token) -> bool:
    low = token.low
    return (
        token.kind == "word"
        and len(low) > 3
        and ("-" in low or "'" in low or low[-1].isdecimal() or low[0].isdecimal())
        and low not in dw.DATE_WORDS
    )


def _split(token: Token) -> Iterable[Token]:
    """The parts of a compound where all of them are words of dates ("sun-dried" and "k-meta" stay whole)."""
    low = token.low
    for ending in ("'s", "'"):  # "Tuesday's", "weeks'"
        base = low.removesuffix(ending)
        if base != low and (base in dw.DATE_WORDS or base in dw.UNITS_OF_TIME):
            return (_part(token, 0, len(base)), _part(token, len(base), len(low)))
    cuts = [0]
    for k in range(1, len(low)):
        if low[k] in "-'" or low[k - 1] in "-'" or low[k].isdecimal() != low[k - 1].isdecimal():
            cuts.append(k)
    parts = [_part(token, a, b) for a, b in zip(cuts, [*cuts[1:], len(low)], strict=True)]
    if not all(p.low in dw.DATE_WORDS or p.low in "-'" or p.low.isdecimal() or p.low in dw.ORDINAL_ENDS for p in parts):
        return (token,)
    names = sum(p.low in dw.MONTHS or p.low in dw.RELATIVE_DAYS or p.low in dw.WEEKDAYS for p in parts)
    if names > 1 or not (names or any(p.low in dw.ORDINAL_ENDS for p in parts)):
        return (token,)  # "Mon-Wed" and "Sept-Oct" are no one day or month
    figures = any(p.low.isdecimal() for p in parts)
    return [p for p in parts if figures or p.low != "-"]


def _part(token: Token, a: int, b: int) -> Token:
    text = token.low[a:b]
    return Token("number" if text.isdecimal() else "word", text, text, token.start + a, token.start + b)
