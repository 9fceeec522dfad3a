"""A person's own days for what care reminds of: "remind me to rack every 60 days", "top up every 3 to 4 weeks"."""

import re
from collections.abc import Mapping

from journalbot.turns.settings import Changes
from journalbot.vocabulary.care import INTERVALS, OWN_DAYS

_LONGEST = 100  # characters of a line that may set days
_OFTEN = re.compile(r"\b(?:every|each|once|daily|weekly|monthly|usual|default|normal)\b", re.IGNORECASE)
_COUNTS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_COUNT = rf"\d{{1,4}}|{'|'.join(_COUNTS)}"
_SPAN = rf"(?:(?P<low>{_COUNT})(?: ?(?:to|-|or) ?(?P<high>{_COUNT}))? ?)?(?P<unit>day|week|month|fortnight|year)s?"
_EVERY = (
    rf"(?:every|each) (?:{_SPAN})|once (?:a|every|per) (?P<once>day|week|month|fortnight|year)"
    r"|(?P<ly>daily|weekly|monthly)"
)
_WORK = r"(?P<work>[^\W\d]\w*(?: \w+){0,4}?)"
# What may stand before the work: "remind me to", "I want to", "we usually".
_LEAD = (
    r"(?:(?:please|set|make|i'd|we'd|remind me|tell me|nag me|let me know|i|we|want|would like|like|need|have|usually|"
    r"always|normally|to|that i|should|when|will|about) )*"
)
_SAID = (
    re.compile(rf"(?:remind me|tell me|nag me) (?:{_EVERY}) (?:to|about) {_WORK}[.!]?", re.IGNORECASE),
    re.compile(rf"{_LEAD}{_WORK}(?: to)? (?:{_EVERY})[.!]?", re.IGNORECASE),
)
_USUAL = re.compile(
    rf"(?:please |use |back to |go back to |keep )*(?:{_WORK} (?:at|in|on|by) )?(?:the )?(?:usual|default|normal) "
    r"(?:(?P<mid>[^\W\d]\w*(?: \w+){0,3}?) )?(?:intervals?|days|reminders?|times)"
    r"(?: (?:for|of) (?P<of>[^\W\d]\w*(?: \w+){0,4}))?[.!]?",
    re.IGNORECASE,
)
_DAYS = {"day": 1, "week": 7, "fortnight": 14, "month": 30, "year": 365, "daily": 1, "weekly": 7, "monthly": 30}
_MOST_DAYS = 3650


def read_intervals(text: str, before: Mapping[str, tuple[int, int]]) -> Changes | str | None:
    """The own days that a line sets beside those of before; `use the usual intervals` gives them up.

    A sentence where the days cannot be; None where the line sets none, or speaks of work that is not reminded of.
    """
    line = " ".join(text.replace("’", "'").split())
    if len(line) > _LONGEST or not _OFTEN.search(line):
        return None
    if found := _USUAL.fullmatch(line):
        named = (found["work"] or found["mid"] or found["of"] or "").lower()
        keys = _keys(named) if named else tuple(before)
        return {"intervals": {k: v for k, v in before.items() if k not in keys}} if keys or not named else None
    found = next((m for form in _SAID if (m := form.fullmatch(line))), None)
    keys = _keys(found["work"].lower()) if found else ()
    if found is None or not keys:
        return None
    size = next(_DAYS[word.lower()] for word in (found["unit"], found["once"], found["ly"]) if word)
    low = _count(found["low"] or "1") * size
    high = _count(found["high"]) * size if found["high"] else low
    if not 1 <= low <= high <= _MOST_DAYS:
        return f"The days must be 1 to {_MOST_DAYS}, the least before the most, not {low} to {high}."
    return {"intervals": {**before, **dict.fromkeys(keys, (low, high))}}


def _count(said: str) -> int:
    return int(said) if said.isdigit() else _COUNTS.index(said.lower()) + 1


def _keys(work: str) -> tuple[str, ...]:
    """The keys of INTERVALS that a work is named by."""
    return OWN_DAYS.get(work) or tuple(key for key, row in INTERVALS.items() if row.what == work)
