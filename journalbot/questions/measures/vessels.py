"""What is in a vessel, where a batch is, which vessels are free, how long a wine stayed in one."""

from typing import NamedTuple

from journalbot.journal.cellar import Cellar
from journalbot.journal.vessel_names import is_bare, split_vessels, vessel_key
from journalbot.model import Entry
from journalbot.questions.measures.base import Case, Fact, Measure, fact_of
from journalbot.questions.measures.durations import stretch
from journalbot.questions.says import day_said, number_said
from journalbot.winemaking.units import convert

STAY_KINDS = ("start", "rack", "bottle", "end", "press")


class Stay(NamedTuple):
    """Wine of a batch in a vessel, from the entry that put it there to the one that took it out (None: still there)."""

    key: str
    name: str
    since: Entry
    until: Entry | None


def stays(case: Case) -> list[Stay]:
    """Every stay of a batch in a vessel, in order of arrival."""
    inside: dict[str, tuple[str, Entry]] = {}
    out: list[Stay] = []

    def leave(keys: list[str], by: Entry) -> None:
        out.extend(Stay(k, *inside.pop(k), by) for k in keys)

    for e in case.kind(*STAY_KINDS):
        to = split_vessels(str(e.get("to") or e.get("vessel") or "")) if e.kind != "bottle" else []
        if e.kind in ("bottle", "end"):
            leave(list(inside), e)
        elif to or e.get("from"):
            sources = [case.cellar.vessel_key(s) for s in split_vessels(str(e.get("from") or ""))]
            # Several rackings of one note are one wine split: none of them empties what another has just filled.
            gone = [k for k in sources if k in inside] or [
                k for k, (_, since) in inside.items() if since.place[0] != e.place[0] or since.kind == "start"
            ]
            leave(gone, e)
        for name in to:
            inside.setdefault(case.cellar.vessel_key(name), (name, e))
    out += [Stay(k, name, since, None) for k, (name, since) in inside.items()]
    return sorted(out, key=lambda s: (s.since.date, s.since.place))


def keys_of(cellar: Cellar, wanted: str) -> set[str]:
    """The keys that a vessel asked for goes under: where it is the only barrel, notes may say just "the barrel"."""
    key, bare = cellar.vessel_key(wanted), vessel_key(wanted)
    same = {k for k in cellar.vessels if bare in k.split()} if is_bare(bare) else set[str]()
    for noun in set() if is_bare(key) else {w for w in key.split() if len(w) > 1} & cellar.vessels.keys():
        if [k for k in cellar.vessels if noun in k.split() and k != noun] == [key]:
            same.add(noun)
    return {key, bare} | same


def _time_in_vessel(case: Case) -> list[Fact]:
    keys = keys_of(case.cellar, case.of.get("vessel", ""))
    out = []
    for stay in stays(case):
        if stay.key in keys:
            last = stay.until
            how = (
                "bottling"
                if last and last.kind == "bottle"
                else "its end"
                if last and last.kind == "end"
                else "leaving it"
            )
            out += stretch(case, stay.since, last, f"going into {stay.name}", how)
    return out


def _contents(case: Case) -> list[Fact]:
    """Who is in the vessel asked for, or in each vessel of the cellar; an empty one is a fact without a batch."""
    wanted = case.of.get("vessel", "")
    vessels = case.cellar.vessels
    if wanted:
        vessel = case.cellar.find_vessel(wanted)
        found = case.cellar.in_vessel(wanted)
        sort = vessel_key(wanted)
        several = is_bare(sort) and wanted.lower().endswith("s")  # "what is in my carboys"
        names = [(wanted, found)] if (vessel or found) and not several else []
        if not names and is_bare(sort):
            same = [v.name for key, v in case.cellar.vessels.items() if sort.rstrip("s") in key.split()]
            names = [(name, case.cellar.in_vessel(name)) for name in same]
    else:
        names = [(v.name, case.cellar.in_vessel(v.name)) for v in vessels.values()]
    names = [(n, b) for n, b in names if b or not case.of.get("used")]
    out: list[Fact] = []
    for name, batches in names:
        for batch in batches:
            held = next(
                (h for h in batch.held.values() if case.cellar.vessel_key(h.name) == case.cellar.vessel_key(name)), None
            ) or next(iter(batch.held.values()), None)
            litres = held.litres if held else None
            size = f", {volume_said(litres, case.settings.units)}" if litres else ""
            out.append(
                Fact(
                    batch.number,
                    held.date if held else batch.started,
                    "in use",
                    "",
                    f"in it{size}",
                    (held.note,) if held else (),
                    label=name,
                )
            )
        if not batches:
            vessel = case.cellar.find_vessel(name)
            holds = (
                f"; it holds {volume_said(vessel.capacity, case.settings.units)}"
                if wanted and vessel and vessel.capacity
                else ""
            )
            out.append(Fact(None, "", "empty", "", f"empty{holds}", label=name))
    return out


