"""Days and spans of days: months, seasons, feasts, and how a span is written in ISO 8601."""

from collections.abc import Iterable
from datetime import date, timedelta
from functools import lru_cache
from typing import NamedTuple

from journalbot.language.date_words import EASTER_FEASTS, FIXED_FEASTS, NTH_FEASTS, SEASONS

FIRST_YEAR, LAST_YEAR = 1990, 2100  # a journal's years; a four-figure number outside of them is never a year


class Span(NamedTuple):
    """The days from `lo` to `hi`, both included."""

    lo: date
    hi: date

    def shifted(self, days: int) -> "Span":
        """The same span `days` later."""
        return Span(shifted(self.lo, days), shifted(self.hi, days))

    def third(self, which: int) -> "Span":
        """Its first, middle or last third (0, 1, 2): four months of a year; the days 1-10, 11-20, 21 on of a month."""
        if self == year_span(self.lo.year):
            return Span(month_span(self.lo.year, 4 * which + 1).lo, month_span(self.lo.year, 4 * which + 4).hi)
        step = ((self.hi - self.lo).days + 1) // 3
        lo = self.lo + timedelta(which * step)
        return Span(lo, self.hi if which == 2 else lo + timedelta(max(step - 1, 0)))

    def iso(self) -> str:
        """YYYY-MM-DD for a day, YYYY-MM for a span within a month, else YYYY: the year that holds most of it."""
        if self.lo == self.hi:
            return self.lo.isoformat()
        if (self.lo.year, self.lo.month) == (self.hi.year, self.hi.month):
            return self.lo.isoformat()[:7]
        return f"{(self.lo + (self.hi - self.lo) / 2).year:04d}"


def days_in(year: int, month: int) -> int:
    """The days of a month. (The calendar module takes longer to load than all the dates of a note to read.)"""
    if month == 2:
        return 29 if year % 4 == 0 and (year % 100 != 0 or year % 400 == 0) else 28
    return 30 if month in (4, 6, 9, 11) else 31


def one_day(day: date) -> Span:
    """The span of a single day."""
    return Span(day, day)


def shifted(day: date, days: int, months: int = 0) -> date:
    """`day` moved by months, then by days: 31 January and a month is the last of February."""
    if months:
        whole = day.year * 12 + day.month - 1 + months
        year, month = whole // 12, whole % 12 + 1
        if not 1 <= year <= 9999:
            return date.max if months > 0 else date.min
        day = date(year, month, min(day.day, days_in(year, month)))
    try:
        return day + timedelta(days)
    except OverflowError:
        return date.max if days > 0 else date.min


def month_span(year: int, month: int) -> Span:
    """A whole month; month 13 is the next January, month 0 the December before."""
    first = shifted(date(year, 1, 1), 0, month - 1)
    return Span(first, first.replace(day=days_in(first.year, first.month)))


def year_span(year: int) -> Span:
    """A whole year."""
    return Span(date(year, 1, 1), date(year, 12, 31))


def week_span(day: date, weeks: int = 0) -> Span:
    """The week, Monday to Sunday as in ISO 8601, that holds `day`, or one some weeks from it."""
    monday = shifted(day, 7 * weeks - day.weekday())
    return Span(monday, shifted(monday, 6))


def season_span(year: int, season: str) -> Span:
    """A season of the northern half, by whole months; the winter of a year begins in its December."""
    first = SEASONS[season]
    return Span(month_span(year, first).lo, month_span(year, first + 2).hi)


def day_or_none(year: int, month: int, day: int) -> date | None:
    """The day, or nothing where the calendar has none."""
    if 1 <= year <= 9999 and 1 <= month <= 12 and 1 <= day <= days_in(year, month):
        return date(year, month, day)
    return None


def days_in_years(years: Iterable[int], month: int, day: int) -> list[Span]:
    """That day in each of the years that has it."""
    return [one_day(found) for year in years if (found := day_or_none(year, month, day))]


def nth_weekday(year: int, month: int, weekday: int, which: int) -> date | None:
    """The first, second ... (1, 2 ...) or last (-1) of a weekday in a month."""
    span = month_span(year, month)
    if which < 0:
        return span.hi - timedelta((span.hi.weekday() - weekday) % 7)
    return day_or_none(year, month, 1 + (weekday - span.lo.weekday()) % 7 + 7 * (which - 1))


@lru_cache(maxsize=256)
def easter(year: int) -> date:
    """Easter Sunday in the Gregorian calendar.

    Source: the anonymous algorithm of Nature, 1876, as in Meeus, Astronomical Algorithms, chapter 8.
    """
    a, (b, c) = year % 19, divmod(year, 100)
    d, e = divmod(b, 4)
    g = (b - (b + 8) // 25 + 1) // 3
    h = (19 * a + b - d - g + 15) % 30
    i, k = divmod(c, 4)
    n = (32 + 2 * e + 2 * i - h - k) % 7
    m = (a + 11 * h + 22 * n) // 451
    month, day = divmod(h + n - 7 * m + 114, 31)
    return date(year, month, day + 1)


def feast_day(year: int, name: str) -> date | None:
    """The day of a feast named in the tables, in that year."""
    if name in EASTER_FEASTS:
        return shifted(easter(year), EASTER_FEASTS[name])
    if name in NTH_FEASTS:
        return nth_weekday(year, *NTH_FEASTS[name])
    return day_or_none(year, *FIXED_FEASTS[name])
