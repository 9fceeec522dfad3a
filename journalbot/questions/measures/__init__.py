"""What can be asked: every measure by its name. What can be asked of one batch can be asked of many."""

from journalbot.questions.measures import (
    acts,
    bottles,
    calculations,
    costs,
    durations,
    fermenting,
    money,
    plans,
    practice,
    proportions,
    readings,
    stories,
    strength,
    tastings,
    vessels,
)
from journalbot.questions.measures.base import Case, Fact, Measure

__all__ = ["FAMILIES", "MEASURES", "Case", "Fact", "Measure"]

FAMILIES = (
    fermenting,
    readings,
    strength,
    acts,
    durations,
    vessels,
    bottles,
    money,
    tastings,
    plans,
    stories,
    calculations,
    practice,
    costs,
    proportions,
)
MEASURES: dict[str, Measure] = {m.name: m for family in FAMILIES for m in family.MEASURES}
