"""The kinds of entry: for each family, how a clause is read as one. The order tells nothing but how an entry list is
sorted.
"""

from collections.abc import Callable, Iterator

from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene
from journalbot.notes.kinds import (
    additions,
    blending,
    bottles,
    bottling,
    buying,
    cellar,
    ending,
    fermenting,
    moving,
    oak,
    pitching,
    plans,
    racking,
    readings,
    starting,
    tasting,
    topping,
    vessels,
)

Reader = Callable[[Clause, Scene], Iterator[Draft]]

READERS: tuple[Reader, ...] = (
    starting.read,
    vessels.read,
    vessels.read_named,
    buying.read,
    cellar.read_acts,
    racking.read_racking,
    moving.read_moving,
    pitching.read,
    additions.read,
    readings.read,
    fermenting.read,
    fermenting.read_malolactic,
    oak.read,
    oak.read_out,
    topping.read_topping,
    topping.read_airlock,
    blending.read_blend,
    bottling.read_bottling,
    bottles.read_drinking,
    tasting.read,
    ending.read_ending,
    plans.read,
)
