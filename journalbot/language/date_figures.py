"""Days and months of the calendar: 10/3, 3.10.2024, 2024-10-03, Oct 2nd, the 4th, October 2023."""

from collections.abc import Sequence

from journalbot.language import date_words as dw
from journalbot.language.date_readings import THREE, Reading, Sentence, century, fixed
from journalbot.language.date_spans import (
    FIRST_YEAR,
    LAST_YEAR,
    Span,
    day_or_none,
    month_span,
    nth_weekday,
    one_day,
    shifted,
    year_span,
)

_PAST_THE_MONTH = range(32, 40)  # figures that in a date's place can only be a day that does not exist


def read_calendar_day(s: Sentence, i: int) -> Reading | None:
    """A date that starts with a figure: 10/3, 10/3/24, 2024-10-03, 20241003, 3.10.2024, 3 Oct, 4th of October."""
    word = s.words[i]
    if not word.isdecimal():
        return _dotted(s, i)
    if len(word) == 8:
        found = day_or_none(int(word[:4]), int(word[4:6]), int(word[6:]))
        return fixed(i + 1, one_day(found)) if found and FIRST_YEAR <= found.year <= LAST_YEAR else None
    if len(word) > 4:
        return None
    after = s.word(i + 1)
    if (
        after in ("/", "-")
        and s.adjoins(i + 1)
        and s.adjoins(i + 2)
        and (found_joined := _joined(s, i, after)) is not None
    ):
        return found_joined
    if len(word) <= 2 and (named := _day_then_month(s, i) or _past_the_month(s, i)) is not None:
        return named
    return read_ordinal_day(s, i, False) if after in dw.ORDINAL_ENDS else None


def read_year(s: Sentence, i: int) -> Reading | None:
    """2023: sure after "in" or "since" and before no noun, weak elsewhere ("2022 zin")."""
    year = s.integer(i)
    if year is None or not FIRST_YEAR <= year <= LAST_YEAR or s.word(i + 1) in dw.COUNTED:
        return None
    before = s.word(i - 1)
    listed = before in ("and", "or", ",", "to", "-", "vs") and len(s.word(i - 2)) == 4 and s.word(i - 2).isdecimal()
    sure = (before in dw.YEAR_LICENCES or listed) and s.closed(i + 1)
    return fixed(i + 1, year_span(year), weak=not sure)


# Months


def read_month(s: Sentence, i: int) -> Reading | None:
    """Oct 2, October 2nd, 2024, Oct '24, October the 2nd, Oct 2-4, October 2023, October last year, October."""
    word = s.words[i]
    month = dw.MONTHS[word]
    j = i + 1
    if s.word(j) in (".", "-") and s.adjoins(j) and (s.word(j) == "." or s.adjoins(j + 1)):
        j += 1
    named = s.word(j) == "the"
    k = j + 1 if named else j
    if (day := _day_figure(s, k)) is not None:
        if day[2] or s.word(day[1]) not in dw.COUNTED:
            return _with_year(s, day[1], month, day[0])
    elif s.integer(k, 2) in _PAST_THE_MONTH and s.word(i - 1) in dw.LICENCES and s.word(k + 1) not in dw.COUNTED:
        return fixed(k + 1, None)
    elif (spelt := _ordinal_word(s, k)) is not None and (
        word not in dw.SHY_MONTHS or named or s.word(i - 1) in dw.LICENCES
    ):
        return _with_year(s, spelt[1], month, spelt[0])
    year = s.year_at(j)
    if year and (s.word(j) != "," or s.closed(year[1])):
        return fixed(year[1], month_span(year[0], month))
    return _month_alone(s, i, month)


def _day_figure(s: Sentence, k: int) -> tuple[int, int, bool] | None:
    """A day of the month in figures at `k`, where it ends, and whether it is an ordinal; not 1/4 or 9:30."""
    day = s.integer(k, 2)
    if day is None or not 1 <= day <= 31:
        return None
    if s.word(k + 1) in ("/", ":") and s.adjoins(k + 1) and s.adjoins(k + 2) and s.word(k + 2).isdecimal():
        return None
    suffixed = s.word(k + 1) in dw.ORDINAL_ENDS and s.adjoins(k + 1)
    return day, k + 2 if suffixed else k + 1, suffixed


