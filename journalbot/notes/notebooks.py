"""Old notebooks in plain text: dated lines or paragraphs, in the many forms in which people keep them, as notes with
their days.

A line is a heading (a year, a month, a day, or a batch's name), begins with its date ("Oct 3: racked …", "12th -
pressed"), or
goes on with the note above it. A blank line parts two notes of one day. A date without a year is in the year of the
heading
above or of the date before, a year later where the months would run backwards.
"""

import datetime
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from journalbot.errors import ImportFileError
from journalbot.language.dates import find_dates
from journalbot.language.tokens import Token, tokenize

_TRIM = " \t#=*_-–—•·:;.,|"
_YEAR = re.compile(r"^(?:the )?(?:year |vintage |harvest )?((?:19|20)\d\d)$", re.IGNORECASE)
_DAY_OF_MONTH = re.compile(r"^\W{0,3}(\d{1,2})(?:st|nd|rd|th)?\s*(?:[:.)\-–—]|\s(?=\D))\s*", re.IGNORECASE)
_BATCH_HEADING = re.compile(r"^(?:batch|no\.?|number|#)\s*\d{1,4}\b.{0,40}$", re.IGNORECASE)
_MONTHS = {"jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"}
_WEEKDAYS = {"mon", "tue", "wed", "thu", "fri", "sat", "sun"}
_BACKWARDS = 40  # days: further back than this is the year after
_BULLET = re.compile(r"^\s*[-*•·]\s+")


@dataclass(slots=True)
class _Page:
    """Where the reading stands: the day of the lines to come, and the heading that they stand under."""

    day: datetime.date | None = None
    year: int | None = None
    month: int | None = None
    batch: str = ""
    lines: list[str] = field(default_factory=list)
    first_line: int = 0  # where the note being gathered begins
    of: datetime.date | None = None  # its day; None for a title before the first date

    def add(self, text: str, number: int) -> None:
        """Take a line into the note being gathered."""
        if not self.lines:
            self.first_line = number
        self.of = self.of or self.day
        self.lines.append(text)

    def note(self) -> Iterator[tuple[str, str]]:
        """The note gathered so far, and an empty page for the next; a title stays with the first note to come."""
        text = "\n".join(self.lines).strip()
        if text and self.of is not None:
            yield self.of.isoformat(), f"{self.batch}: {text}" if self.batch else text
            self.lines, self.of = [], None


def read_notebook(lines: Iterable[str], *, day_first: bool = False) -> Iterator[tuple[str, str]]:
    """Each note of a plain text with its day; ImportFileError, with the line, for text that no date stands above."""
    page = _Page()
    for number, line in enumerate(lines, 1):
        text = line.strip("\ufeff\r\n\t ")
        if not text:
            yield from page.note()
            continue
        bare = text.strip(_TRIM)
        if m := _YEAR.match(bare):
            yield from page.note()
            page.year, page.month, page.day, page.batch = int(m[1]), None, None, ""
            continue
        rest, found = _dated(text, page, number, day_first)
        if found:
            yield from page.note()
            if rest:
                page.add(rest, number)
        elif _BATCH_HEADING.match(bare) and (page.day is None or text.endswith(":") or text[0] in "#=*"):
            yield from page.note()
            page.batch = bare
        else:
            page.add(text, number)
    yield from page.note()
    if page.lines:
        what = page.lines[0] if len(page.lines[0]) < 40 else f"{page.lines[0][:37]}…"
        raise ImportFileError(
            f"line {page.first_line}: no date stands above “{what}”; put the day it was written on a line before it"
        )


def _dated(text: str, page: _Page, number: int, day_first: bool) -> tuple[str, bool]:
    """What follows the date that a line begins with, and whether there is one; the page is turned to that day."""
    lead = _BULLET.match(text)
    offset = lead.end() if lead else len(text) - len(text.lstrip("#=* "))
    tokens = tokenize(text[offset:])
    first = 1 if tokens and tokens[0].low[:3] in _WEEKDAYS and len(tokens) > 1 else 0
    year = page.year or (page.day.year if page.day else None)
    anchor = datetime.date(year or 2100, 12, 31)
    for mention in find_dates(tokens, anchor, day_first=day_first):
        if mention.first > first + (first and tokens[1].kind == "mark") or not _absolute(
            tokens[mention.first : mention.last]
        ):
            break
        if mention.impossible:
            raise ImportFileError(f"line {number}: the calendar has no “{text[offset:][mention.start : mention.end]}”")
        rest = text[offset + mention.end :].strip()
        said_year = re.search(r"(?:19|20)\d\d", text[offset:][mention.start : mention.end]) or re.search(
            r"['/.-]\d\d$", text[offset:][mention.start : mention.end]
        )
        if year is None and not said_year:
            raise ImportFileError(
                f"line {number}: which year is “{text[: offset + mention.end]}”? Put the year on a line above it"
            )
        if len(mention.iso) == 10 and (not rest or rest[0] in ":-–—,.;)|" or first or not lead):
            _turn(page, datetime.date.fromisoformat(mention.iso), bool(said_year))
            return rest.lstrip(_TRIM).lstrip(), True
        if len(mention.iso) == 7 and not rest.strip(_TRIM):
            page.year, page.month, page.day = int(mention.iso[:4]), int(mention.iso[5:]), None
            return "", True
        break
    m = _DAY_OF_MONTH.match(text)
    if m and page.month and (page.year or page.day) and 1 <= int(m[1]) <= 31:
        try:
            page.day = datetime.date(page.year or year or 0, page.month, int(m[1]))
        except ValueError:
            raise ImportFileError(f"line {number}: that month has no day {m[1]}") from None
        return text[m.end() :], True
    return text, False


def _absolute(tokens: list[Token]) -> bool:
    """A date of the calendar, not one told from the day of writing ("yesterday", "last week")."""
    words = [t.low for t in tokens]
    figures = any(w[0].isdigit() for w in words)
    months = any(w[:3] in _MONTHS for w in words)
    return (figures or months) and not {"ago", "last", "next", "this", "yesterday", "today", "tomorrow"}.intersection(
        words
    )


def _turn(page: _Page, day: datetime.date, said_year: bool) -> None:
    """Turn to a day; one without a year that would lie well before the day above it is of the year after."""
    if not said_year and page.day is not None and (page.day - day).days > _BACKWARDS:
        day = _next_year(day)
    page.day, page.month, page.year = day, day.month, day.year


def _next_year(day: datetime.date) -> datetime.date:
    return day.replace(year=day.year + 1, day=28 if (day.month, day.day) == (2, 29) else day.day)
