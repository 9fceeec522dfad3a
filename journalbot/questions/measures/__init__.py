"""What can be asked: every measure by its name. What can be asked of one batch can be asked of many."""

from journalbot.questions.measures import (
    acts,
    bottles,
    calculations,
    costs,
    doses,
    durations,
    fermenting,
    money,
    places,
    plans,
    practice,
    pressing,
    proportions,
    readings,
    rooms,
    standing,
    stories,
    strength,
    sulfites,
    sweetening,
    tastings,
    vessels,
    warnings,
)
from journalbot.questions.measures.base import Case, Fact, Measure

__all__ = ["FAMILIES", "MEASURES", "Case", "Fact", "Measure"]

FAMILIES = (
    fermenting,
    readings,
    strength,
    acts,
    durations,
    pressing,
    vessels,
    places,
    bottles,
    money,
    tastings,
    plans,
    stories,
    standing,
    calculations,
    sulfites,
    doses,
    sweetening,
    rooms,
    practice,
    costs,
    proportions,
    warnings,
)
MEASURES: dict[str, Measure] = {m.name: m for family in FAMILIES for m in family.MEASURES}
