"""Stretches of time told from the note's day or by a year: "last week", "this month", "over the winter"."""

from journalbot.language import date_words as dw
from journalbot.language.date_readings import THREE, Reading, Sentence, fixed
from journalbot.language.date_spans import Span, month_span, season_span, shifted, week_span, year_span


def unit_reading(s: Sentence, unit: str, modifier: str, stop: int) -> Reading:
    """last week, this month, next year; the last weekend is over, the next one begins after the note's day."""
    if unit == "weekend":
        weekends = tuple(Span(shifted(w.lo, 5), w.hi) for w in (week_span(s.on, k) for k in (-2, -1, 0, 1)))
        return Reading(stop, weekends).picked(modifier, s.on)
    step = THREE[modifier] - 1
    if unit == "week":
        return fixed(stop, week_span(s.on, step))
    if unit == "month":
        return fixed(stop, month_span(s.on.year, s.on.month + step))
    return fixed(stop, year_span(s.on.year + step))


def read_season(s: Sentence, i: int) -> Reading | None:
    """last fall, in spring, summer 2023, over the winter; without a cue "fall" and "spring" are other things."""
    season, before = s.words[i], s.word(i - 1)
    if year := s.year_at(i + 1):
        return fixed(year[1], season_span(year[0], season))
    if before == "the":
        before = s.word(i - 2)
    if before not in dw.MONTH_LICENCES and before not in dw.MODIFIERS and before != "over":
        return None
    return Reading(i + 1, tuple(season_span(y, season) for y in s.years), weak=not s.closed(i + 1))
