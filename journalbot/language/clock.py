"""Times of day: 8pm, 9:30, at noon, half past six, six in the evening, 7 this morning."""

from collections.abc import Sequence
from typing import NamedTuple

from journalbot.language.number_words import ONES, words
from journalbot.language.spelled_numbers import adjoins, low_at
from journalbot.language.tokens import Token


class TimeMention(NamedTuple):
    """A time of day in the text, as HH:MM."""

    start: int  # character offsets
    end: int
    first: int  # index of its first token
    last: int  # index after its last token
    time: str


NAMED_HOURS: dict[str, str] = {"noon": "12:00", "midday": "12:00", "midnight": "00:00"}
MERIDIEM: dict[str, str] = {"am": "am", "a.m": "am", "pm": "pm", "p.m": "pm"}
PARTS_OF_DAY: dict[str, str] = {
    "morning": "am", "mornin": "am", "afternoon": "pm", "arvo": "pm", "evening": "pm", "evenin": "pm", "eve": "pm",
    "night": "pm", "nite": "pm", "tonight": "pm", "tonite": "pm",
}
TIME_CUES = words("at @ around about by before after until till since from abt ~ circa")
MINUTES_PAST: dict[str, int] = {"half": 30, "quarter": 15, "five": 5, "ten": 10, "twenty": 20}
HOURS: dict[str, int] = {word: n for word, n in ONES.items() if 1 <= n <= 12}
STARTERS = frozenset(HOURS) | frozenset(NAMED_HOURS) | frozenset(MINUTES_PAST)
RATIO_WORDS = words("ratio dilution diluted dilute mix mixed parts part solution strength split blend blended")


def find_times(tokens: Sequence[Token]) -> list[TimeMention]:
    """The times of day in the text, in order. A ratio (1:10) is none, nor is a bare number ("at 6")."""
    out: list[TimeMention] = []
    i = 0
    n = len(tokens)
    while i < n:
        low = tokens[i].low
        found: tuple[int, int, int] | None = None
        if low[0].isdecimal():
            found = _from_figures(tokens, i)
        elif low in STARTERS:
            found = _from_words(tokens, i)
        if found is None:
            i += 1
            continue
        hour, minute, last = found
        out.append(TimeMention(tokens[i].start, tokens[last - 1].end, i, last, f"{hour:02d}:{minute:02d}"))
        i = last
    return out


def _from_figures(tokens: Sequence[Token], i: int) -> tuple[int, int, int] | None:
    """Hour, minute and end of a time that starts with the figure at `i`."""
    low = tokens[i].low
    before = low_at(tokens, i - 1)
    if before in ("/", "#", "$", "€", "£") or (before in (":", "-", ".") and adjoins(tokens, i)):
        return None
    if low.isdecimal():
        if len(low) > 2:
            return None
        hour = int(low)
        if low_at(tokens, i + 1) == ":" and adjoins(tokens, i + 1) and adjoins(tokens, i + 2):
            return _with_colon(tokens, i, hour)
        return _with_half(tokens, i, i + 1, hour, 0)
    hours, _, minutes = low.partition(".")  # 9.30pm
    if len(hours) <= 2 and len(minutes) == 2 and hours.isdecimal() and minutes.isdecimal() and int(minutes) < 60:
        return _with_meridiem(tokens, i + 1, int(hours), int(minutes))
    return None


def _with_colon(tokens: Sequence[Token], i: int, hour: int) -> tuple[int, int, int] | None:
    """9:30, 9:30 pm, 21:30:15."""
    digits = tokens[i + 2].low
    if not (digits.isdecimal() and len(digits) == 2 and int(digits) < 60 and hour < 24):
        return None
    minute, last = int(digits), i + 3
    if low_at(tokens, last) == ":" and adjoins(tokens, last):
        seconds = low_at(tokens, last + 1)
        if not (seconds.isdecimal() and len(seconds) == 2):
            return None
        last += 2
    if found := _with_meridiem(tokens, last, hour, minute):
        return found
    around = {low_at(tokens, k) for k in (i - 3, i - 2, i - 1, last, last + 1)}
    if around & RATIO_WORDS:
        return None
    if hour == 1 and not (minute % 15 == 0 or low_at(tokens, i - 1) in TIME_CUES):
        return None  # 1:10, 1:20: a ratio far more often than an hour
    return _with_half(tokens, i, last, hour, minute) or (hour, minute, last)


