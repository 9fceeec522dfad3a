"""Dates told from the note's day: "last Tuesday", "in 3 weeks", "end of next month", "Whit Sunday"."""

from collections.abc import Callable

from journalbot.language import date_words as dw
from journalbot.language.date_figures import (
    read_calendar_day,
    read_month,
    read_ordinal_day,
    read_part_of_month,
    read_year,
)
from journalbot.language.date_lengths import (
    DAYS_IN,
    MONTHS_IN,
    UNIT_OF,
    ago,
    count_at,
    due_in,
    length_at,
    length_of,
    rolling,
    weekdays_ago,
)
from journalbot.language.date_periods import read_season, unit_reading
from journalbot.language.date_readings import THREE, Reading, Sentence, fixed
from journalbot.language.date_spans import (
    Span,
    feast_day,
    month_span,
    one_day,
    shifted,
    year_span,
)
from journalbot.language.date_weekdays import ahead, day_of_week, read_relative_day, read_weekday, with_day_part
from journalbot.language.number_words import APPROX_BEFORE
from journalbot.language.number_words import STARTERS as COUNT_WORDS

Reader = Callable[[Sentence, int], "Reading | None"]

MODIFIERS = dw.MODIFIERS


def _meal(s: Sentence, i: int) -> Reading | None:
    """after supper, before breakfast, after work: today."""
    return s.day(i + 2, 0) if s.word(i + 1) in dw.MEALS else None


# Last, this, next


def _modified(s: Sentence, i: int) -> Reading | None:
    """last Tuesday, this past Sunday, next month, last fall, this morning, the last 3 weeks, next Easter."""
    if (offset := _offset(s, i)) is not None:
        return offset
    modifier, j = MODIFIERS[s.words[i]], i + 1
    if s.words[i] == "this" and s.word(j) in MODIFIERS:  # "this past Sunday", "this coming Friday"
        modifier, j = MODIFIERS[s.words[j]], j + 1
    word = s.word(j)
    unit = UNIT_OF.get(word)
    if word in dw.DAY_PARTS:
        return _modified_day_part(s, j, modifier)
    if modifier == "last" and (part := read_part_of_month(s, j, -1)) is not None:
        return part
    if unit in ("week", "month", "year", "weekend"):
        return _modified_unit(s, j, modifier, unit, s.words[j - 1] == "past")
    if word in dw.WEEKDAYS:
        reading = read_weekday(s, j)
        if reading is None or reading.weak or reading.fixed:
            return None if reading is None or reading.weak else reading
        return reading.picked(modifier, s.on) if reading.options == s.weekday_spans(dw.WEEKDAYS[word]) else reading
    if word in dw.MONTHS:
        reading = read_month(s, j)
        if reading is None or reading.fixed:
            return reading
        if modifier == "this":
            return reading._replace(
                options=tuple(o for o in reading.options if o.lo.year == s.on.year), fixed=True, weak=False
            )
        return reading.picked(modifier, s.on)
    if word in dw.SEASONS or word in dw.FEASTS_BY_WORD:
        reading = read_season(s, j) if word in dw.SEASONS else _feast(s, j)
        return reading.picked(modifier, s.on) if reading and not reading.fixed else reading
    count = count_at(s, j) if modifier != "this" else None
    if count is None or (unit := UNIT_OF.get(s.word(count[1]))) in (None, "hour", "weekend"):
        return None
    return rolling(s, count[1] + 1, count[0] if modifier == "last" else -count[0], unit or "day")


def _modified_unit(s: Sentence, j: int, modifier: str, unit: str, past: bool) -> Reading:
    """last week, last week Tuesday, last year's (weak: a wine's name), the past month."""
    if unit == "week" and s.word(j + 1) in dw.WEEKDAYS and s.words[j + 1] not in dw.SHY_WEEKDAYS:
        return with_day_part(s, day_of_week(s, j + 2, modifier, dw.WEEKDAYS[s.words[j + 1]]))
    if past and unit != "weekend":
        return rolling(s, j + 1, 1, unit)
    reading = unit_reading(s, unit, modifier, j + 1)
    owned = s.word(j + 1) == "'s"
    label = unit == "year" and (owned or s.words[j] == "years" or s.word(j - 2) in dw.NOT_BEFORE_LAST_YEAR)
    return reading._replace(stop=j + 2 if owned else j + 1, weak=label)


