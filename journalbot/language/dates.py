"""Dates in words and figures, relative to the day of the note: "yesterday", "Oct 2", "a week ago Sunday", "in 3 weeks".

Notes look back and plans look forward, so each mention holds both readings. A weekday named on that weekday is today;
"last" and "next" are strictly before and after. A span is its month where it lies in one, else its year.
"""

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

from journalbot.language.clock import TimeMention, find_times
from journalbot.language.date_lengths import read_with_library
from journalbot.language.date_phrases import FIRST_WORDS, read_date
from journalbot.language.date_readings import Reading, Sentence
from journalbot.language.date_spans import Span, shifted
from journalbot.language.tokens import Token

__all__ = ["DateMention", "TimeMention", "find_dates", "find_times", "shifted"]

TIME_GAPS = frozenset({"at", "@", "around", "about", "by", "~", ",", "on", "abt"})


class DateMention(NamedTuple):
    """A date in the text.

    `iso` is the date as a note means it (YYYY-MM-DD, YYYY-MM or YYYY), `future_iso` the same words in a plan. Words
    that settle the day by themselves ("yesterday", "last Friday", "Oct 2 2024", "in 3 weeks") read the same in both,
    even where that is after the note's day; of all others `iso` is never after the note's day and `future_iso` never
    before it. Either is empty where the calendar has no such day.
    """

    start: int  # character offsets
    end: int
    first: int  # index of its first token
    last: int  # index after its last token
    iso: str
    future_iso: str
    time: str | None = None  # HH:MM, where a time stands beside it
    weak: bool = (
        False  # may be no date at all ("the 4th", "8/10", "2022 zin"): to be used only where the context asks for one
    )
    span: tuple[str, str] | None = None  # first and last day that the words cover
    impossible: bool = False  # a date in form, but no day of the calendar: 31 June; `iso` is empty
    offset: tuple[int, int] | None = (
        None  # "two weeks later": months and days after the date spoken of before; `iso` is empty
    )


def find_dates(tokens: Sequence[Token], on: date, *, day_first: bool = False, plan: bool = False) -> list[DateMention]:
    """The dates spoken of in a note of the day `on`, in order and apart from each other.

    `day_first` reads 3/10 as 3 October; `plan` makes `iso` and `span` those of a plan. Prepositions ("on", "since",
    "by") are left outside of a mention.
    """
    s = Sentence(tokens, on, day_first)
    found: list[tuple[int, Reading]] = []
    i = 0
    for word in s.words:
        if word in FIRST_WORDS or word[0].isdecimal() or word == "ago":
            break
    else:
        return []
    floor = 0
    while i < s.n:
        word = s.words[i]
        if word == "ago":
            entry = read_with_library(s, i, floor)
        elif word in FIRST_WORDS or word[0].isdecimal():
            reading = read_date(s, i)
            entry = (i, reading) if reading else None
        else:
            entry = None
        if entry is None:
            i += 1
            continue
        found.append(entry)
        i = floor = s.after(entry[1].stop)
    if not found:
        return []
    times = find_times(tokens)
    return [_mention(s, tokens, first, reading, times, plan) for first, reading in found]


def _mention(
    s: Sentence, tokens: Sequence[Token], i: int, reading: Reading, times: list[TimeMention], plan: bool
) -> DateMention:
    first, last = (i, reading.stop) if s.owner is None else (s.owner[i], s.owner[reading.stop - 1] + 1)
    ahead = reading.forward(s.on)
    chosen = ahead if plan else reading.backward(s.on)
    future_iso = _iso(ahead, s.on, forward=True)
    iso = future_iso if plan else _iso(chosen, s.on, forward=False)
    time = None
    if times and chosen and chosen.lo == chosen.hi:
        for t in times:
            if _beside(tokens, t, first, last):
                first, last, time = min(first, t.first), max(last, t.last), t.time
                break
    span = (chosen.lo.isoformat(), chosen.hi.isoformat()) if chosen else None
    impossible = not iso and reading.offset is None
    return DateMention(
        tokens[first].start,
        tokens[last - 1].end,
        first,
        last,
        iso,
        future_iso,
        time,
        reading.weak,
        span,
        impossible,
        reading.offset,
    )


def _iso(span: Span | None, on: date, forward: bool) -> str:
    """The span's ISO form; one over two years that holds the note's day is dated by the year of that day."""
    if span is None:
        return ""
    iso, year = span.iso(), f"{on.year:04d}"
    wrong_way = iso < year if forward else iso > year
    return year if len(iso) == 4 and wrong_way and span.lo <= on <= span.hi else iso


def _beside(tokens: Sequence[Token], time: TimeMention, first: int, last: int) -> bool:
    """Whether a time overlaps a date or stands beside it, at most a preposition or comma apart."""
    if time.first <= last and time.last >= first:
        return True
    gap = last if time.first == last + 1 else time.last if time.last == first - 1 else -1
    return gap >= 0 and tokens[gap].low in TIME_GAPS
