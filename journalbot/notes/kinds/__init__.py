"""The kinds of entry: for each family, how a clause is read as one. The order tells nothing but how an entry list is sorted."""

from collections.abc import Callable, Iterator

from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene
from journalbot.notes.kinds import (
    additions,
    bottles,
    buying,
    cellar,
    fermenting,
    oak,
    pitching,
    plans,
    readings,
    starting,
    tasting,
    vessels,
)

Reader = Callable[[Clause, Scene], Iterator[Draft]]

READERS: tuple[Reader, ...] = (
    starting.read,
    vessels.read,
    vessels.read_named,
    buying.read,
    cellar.read_acts,
    cellar.read_racking,
    cellar.read_moving,
    pitching.read,
    additions.read,
    readings.read,
    fermenting.read,
    fermenting.read_malolactic,
    oak.read,
    oak.read_out,
    cellar.read_topping,
    cellar.read_airlock,
    cellar.read_blend,
    bottles.read_bottling,
    bottles.read_drinking,
    tasting.read,
    bottles.read_ending,
    plans.read,
)