def _modified_day_part(s: Sentence, j: int, modifier: str) -> Reading | None:
    """this morning, last night; the next morning is the one after the day spoken of."""
    if modifier == "this":
        return s.day(j + 1, 0)
    if modifier == "last":
        return s.day(j + 1, -1) if s.words[j] in ("night", "nite", "evening", "eve") else None
    return Reading(j + 1, (), weak=True, offset=(0, 1))


def _the(s: Sentence, i: int) -> Reading | None:
    """the 4th, the day before yesterday, the other day, the weekend, the Tuesday before last, the end of the month."""
    j = i + 1
    word, after = s.word(j), s.word(j + 1)
    if (offset := _offset(s, j)) is not None:
        return offset
    if word == "other" and after in ("day", "night", "evening", "morning"):
        return fixed(j + 2, Span(shifted(s.on, -7), shifted(s.on, -2)), weak=True)
    unit = UNIT_OF.get(word)
    if unit and (beyond := _beyond(s, j)) is not None:
        return beyond
    if unit == "weekend":
        sure = s.word(i - 1) in ("over", "at", "on", "during", "until", "till", "by", "before", "after")
        return unit_reading(s, unit, "this", j + 1)._replace(weak=not sure)
    if word in ("day", "week"):
        return _from_a_date(s, j + 1, 1, word, whole=True)
    if (found := read_ordinal_day(s, j, True)) is not None:
        return found
    if word in dw.WEEKDAYS and after == "before":
        return read_weekday(s, j)
    if word in dw.SEASONS:
        return read_season(s, j)
    if word in MODIFIERS:
        return _modified(s, j)
    return _part_of_period(s, j) if word in dw.PARTS_OF_PERIOD else None


def _offset(s: Sentence, i: int) -> Reading | None:
    """the next day, that evening, the following week: told from the date spoken of before."""
    j = i + 1 if s.word(i) == "that" and s.word(i + 1) == "same" else i
    offset = OFFSETS.get((s.word(j), s.word(j + 1)))
    return None if offset is None else Reading(j + 2, (), weak=True, offset=offset)


OFFSETS: dict[tuple[str, str], tuple[int, int]] = {
    **{
        (which, part): (0, 1)
        for which in ("next", "following")
        for part in ("day", "morning", "evening", "night", "afternoon")
    },
    **{
        (which, part): (0, 0)
        for which in ("same", "that")
        for part in ("day", "morning", "evening", "night", "afternoon")
    },
    ("following", "week"): (0, 7),
    ("following", "month"): (1, 0),
    ("following", "year"): (12, 0),
}


def _bare_unit(s: Sentence, i: int) -> Reading | None:
    """day before yesterday, week before last, fortnight ago: the article left out."""
    word = s.words[i]
    if s.word(i + 1) == "ago":
        counted = s.word(i - 1) in COUNT_WORDS or s.word(i - 1).isdecimal()
        return None if counted or word == "weekend" else ago(s, i + 2, 1, UNIT_OF[word], rough=False)
    return _beyond(s, i) or _from_a_date(s, i + 1, 1, word, whole=True) if word in ("day", "week") else None


