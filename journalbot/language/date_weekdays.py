"""Days by name: today, yesterday evening, Tuesday, Sunday week, Tues. 3 Oct, and when "sat" and "sun" are days."""

from journalbot.language import date_words as dw
from journalbot.language.date_figures import read_calendar_day, read_month, read_ordinal_day
from journalbot.language.date_readings import THREE, Reading, Sentence, fixed
from journalbot.language.date_spans import Span, one_day, shifted, week_span

_A_MONTH = 31  # days within which a weekday and a day of the month are taken for one day


def read_relative_day(s: Sentence, i: int) -> Reading:
    """today, yesterday evening, tomorrow nite."""
    return with_day_part(s, s.day(i + 1, dw.RELATIVE_DAYS[s.words[i]]))


def with_day_part(s: Sentence, reading: Reading) -> Reading:
    """The reading of a day with the part of the day after it: "in the evening", "morning", "after supper"."""
    j = reading.stop
    if s.word(j) == "'s":
        j += 1
    k = j + 2 if s.word(j) == "in" and s.word(j + 1) == "the" else j
    if s.word(k) in ("early", "late"):
        k += 1
    if s.word(k) in dw.DAY_PARTS:
        return reading._replace(stop=k + 1)
    if s.word(j) in ("after", "before", "at") and s.word(j + 1) in dw.MEALS:
        return reading._replace(stop=j + 2)
    return reading._replace(stop=j)


def read_weekday(s: Sentence, i: int) -> Reading | None:
    """Tuesday, Sunday week, Tuesday before last, Friday of last week, Tues. 3 Oct, Sat the 4th."""
    word = s.words[i]
    weekday, j = dw.WEEKDAYS[word], i + 1
    if (dated := _weekday_with_date(s, j, weekday)) is not None:
        return with_day_part(s, dated)
    bare = Reading(j, s.weekday_spans(weekday))
    if word in dw.SHY_WEEKDAYS and not surely_weekday(s, i):
        lonely = s.ends(j) and s.word(i - 1) and s.word(i - 1) not in dw.NOT_BEFORE_SHY
        return bare._replace(weak=True) if lonely else None
    following, after = s.word(j), s.word(j + 1)
    if word.endswith("days"):
        return None  # "on Sundays"
    if following == "week" and after != "ago":
        return fixed(j + 1, ahead(s, bare).shifted(7))
    if following == "before" and after == "last":
        return bare.picked("last", s.on).moved(-7)._replace(stop=j + 2)
    if following == "last" and s.ends(j + 1):
        return bare.picked("last", s.on)._replace(stop=j + 1)
    k = j + 1 if following == "of" else j
    if s.word(k) in dw.MODIFIERS and dw.UNITS_OF_TIME.get(s.word(k + 1)) == "week":
        return with_day_part(s, day_of_week(s, k + 2, dw.MODIFIERS[s.words[k]], weekday))
    return with_day_part(s, bare)


def day_of_week(s: Sentence, stop: int, modifier: str, weekday: int) -> Reading:
    return fixed(stop, one_day(shifted(week_span(s.on, THREE[modifier] - 1).lo, weekday)))


def _weekday_with_date(s: Sentence, j: int, weekday: int) -> Reading | None:
    """The date written after a weekday that ends at `j`; where the two disagree there is no such day."""
    k = j + 1 if s.word(j) == "." and s.adjoins(j) else j
    comma = s.word(k) == ","
    k += comma
    word = s.word(k)
    if word == "the":
        dated = read_ordinal_day(s, k + 1, True)
        if dated is not None and s.word(dated.stop) in dw.ORDINAL_NOUNS:
            return None
    elif word in dw.MONTHS:
        dated = read_month(s, k)
    else:
        dated = read_calendar_day(s, k) if word[:1].isdecimal() else None
    if dated is None or any(o.lo != o.hi for o in dated.options):
        return None
    agreeing = dated._replace(options=tuple(o for o in dated.options if o.lo.weekday() == weekday), weak=False)
    near = tuple(o for o in agreeing.options if abs((o.lo - s.on).days) <= _A_MONTH)
    if word == "the" and near:
        return agreeing._replace(options=near)  # "on Saturday the 30th", more than a week off
    if dated.weak and not set(agreeing.options).intersection(s.weekday_spans(weekday)):
        return None  # "Sunday 8/10, best yet": only a date of these days would be written so
    if not agreeing.options and dated.options and comma:
        return None  # "bubbling by Thursday, 10/5 it went dry"
    return agreeing


def surely_weekday(s: Sentence, i: int) -> bool:
    """Whether "sat", "sun" or "mon" at `i` is a weekday by what stands beside it."""
    before, word, after = s.word(i - 1), s.words[i], s.word(i + 1)
    if word == "sat" and after in dw.AFTER_VERB_SAT and before not in ("on", "next"):
        return False
    if before == "this":
        return s.ends(i + 1) or after in dw.DAY_PARTS
    if before in dw.NOT_BEFORE_SHY:
        return after in dw.DAY_PARTS  # "in the sun", "it sat 68F"; "the Sat morning"
    if before in dw.SHY_WEEKDAY_CUES or before in dw.MODIFIERS or after in dw.DAY_PARTS or after in ("'s", "/"):
        return True
    if (after in ("and", "&") and s.word(i + 2) in dw.WEEKDAYS) or (
        before in ("and", "&", "/") and s.word(i - 2) in dw.WEEKDAYS
    ):
        return True
    if after[:1].isdecimal() or (after[:1] == "." and len(after) > 1):
        return s.word(i + 2) not in dw.UNITS_OF_TIME
    return after == ":" and s.heads_line(i, i + 1)


def ahead(s: Sentence, reading: Reading) -> Span:
    """The forward reading of words that always have one."""
    return reading.forward(s.on) or one_day(s.on)