def _with_meridiem(tokens: Sequence[Token], j: int, hour: int, minute: int) -> tuple[int, int, int] | None:
    """The time where "am" or "pm" stands at `j`, dots taken in."""
    half = MERIDIEM.get(low_at(tokens, j))
    if half is None or not 1 <= hour <= 12:
        return None
    dotted = "." in tokens[j].low and low_at(tokens, j + 1) == "." and adjoins(tokens, j + 1)
    return hour % 12 + (12 if half == "pm" else 0), minute, j + 2 if dotted else j + 1


def _with_half(tokens: Sequence[Token], i: int, j: int, hour: int, minute: int) -> tuple[int, int, int] | None:
    """The time of the hour at `i` where am, pm, "o'clock" or a part of the day follows from `j` or stands before it."""
    if not 1 <= hour <= 12:
        return None
    if found := _with_meridiem(tokens, j, hour, minute):
        return found
    clock = low_at(tokens, j) in ("o'clock", "oclock")
    if clock:
        j += 1
    timed = clock or j > i + 1  # the figure is a time already, and the part of the day only tells which half
    before = low_at(tokens, i - 1)
    if not timed and not (i == 0 or before in TIME_CUES or before == "\n"):
        return None  # "racked 5 this morning", "carboy 2 this morning"
    word = low_at(tokens, j)
    if word in ("tonight", "tonite") or (
        word in ("this", "last", "yesterday", "tomorrow") and low_at(tokens, j + 1) in PARTS_OF_DAY
    ):
        last = j + 1 if word in ("tonight", "tonite") else j + 2
    elif (
        word in ("in", "at")
        and (k := j + 2 if low_at(tokens, j + 1) == "the" else j + 1)
        and low_at(tokens, k) in PARTS_OF_DAY
    ):
        last = k + 1
    elif (
        before in ("at", "around", "about")
        and low_at(tokens, i - 2) in PARTS_OF_DAY
        and low_at(tokens, j) in ("", ".", ",", ";", "\n", "and", ")")
    ):
        return *_in_part(hour, minute, tokens[i - 2].low), j
    else:
        return (hour, minute, j) if clock else None
    return *_in_part(hour, minute, tokens[last - 1].low), last


def _in_part(hour: int, minute: int, part: str) -> tuple[int, int]:
    """The hour on the 24-hour clock within a part of the day; one to four at night is after midnight."""
    if PARTS_OF_DAY[part] == "am" or (part in ("night", "nite") and (hour < 5 or hour == 12)):
        return hour % 12, minute
    return hour % 12 + 12, minute


def _from_words(tokens: Sequence[Token], i: int) -> tuple[int, int, int] | None:
    """noon, half past six, quarter to nine, six in the evening, eight o'clock, nine pm."""
    low = tokens[i].low
    if low in NAMED_HOURS:
        hours, _, minutes = NAMED_HOURS[low].partition(":")
        return int(hours), int(minutes), i + 1
    word = low_at(tokens, i + 1)
    if low in MINUTES_PAST and word in ("past", "to") and (hour := _hour(tokens, i + 2)):
        minute = MINUTES_PAST[low]
        if word == "to":
            if low in ("five", "ten", "twenty", "half"):
                return None  # "five to six gallons"
            hour, minute = (hour - 2) % 12 + 1, 60 - minute
        return _with_half(tokens, i, i + 3, hour, minute) or (hour, minute, i + 3)
    if low in HOURS:
        return _with_half(tokens, i, i + 1, HOURS[low], 0)
    return None


def _hour(tokens: Sequence[Token], i: int) -> int:
    low = low_at(tokens, i)
    return HOURS.get(low) or (int(low) if low.isdecimal() and len(low) <= 2 and 1 <= int(low) <= 12 else 0)