def _beyond(s: Sentence, i: int) -> Reading | None:
    """The week before last, the night before last, the weekend after next."""
    unit, stop = UNIT_OF[s.words[i]], i + 3
    ends = s.word(i + 1), s.word(i + 2)
    if ends == ("after", "next") and unit in ("week", "weekend", "month", "year"):
        span = unit_reading(s, unit, "next", stop).options[0]
        if unit in ("week", "weekend"):
            return fixed(stop, span.shifted(7))
        return fixed(
            stop, month_span(span.lo.year, span.lo.month + 1) if unit == "month" else year_span(span.lo.year + 1)
        )
    if ends != ("before", "last"):
        return None
    if unit in ("day", "hour"):
        return s.day(stop, -2)
    if unit == "month":
        return fixed(stop, month_span(s.on.year, s.on.month - 2))
    if unit == "year":
        return fixed(stop, year_span(s.on.year - 2))
    return unit_reading(s, "week" if unit == "fortnight" else unit, "last", stop).moved(-7)


# Counted


def _counted(s: Sentence, i: int) -> Reading | None:
    """3 weeks ago, a week ago Sunday, 3 weeks from now, two weeks later, two days after Christmas."""
    length = length_at(s, i)
    if length is None:
        return weekdays_ago(s, i)
    value, unit, j, rough = length
    word, after = s.word(j), s.word(j + 1)
    if s.word(i - 2 if s.word(i - 1) == "and" else i - 1) in UNIT_OF:
        return None  # "a year and two months ago"
    if word == "ago" or (word == "back" and s.ends(j + 1)):
        return ago(s, j + 1, value, unit, rough or s.word(i - 1) in APPROX_BEFORE)
    if word in ("later", "afterwards", "afterward") or (word == "after" and (s.ends(j + 1) or after == "that")):
        return Reading(j + (2 if after == "that" else 1), (), weak=True, offset=length_of(value, unit))
    if word == "hence" or (word == "from" and after in ("now", "today")):
        return due_in(s, j + (1 if word == "hence" else 2), value, unit, rough)
    if value == int(value) and DAYS_IN.get(unit, 0):
        return _from_a_date(s, j, int(value), unit)
    return None


def _in(s: Sentence, i: int) -> Reading | None:
    """in 3 weeks, in about a month, in 2 weeks' time, in another week. Later than the note: only a plan."""
    j = i + 1
    if not dw.NOT_BEFORE_IN.isdisjoint(s.words[max(i - 6, 0) : i]):
        return None  # "hasn't moved in 3 days"
    while s.word(j) in APPROX_BEFORE or s.word(j) == "just":
        j += 1
    if s.word(j) == "another" and s.word(j + 1) in UNIT_OF:
        value, unit, j, rough = 1.0, UNIT_OF[s.words[j + 1]], j + 2, False
    elif (length := length_at(s, j)) is not None:
        value, unit, j, rough = length
    else:
        return None
    if unit not in DAYS_IN and unit not in MONTHS_IN:
        return None
    j += s.word(j) == "'"
    j += s.word(j) == "time"
    return due_in(s, j, value, unit, rough)


def _from_a_date(s: Sentence, j: int, count: int, unit: str, whole: bool = False) -> Reading | None:
    """So many days or weeks before or after the date from `j` on: the day before yesterday, two weeks from Tuesday.

    "The week before Christmas" (`whole`) is all seven days of it.
    """
    word = s.word(j)
    inner = (
        read_date(s, j + 1)
        if word in ("before", "after", "from", "following") or (word == "on" and unit == "week")
        else None
    )
    if inner is None or not inner.options or inner.weak:
        return None
    days = count * DAYS_IN[unit]
    if word in ("from", "on"):
        return fixed(inner.stop, ahead(s, inner).shifted(days))
    if whole and unit == "week":
        weeks = (
            Span(shifted(o.lo, -7), shifted(o.lo, -1)) if word == "before" else Span(shifted(o.hi, 1), shifted(o.hi, 7))
            for o in inner.options
        )
        return inner._replace(options=tuple(weeks))
    return inner.moved(-days if word == "before" else days)


# Periods