def volume_said(litres: float, units: str) -> str:
    """A volume in the journal's own units."""
    value, unit = (convert(litres, "L", "gal"), "gal") if units == "us" else (litres, "L")
    return f"{number_said(value, 1)} {unit}"


def _held(case: Case) -> list[Fact]:
    """The stays of a batch in the vessel asked for, each with its days."""
    keys = keys_of(case.cellar, case.of.get("vessel", ""))
    out = []
    for stay in stays(case):
        if stay.key in keys:
            end = f"to {day_said(stay.until.date)}" if stay.until else "and still there"
            out.append(
                Fact(
                    case.number,
                    stay.since.date,
                    stay.name,
                    "",
                    f"in {stay.name} from {day_said(stay.since.date)} {end}",
                    (stay.since.note,),
                    until=stay.until.date if stay.until else case.today,
                    order=stay.since.place,
                )
            )
    return out


def _free(case: Case) -> list[Fact]:
    wanted = case.of.get("vessel", "")
    sort = vessel_key(wanted)
    if wanted and is_bare(sort):  # "which carboys are free"
        every = _contents(case._replace(of={}))
        return [f for f in every if f.value == "empty" and sort in vessel_key(f.label).split()]
    everyone = _contents(case)
    if wanted:
        return everyone
    return [f for f in everyone if f.value == "empty"]


def _capacity(case: Case) -> list[Fact]:
    wanted = case.of.get("vessel", "")
    keys = keys_of(case.cellar, wanted) if wanted else set[str]()
    out = []
    for e in case.kind("vessel"):
        if e.get("capacity") is not None and (not wanted or case.cellar.vessel_key(str(e.get("name"))) in keys):
            out.append(
                fact_of(
                    e,
                    float(e.get("capacity")),
                    str(e.get("unit")),
                    f"{number_said(e.get('capacity'))} {e.get('unit')}",
                    label=str(e.get("name")),
                )
            )
    return out


MEASURES: tuple[Measure, ...] = (
    Measure(
        "contents",
        "contents[ of {vessel}]",
        (),
        _contents,
        (
            ("vessel",),
            ("what", "vessel"),
            ("in vessel", "vessel"),
            ("did", "vessel"),
            ("vessels", "in vessel"),
            ("what", "vessels"),
            ("who", "vessel"),
        ),
        ("in vessel", "is", "bottles", "what", "last", "did", "how much", "left", "vessels"),
        sort="words",
        narrows=("vessel",),
        scope="none",
    ),
    Measure(
        "vessels in use",
        "which vessels are in use[: {vessel}]",
        (),
        _contents,
        (("in use",), ("in use", "vessels"), ("in use", "vessel"), ("in use", "where")),
        ("is", "in vessel", "how many", "last", "left", "did"),
        sort="words",
        narrows=("vessel",),
        scope="none",
        fixed=(("used", "yes"),),
    ),
    Measure(
        "free vessels",
        "which vessels are free[: {vessel}]",
        (),
        _free,
        (("free", "vessel"), ("free", "vessels"), ("free", "where"), ("free",)),
        ("is", "in vessel", "quantity:free_so2", "how many", "last", "left", "did"),
        sort="words",
        narrows=("vessel",),
        scope="none",
    ),
    Measure(
        "held",
        "what has been in {vessel}",
        STAY_KINDS,
        _held,
        (("past", "vessel"), ("past", "vessel", "past"), ("vessel", "in vessel", "past"), ("vessel", "past", "last")),
        ("is", "in vessel", "last"),
        sort="words",
        narrows=("vessel",),
    ),
    Measure(
        "capacity",
        "capacity of [{vessel}]",
        ("vessel",),
        _capacity,
        (
            ("capacity", "vessel"),
            ("how much", "capacity", "vessel"),
            ("volume", "capacity", "vessel"),
            ("how many", "capacity", "vessel"),
            ("capacity", "vessels"),
        ),
        ("in vessel", "is", "how much"),
        sort="words",
        narrows=("vessel",),
        scope="none",
    ),
    Measure(
        "time in vessel",
        "time in {vessel}",
        STAY_KINDS,
        _time_in_vessel,
        (("how long", "vessel"), ("how long", "in vessel", "vessel"), ("how long", "vessel", "is")),
        ("is", "in vessel", "age"),
        sort="days",
        narrows=("vessel",),
    ),
)
