"""Dates told by a length of time: 3 weeks ago, a week ago Sunday, two Fridays ago, the last 3 weeks."""

from datetime import date
from functools import lru_cache

from journalbot.language import date_words as dw
from journalbot.language.date_readings import Reading, Sentence, fixed
from journalbot.language.date_spans import Span, month_span, one_day, shifted, year_span
from journalbot.language.date_weekdays import surely_weekday, with_day_part
from journalbot.language.number_words import STARTERS as COUNT_WORDS
from journalbot.language.numerals import read_count

UNIT_OF = dw.UNITS_OF_TIME
DAYS_IN: dict[str, int] = {"hour": 0, "day": 1, "week": 7, "fortnight": 14}
MONTHS_IN: dict[str, int] = {"month": 1, "year": 12}


def length_of(count: float, unit: str) -> tuple[int, int]:
    """So many units as months and days."""
    if unit in MONTHS_IN:
        months = count * MONTHS_IN[unit]
        return int(months), round((months - int(months)) * 30)
    return 0, round(count * DAYS_IN[unit])


def count_at(s: Sentence, i: int) -> tuple[float, int, bool] | None:
    """A number of days or weeks at `i`: value, end, and whether it is only rough ("a few", "2-3", "two or three")."""
    word = s.word(i)
    if word in ("few", "several") or (word == "a" and s.word(i + 1) == "few"):
        return 3, i + (2 if word == "a" else 1), True
    found = read_count(s.tokens, i)
    if found is None:
        return None
    value, j = found
    if s.word(j) in ("-", "–", "or", "to") and (second := read_count(s.tokens, j + 1)) and second[0] > value:
        return (value + second[0]) / 2, second[1], True
    return value, j, False


def length_at(s: Sentence, i: int) -> tuple[float, str, int, bool] | None:
    """A length of time at `i`: count, unit, end, whether rough: 3 weeks, a week and a half, a week or two."""
    count = count_at(s, i)
    if count is None:
        return None
    value, j, rough = count
    unit = UNIT_OF.get(s.word(j))
    if unit is None or unit == "weekend":
        return None
    j += 1
    if s.word(j) == "and" and s.word(j + 1) == "a" and s.word(j + 2) == "half":
        value, j = value + 0.5, j + 3
    if s.word(j) == "or" and s.word(j + 1) in ("two", "so", "three"):
        value, rough, j = value + 0.5 * (s.words[j + 1] == "two"), True, j + 2
    return value, unit, j, rough


def weekdays_ago(s: Sentence, i: int) -> Reading | None:
    """two Fridays ago."""
    count = count_at(s, i)
    if count is None or s.word(count[1]) not in dw.WEEKDAYS or s.word(count[1] + 1) != "ago" or count[0] < 1:
        return None
    last = Reading(count[1] + 2, s.weekday_spans(dw.WEEKDAYS[s.words[count[1]]])).picked("last", s.on)
    return last.moved(-7 * (int(count[0]) - 1))


def rolling(s: Sentence, stop: int, count: float, unit: str) -> Reading:
    """The last 3 weeks, the past month, the next few days: that long up to today, or from it."""
    months, days = length_of(count, unit)
    edge = shifted(s.on, -days, -months)
    return fixed(stop, Span(min(edge, s.on), max(edge, s.on)))


def ago(s: Sentence, stop: int, value: float, unit: str, rough: bool) -> Reading:
    """That long ago: days and weeks to the day, months and years only to the month and year, as people remember."""
    months, days = length_of(value, unit)
    day = shifted(s.on, -days, -months)
    if unit in ("week", "fortnight") and not rough and (named := _ago_from(s, stop, days)):
        return named
    if unit in MONTHS_IN and s.word(stop) == "today":
        return fixed(stop + 1, one_day(day))
    if unit == "year" and months % 12 == 0:
        return fixed(stop, year_span(day.year))
    if unit in MONTHS_IN:
        return fixed(stop, month_span(day.year, day.month))
    if rough and days:
        slack = max(days // 3, 1)
        return fixed(stop, Span(shifted(day, -slack), min(shifted(day, slack), shifted(s.on, -1))), weak=unit == "day")
    return with_day_part(s, fixed(stop, one_day(day)))


def _ago_from(s: Sentence, stop: int, days: int) -> Reading | None:
    """The day named after "a week ago": Sunday, last Sunday, yesterday, today."""
    last = s.word(stop) == "last"
    k = stop + 1 if last or s.word(stop) == "on" else stop
    word = s.word(k)
    if word in dw.RELATIVE_DAYS and k == stop:
        return s.day(k + 1, dw.RELATIVE_DAYS[word] - days)
    if word not in dw.WEEKDAYS or (word in dw.SHY_WEEKDAYS and not (surely_weekday(s, k) or s.ends(k + 1))):
        return None
    spans = Reading(k + 1, s.weekday_spans(dw.WEEKDAYS[word]))
    latest = (spans.picked("last", s.on) if last else spans).backward(s.on)
    return with_day_part(s, fixed(k + 1, (latest or one_day(s.on)).shifted(-days)))


def due_in(s: Sentence, stop: int, value: float, unit: str, rough: bool) -> Reading:
    """That long from now, to the day, as a plan is due on one; "in a week or two" only to the month."""
    months, days = length_of(value, unit)
    day = shifted(s.on, days, months)
    return fixed(stop, month_span(day.year, day.month) if rough and unit != "hour" else one_day(day))


# What the grammar does not know


def read_with_library(s: Sentence, at: int, floor: int) -> tuple[int, Reading] | None:
    """By dateparser, the place and reading of a compound length before the "ago" at `at`: a year and two months ago."""
    first = at
    while (
        first > floor
        and at - first < 8
        and (s.words[first - 1] in COUNT_WORDS or s.words[first - 1] in UNIT_OF or s.words[first - 1].isdecimal())
    ):
        first -= 1
    words = s.words[first:at]
    if len(words) < 3 or not any(w in UNIT_OF for w in words) or words[0] in UNIT_OF:
        return None
    span = _ask_dateparser(" ".join(words) + " ago", s.on)
    return (first, fixed(at + 1, span)) if span else None


@lru_cache(maxsize=1024)
def _ask_dateparser(phrase: str, on: date) -> Span | None:
    # Imported only here: the import and the first call take some 0.4 s, and few notes need it.
    from datetime import datetime, time

    from dateparser.date import DateDataParser

    settings = {"RELATIVE_BASE": datetime.combine(on, time(12)), "PREFER_DATES_FROM": "past"}
    found = DateDataParser(languages=["en"], settings=settings).get_date_data(phrase)
    if found.date_obj is None or (day := found.date_obj.date()) > on:
        return None
    if found.period == "month":
        return month_span(day.year, day.month)
    return year_span(day.year) if found.period == "year" else one_day(day)