def _part_of_period(s: Sentence, i: int) -> Reading | None:
    """early October, mid 2023, late last night, earlier this week, end of next month, beginning of the year."""
    word, j = s.words[i], i + 1
    of = s.word(j) == "of"
    if of or s.word(j) in ("-", "in", "on"):
        j += 1
    k = j + 1 if s.word(j) == "the" else j
    unit = UNIT_OF.get(s.word(k))
    if of and unit in ("week", "month", "year") and s.word(k + 1) != "'s":
        around = (unit_reading(s, unit, m, k + 1).options[0] for m in THREE)
        inner: Reading | None = Reading(k + 1, tuple(around))
    elif year := s.year_at(j):
        inner = fixed(year[1], year_span(year[0])) if s.closed(year[1]) else None
    else:
        inner = read_date(s, j) if s.word(j) not in COUNT_WORDS else None
    if inner is None or inner.offset or (inner.weak and s.word(j) not in dw.NAMESAKES):
        return None
    if word in ("earlier", "later") or all(o.lo == o.hi for o in inner.options):
        return inner._replace(weak=False)
    return inner._replace(options=tuple(o.third(dw.PARTS_OF_PERIOD[word]) for o in inner.options), weak=False)


def _feast(s: Sentence, i: int) -> Reading | None:
    """Christmas Eve, Whit Sunday, Easter last year; "for Christmas" and "the Christmas wine" are weak."""
    named = (row for row in dw.FEASTS_BY_WORD[s.words[i]] if tuple(s.words[i : i + len(row[0])]) == row[0])
    found = next(named, None)
    if found is None:
        other = FIRST_WORDS_BUT_FEASTS.get(s.words[i])
        return other(s, i) if other else None
    name, full = found
    j = i + len(name)
    if year := s.year_at(j):
        day = feast_day(year[0], full)
        return fixed(year[1], one_day(day) if day else None)
    before = s.word(i - 1)
    options = tuple(one_day(day) for y in s.years if (day := feast_day(y, full)))
    weak = before in dw.NOT_BEFORE_FEAST or (before not in dw.FEAST_CUES and not s.closed(j)) or s.word(j) == "'s"
    return with_day_part(s, Reading(j, options, weak=weak))


# What starts with what


def _ordinal(s: Sentence, i: int) -> Reading | None:
    return read_ordinal_day(s, i, False)


def _figure(s: Sentence, i: int) -> Reading | None:
    found = read_calendar_day(s, i)
    if found is not None:
        return with_day_part(s, found)
    return read_year(s, i) or _counted(s, i)


def _month(s: Sentence, i: int) -> Reading | None:
    found = read_month(s, i)
    return found and (with_day_part(s, found) if all(o.lo == o.hi for o in found.options) else found)


def read_date(s: Sentence, i: int) -> Reading | None:
    """The date that starts at `i`, if one does."""
    word = s.word(i)
    reader = FIRST_WORDS.get(word)
    if reader is None:
        return _figure(s, i) if word[:1].isdecimal() else None
    return reader(s, i)


FIRST_WORDS_BUT_FEASTS: dict[str, Reader] = {
    **dict.fromkeys(COUNT_WORDS, _counted),
    **dict.fromkeys(("few", "several"), _counted),
    **dict.fromkeys(dw.ORDINALS, _ordinal),
    **dict.fromkeys(("day", "night", "week", "weekend", "fortnight", "month", "year"), _bare_unit),
    **dict.fromkeys(("after", "before"), _meal),
    **dict.fromkeys(dw.PARTS_OF_PERIOD, _part_of_period),
    **dict.fromkeys(MODIFIERS, _modified),
    **dict.fromkeys(dw.WEEKDAYS, read_weekday),
    **dict.fromkeys(dw.MONTHS, _month),
    **dict.fromkeys(dw.SEASONS, read_season),
    **dict.fromkeys(dw.RELATIVE_DAYS, read_relative_day),
    "the": _the,
    "that": _offset,
    "same": _offset,
    "in": _in,
}
FIRST_WORDS: dict[str, Reader] = FIRST_WORDS_BUT_FEASTS | dict.fromkeys(dw.FEASTS_BY_WORD, _feast)