def _with_year(s: Sentence, k: int, month: int, day: int, until: int | None = None) -> Reading:
    """The day of a month with what follows at `k`: a last day ("2-4"), a year."""
    if (
        until is None
        and s.word(k) in ("-", "–")
        and s.adjoins(k)
        and s.adjoins(k + 1)
        and (last := _day_figure(s, k + 1))
        and last[0] > day
    ):
        until, k = last[0], last[1]
    year = s.year_at(k)
    first = s.month_day(year[1] if year else k, month, day, year[0] if year else None)
    if until is None:
        return first
    pairs = ((o, day_or_none(o.lo.year, month, until)) for o in first.options)
    return first._replace(options=tuple(Span(o.lo, hi) for o, hi in pairs if hi))


def _month_alone(s: Sentence, i: int, month: int) -> Reading | None:
    """October; "may" and "march" only beside a cue, and not where they are verbs."""
    word, before, after = s.words[i], s.word(i - 1), s.word(i + 1)
    reading = Reading(i + 1, tuple(month_span(y, month) for y in s.years))
    if not (before in dw.MONTH_LICENCES or before in dw.MODIFIERS or s.heads_line(i, i + 1)):
        return None if word in dw.SHY_MONTHS else reading._replace(weak=word in dw.NAMESAKES)
    if word in dw.SHY_MONTHS:
        verb = word == "may" and (after in dw.AFTER_VERB_MAY or (before == "this" and not s.ends(i + 1)))
        if verb or (before in dw.MODIFIERS and s.word(i - 2) in ("the", "that")):  # "the last may have gone"
            return None
    return reading


def _day_then_month(s: Sentence, i: int) -> Reading | None:
    """3 Oct, 3rd of October 2024, 3-Oct-24, 3-5 Oct; not "batch 2 may need", nor the 3 of "batch 3 Oct 5"."""
    first = _day_figure(s, i)
    if first is None or (s.word(i - 1) in dw.NUMBERED_THINGS and not first[2]):
        return None
    day, j, sure = first
    until = None
    if s.word(j) in ("-", "–", "to") and (last := _day_figure(s, j + 1)) and last[0] > day:
        until, j = last[0], last[1]
    joined = s.word(j) in ("-", "/", ".") and s.adjoins(j) and s.adjoins(j + 1)
    if joined or s.word(j) in ("of", "of the"):
        j, sure = j + 1, True
    word = s.word(j)
    if word not in dw.MONTHS:
        return None
    month, k = dw.MONTHS[word], j + 1
    if s.word(k) == "." and s.adjoins(k) and len(s.word(k + 1)) == 4 and s.year_at(k + 1):
        k += 1
    shy = word in dw.SHY_MONTHS and not sure and s.year_at(k) is None
    if shy and not (s.word(i - 1) in dw.LICENCES and s.closed(k)) and not s.heads_line(i, k):
        return None
    dashed = s.word(k) in ("-", "/") and joined
    if (year := _short_year(s, k + 1 if dashed else k, dashed)) is not None:
        return s.month_day(k + 2 if dashed else k + 1, month, day, year)
    return _with_year(s, k, month, day, until)


def _past_the_month(s: Sentence, i: int) -> Reading | None:
    """On 32 October, 35th of May: a date in form, of a day that no month has."""
    if s.integer(i, 2) not in _PAST_THE_MONTH or not (
        s.word(i - 1) in dw.LICENCES or s.heads_line(i, i + 2) or s.word(i - 2) in dw.LICENCES
    ):
        return None
    j = i + 1
    j += s.word(j) in dw.ORDINAL_ENDS
    j += s.word(j) == "of"
    return fixed(j + 1, None) if s.word(j) in dw.MONTHS and s.integer(j + 1, 2) is None else None


def _short_year(s: Sentence, k: int, dashed: bool) -> int | None:
    """Two figures of a year: 3-Oct-24; with spaces ("3 Oct 24") only at the clause's end and near the note's year."""
    short = s.integer(k, 2)
    if short is None or len(s.words[k]) != 2:
        return None
    near = s.ends(k + 1) and not s.word(k + 2).isdecimal() and abs(century(short) - s.on.year) <= 30 and short > 12
    return century(short) if dashed or near else None


# Ordinals


