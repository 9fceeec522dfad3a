"""What can be asked: every measure by its name. What can be asked of one batch can be asked of many."""

from importlib import import_module

from journalbot.questions.measures import (
    acts,
    bottles,
    costs,
    durations,
    fermenting,
    money,
    places,
    plans,
    practice,
    pressing,
    readings,
    standing,
    stories,
    strength,
    tastings,
    vessels,
)
from journalbot.questions.measures.base import Case, Fact, Measure

__all__ = ["FAMILIES", "MEASURES", "WORKED_OUT", "Case", "Fact", "Measure"]

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
    practice,
    costs,
)
# Families that only a calculation leads to, and that are loaded when it does.
WORKED_OUT = ("calculations", "sulfites", "doses", "sweetening", "rooms", "proportions", "warnings")


class _Measures(dict[str, Measure]):
    """Every measure by its name; going through it gives those that words can ask for."""

    def __missing__(self, name: str) -> Measure:
        for family in WORKED_OUT:
            self.update((m.name, m) for m in import_module(f"{__name__}.{family}").MEASURES)
        if name not in self:
            raise KeyError(name)
        return self[name]


MEASURES: dict[str, Measure] = _Measures((m.name, m) for family in FAMILIES for m in family.MEASURES)