def _ordinal_word(s: Sentence, i: int) -> tuple[int, int] | None:
    """A day of the month in words ("second", "twenty second"), and where it ends."""
    word = s.word(i)
    if word in ("twenty", "thirty"):
        day = (20 if word == "twenty" else 30) + dw.ORDINALS.get(s.word(i + 1), 31)
        return (day, i + 2) if day <= 31 else None
    return (dw.ORDINALS[word], i + 1) if word in dw.ORDINALS else None


def read_ordinal_day(s: Sentence, i: int, named: bool) -> Reading | None:
    """The 4th, 4th of October, the second of June, first week of May; `named` where "the" stands before it.

    Alone it is weak ("the 4th racking"), unless a preposition of dates stands before it and none of the things that
    people number after it.
    """
    figure = _day_figure(s, i)
    spelt = _ordinal_word(s, i)
    if figure is not None and figure[2]:
        day, j = figure[0], figure[1]
        if (dated := _day_then_month(s, i)) is not None:
            return dated
    elif spelt is not None:
        day, j = spelt
        k = j + 1 if s.word(j) == "of" else j
        if s.word(k) in dw.MONTHS and (k > j or (named and (s.words[k] not in dw.SHY_MONTHS or s.closed(k + 1)))):
            return _with_year(s, k + 1, dw.MONTHS[s.words[k]], day)
    else:
        return None
    if s.word(j) == "of" and s.word(j + 2) == "month" and s.word(j + 1) in dw.MODIFIERS:
        month = month_span(s.on.year, s.on.month + THREE[dw.MODIFIERS[s.words[j + 1]]] - 1).lo
        found = day_or_none(month.year, month.month, day)
        return fixed(j + 3, one_day(found) if found else None)
    if (part := read_part_of_month(s, j, day)) is not None:
        return part
    of_month = s.word(j) == "of" and s.word(j + 1) == "the" and s.word(j + 2) == "month"
    licensed = of_month or (s.word(i - 2 if named else i - 1) in dw.LICENCES and s.word(j) not in dw.ORDINAL_NOUNS)
    if not licensed and (spelt is not None or not named):
        return None
    if spelt is not None and not (of_month or s.ends(j)):
        return None
    months = (s.on.year * 12 + s.on.month - 1 + k for k in range(-3, 4))
    days = [one_day(found) for m in months if (found := day_or_none(m // 12, m % 12 + 1, day))]
    return Reading(j + 3 if of_month else j, tuple(days), weak=not licensed)


def read_part_of_month(s: Sentence, j: int, which: int) -> Reading | None:
    """First week of October, second half of May, third Tuesday in October, last weekend of June.

    `j` is the place after the ordinal `which`; -1 stands for the last.
    """
    unit = s.word(j)
    if (
        s.word(j + 1) not in ("of", "in")
        or s.word(j + 2) not in dw.MONTHS
        or which > 5
        or not (unit in ("half", "week", "weekend") or unit in dw.WEEKDAYS)
    ):
        return None
    month, year = dw.MONTHS[s.words[j + 2]], s.year_at(j + 3)
    years: Sequence[int] = (year[0],) if year else s.years
    spans = tuple(span for y in years if (span := _part_of_month(month_span(y, month), unit, which)))
    return Reading(year[1] if year else j + 3, spans, fixed=year is not None)


def _part_of_month(month: Span, unit: str, which: int) -> Span | None:
    if unit == "half":
        middle = month.lo.replace(day=15)
        return Span(month.lo, middle) if which == 1 else Span(shifted(middle, 1), month.hi)
    if unit == "week":
        lo = shifted(month.hi, -6) if which < 0 else shifted(month.lo, 7 * (which - 1))
        return Span(lo, min(shifted(lo, 6), month.hi)) if lo <= month.hi else None
    day = nth_weekday(month.lo.year, month.lo.month, dw.WEEKDAYS.get(unit, 5), which)
    if day is None:
        return None
    return Span(day, min(shifted(day, 1), month.hi)) if unit == "weekend" else one_day(day)


# Figures


def _order(s: Sentence, a: int, b: int) -> tuple[int, int] | None:
    """Month and day of two figures: as the journal is set, or the only way that a month comes out."""
    month, day = (b, a) if s.day_first else (a, b)
    if not 1 <= month <= 12:
        month, day = day, month
    return (month, day) if 1 <= month <= 12 and 1 <= day <= 31 else None


def _joined(s: Sentence, i: int, mark: str) -> Reading | None:
    """Figures joined by slashes or hyphens: 10/3, 10/3/24, 10/2024, 2024-10-03, 2024-10, 10-3-24."""
    a, b = int(s.words[i]), s.integer(i + 2)
    if b is None or (s.word(i - 1) in ("/", "-", ".", "$", "#", ":") and s.adjoins(i)):
        return None
    if s.word(i + 3) == mark and s.adjoins(i + 3) and s.adjoins(i + 4) and s.word(i + 4).isdecimal():
        return _three_figures(s, i, a, b)
    if FIRST_YEAR <= a <= LAST_YEAR and len(s.words[i + 2]) == 2 and 1 <= b <= 12:
        return fixed(
            i + 3, month_span(a, b), weak=s.word(i - 1) not in dw.MONTH_LICENCES and not s.heads_line(i, i + 3)
        )
    if mark == "/" and FIRST_YEAR <= b <= LAST_YEAR and 1 <= a <= 12:
        return fixed(i + 3, month_span(b, a))
    if mark != "/":
        return None
    if max(a, b) in _PAST_THE_MONTH and 1 <= min(a, b) <= 12 and s.word(i - 1) == "on":
        return fixed(i + 3, None)
    return _slash_date(s, i, a, b) if max(a, b) <= 31 else None


def _three_figures(s: Sentence, i: int, a: int, b: int) -> Reading | None:
    c = s.integer(i + 4)
    widths = len(s.words[i]), len(s.words[i + 2]), len(s.words[i + 4])
    if c is None:
        return None
    if (
        widths[0] == 4
        and FIRST_YEAR <= a <= LAST_YEAR
        and widths[1] <= 2
        and widths[2] <= 2
        and 1 <= b <= 12
        and 1 <= c <= 31
    ):
        return s.month_day(i + 5, b, c, a)
    year = century(c) if widths[2] == 2 else c
    order = _order(s, a, b)
    if widths[2] not in (2, 4) or max(widths[:2]) > 2 or not FIRST_YEAR <= year <= LAST_YEAR or order is None:
        return None
    return s.month_day(i + 5, *order, year)


def _slash_date(s: Sentence, i: int, a: int, b: int) -> Reading | None:
    """10/3 without a year; weak where it may be a fraction or a score, nothing where a unit shows a fraction."""
    order = _order(s, a, b)
    before, stop = s.word(i - 1), i + 3
    after = s.word(stop)
    if (
        order is None
        or after in dw.COUNTED
        or after in dw.AFTER_FRACTION
        or (after == "of" and s.word(stop + 1) in ("a", "an", "the"))
    ):
        return None
    fraction, score = (a, b) in dw.FRACTIONS, b in dw.SCORES and a <= b
    if fraction and s.integer(i - 1) is not None and s.word(i - 2) != "/":
        return None  # 1 1/2
    licences = dw.LICENCES - {"by", "after"} if fraction else dw.LICENCES
    if f"{a}/{b}" in dw.NEVER_DATES and before not in licences:
        return None
    padded = "0" in (s.words[i][0], s.words[i + 2][0])
    listed = before in ("and", "&", ",", "-", "to") and s.word(i - 3) == "/" and s.word(i - 5) in dw.LICENCES
    sure = padded or listed or before in licences or (s.heads_line(i, stop) and not score and after == ":")
    return s.month_day(stop, *order, None)._replace(weak=(fraction or score) and not sure)


def _dotted(s: Sentence, i: int) -> Reading | None:
    """3.10.2024 and 3.10.24; 3.10 or 3.10. only after "on" or "since", as it may be a pH."""
    left, _, right = s.words[i].partition(".")
    if not (left.isdecimal() and right.isdecimal() and len(left) <= 2 and len(right) <= 2):
        return None
    day, month, year, stop = int(left), int(right), None, i + 1
    if s.word(stop) == "." and s.adjoins(stop):
        stop += 1
        given = s.integer(stop) if s.adjoins(stop) else None
        if given is not None and len(s.words[stop]) in (2, 4):
            year, stop = century(given) if given < 100 else given, stop + 1
    if not (1 <= month <= 12 and 1 <= day <= 31) or (year is not None and not FIRST_YEAR <= year <= LAST_YEAR):
        return None
    if year is None and (s.word(i - 1) not in ("on", "since", "until", "till", "am") or s.word(stop) in dw.COUNTED):
        return None
    return s.month_day(stop, month, day, year)._replace(weak=year is None and not s.day_first)
