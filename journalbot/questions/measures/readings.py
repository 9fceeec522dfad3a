"""What was measured: one measure a quantity, and the readings that have a name of their own (original gravity …)."""

from journalbot.model import Entry
from journalbot.questions.measures.base import Case, Compute, Fact, Measure, fact_of
from journalbot.questions.measures.gravities import (
    ended_by,
    final_gravity,
    finish_of,
    gravity_of,
    original_gravity,
    pitch_of,
    readings,
)
from journalbot.questions.says import number_said
from journalbot.vocabulary.quantities import QUANTITIES
from journalbot.winemaking.gravity import brix_from_sg
from journalbot.winemaking.ranges import OutOfRange

_UNIT_SAID = {"SG": "", "pH": "", "F": "°F", "C": "°C", "% vol": "% vol", "%": "%"}


def value_said(value: float, unit: str) -> str:
    """A measured value with its unit, as people write it: `1.092`, `72 °F`."""
    said = f"{value:.3f}" if unit == "SG" else f"{value:.2f}" if unit == "pH" else number_said(value)
    name = _UNIT_SAID.get(unit, unit)
    return f"{said} {name}".strip()


def reading_fact(entry: Entry, said: str = "") -> Fact:
    """A reading as a fact."""
    value = float(entry.get("value"))
    unit = str(entry.get("unit") or "")
    about = "about " if entry.get("approx") else ""
    time = f" at {entry.time}" if entry.time else ""
    return fact_of(
        entry, value, unit, f"{said or about + value_said(value, unit)}{time}", label=str(entry.get("quantity"))
    )


def _of(quantity: str) -> Compute:
    def compute(case: Case) -> list[Fact]:
        return [reading_fact(e) for e in readings(case, quantity)]

    return compute


def _one(find: str) -> Compute:
    def compute(case: Case) -> list[Fact]:
        entry = {"original": original_gravity, "final": final_gravity}[find](case)
        if entry is None:
            return []
        if entry.get("quantity") == "brix":
            return [_as_gravity(entry)]
        gravity = gravity_of(entry)
        return [fact_of(entry, gravity, "SG", value_said(gravity, "SG"))]

    return compute


def _stuck_at(case: Case) -> list[Fact]:
    """The gravity at which a fermentation stuck: read in the note that says so, or else the last one before it."""
    out = []
    for e in case.kind("fermentation"):
        if e.get("stage") == "stuck":
            found = readings(case, "sg", "brix")
            same = [r for r in found if r.note == e.note] or [r for r in found if r.date <= e.date]
            out += [reading_fact(r) for r in same[-1:]]
    return out


def _gravity_now(case: Case) -> list[Fact]:
    """The last gravity of a wine that ferments no more, sweetened or not."""
    over = finish_of(case) is not None or case.batch.bottled
    return [reading_fact(e) if e.get("quantity") == "sg" else _as_gravity(e) for e in ended_by(case)[-1:] if over]


def _as_gravity(entry: Entry) -> Fact:
    gravity = gravity_of(entry)
    said = f"{value_said(gravity, 'SG')} (from {value_said(float(entry.get('value')), 'Brix')})"
    return fact_of(entry, gravity, "SG", said)


def _starting_brix(case: Case) -> list[Fact]:
    """The Brix that fermentation began from, as read or else as the gravity comes to."""
    entry = original_gravity(case)
    if entry is None:
        return []
    if entry.get("quantity") == "brix":
        return [reading_fact(entry)]
    first = next((e for e in readings(case, "brix") if e.date <= entry.date), None)
    if first is not None:
        return [reading_fact(first)]
    try:
        brix = round(brix_from_sg(gravity_of(entry)), 1)
    except OutOfRange:
        return []
    said = f"{value_said(brix, 'Brix')} (from {value_said(float(entry.get('value')), 'SG')})"
    return [fact_of(entry, brix, "Brix", said)]


def _during(first: str, last: str) -> Compute:
    """Temperatures between two moments of a batch."""

    def compute(case: Case) -> list[Fact]:
        begun, over = pitch_of(case), finish_of(case)
        if begun is None:
            return []
        if first == "pitch" and last == "pitch":
            same = [e for e in readings(case, "temperature") if e.date == begun.date]
            near = [e for e in same if e.place[0] == begun.place[0]] or same
            return [reading_fact(e) for e in near[:1]]
        return [
            reading_fact(e)
            for e in readings(case, "temperature")
            if e.date >= begun.date and (over is None or e.date <= over.date)
        ]

    return compute


def _room(case: Case) -> list[Fact]:
    """Temperatures of no wine but of a room; of the place asked for only, where its note names that."""
    place = case.of.get("place", "").casefold()
    found = readings(case, "temperature") if case.number is None else []
    named = [e for e in found if not place or ((n := case.source.note(e.note)) and place in n.text.casefold())]
    return [reading_fact(e) for e in named]


def _sweetness(case: Case) -> list[Fact]:
    """The latest gravity, and the latest residual sugar where it was measured."""
    return [
        reading_fact(
            found[-1],
            f"{QUANTITIES[q].label} {value_said(float(found[-1].get('value')), str(found[-1].get('unit') or ''))}",
        )
        for q in ("residual_sugar", "sg")
        if (found := readings(case, q))
    ]


def _all(case: Case) -> list[Fact]:
    out = []
    for e in case.kind("reading"):
        if isinstance(e.get("value"), int | float):
            row = QUANTITIES.get(str(e.get("quantity")))
            said = value_said(float(e.get("value")), str(e.get("unit") or ""))
            out.append(reading_fact(e, f"{row.label if row else e.get('quantity')} {said}"))
    return out


def _progress(case: Case) -> list[Fact]:
    return [reading_fact(e) for e in readings(case, "sg", "brix")]


_BESIDE = {"sg": ("reading",), "temperature": ("ferment", "reading", "made"), "alcohol": ()}
_EXTRA: dict[str, tuple[tuple[str, ...], ...]] = {
    "sg": (("sg",),),
    "temperature": (("temperature",), ("temperature", "ferment")),
    "free_so2": (("free", "sulfite"), ("sulfite", "level"), ("a sulfite", "level"), ("sulfite", "check")),
    "ph": (("ph",),),
    "ta": (("ta",),),
    "malic": (("how much", "quantity:malic", "left"), ("how much", "quantity:malic")),
}
_PLAIN = [q for q in QUANTITIES if q not in ("alcohol", "residual_sugar", "volume")]

MEASURES: tuple[Measure, ...] = (
    *(
        Measure(
            q,
            QUANTITIES[q].label,
            ("reading",),
            _of(q),
            ((f"quantity:{q}",), *_EXTRA.get(q, ())),
            ("lab", "addition", "reading", "mention", "taste", "check", "level", *_BESIDE.get(q, ())),
            sort="reading",
            quantity=q,
            by_entry=True,
        )
        for q in _PLAIN
    ),
    Measure(
        "original gravity",
        "original gravity",
        ("reading", "pitch", "fermentation"),
        _one("original"),
        (
            ("original gravity",),
            ("first", "sg"),
            ("first", "quantity:sg"),
            ("original gravity", "sg"),
            ("original gravity", "quantity:sg"),
            ("begin", "quantity:sg"),
            ("begin", "sg"),
            ("started", "most"),
            ("started", "least"),
        ),
        (),
        sort="reading",
        quantity="sg",
    ),
    Measure(
        "starting Brix",
        "starting Brix",
        ("reading", "pitch", "fermentation"),
        _starting_brix,
        (
            ("first", "quantity:brix"),
            ("first", "quantity:brix", "sg"),
            ("original gravity", "quantity:brix"),
            ("begin", "quantity:brix"),
            ("started", "quantity:brix"),
            ("harvest", "quantity:brix"),
        ),
        ("reading", "lab"),
        sort="reading",
        quantity="brix",
    ),
    Measure(
        "final gravity",
        "final gravity",
        ("reading", "pitch", "fermentation", "addition"),
        _one("final"),
        (
            ("final gravity",),
            ("quantity:sg", "finished"),
            ("sg", "finished"),
            ("final gravity", "finished"),
            ("final gravity", "quantity:sg"),
            ("final gravity", "sg"),
            ("sg", "final gravity", "finished"),
        ),
        ("ferment",),
        sort="reading",
        quantity="sg",
    ),
    Measure(
        "stuck at",
        "gravity at which it stuck",
        ("reading", "fermentation"),
        _stuck_at,
        (("stuck at",), ("stuck at", "sg"), ("stuck at", "quantity:sg"), ("stuck at", "ferment")),
        ("addition", "made"),
        sort="reading",
        quantity="sg",
    ),
    Measure(
        "last gravity",
        "last gravity",
        ("reading", "pitch", "fermentation"),
        _gravity_now,
        (("gravity now",),),
        ("begin", "made", "finished"),
        sort="reading",
        quantity="sg",
    ),
    Measure(
        "pitch temperature",
        "temperature at the pitch",
        ("reading", "pitch", "fermentation"),
        _during("pitch", "pitch"),
        (("quantity:temperature", "pitch"), ("temperature", "pitch")),
        ("yeast",),
        sort="reading",
        quantity="temperature",
    ),
    Measure(
        "ferment temperature",
        "temperature while fermenting",
        ("reading", "pitch", "fermentation"),
        _during("pitch", "finish"),
        (("quantity:temperature", "ferment"), ("temperature", "ferment")),
        ("made",),
        sort="reading",
        quantity="temperature",
    ),
    Measure(
        "room temperature",
        "room temperature[, {place}]",
        ("reading",),
        _room,
        (
            ("room",),
            ("room", "temperature"),
            ("room", "quantity:temperature"),
            ("temperature", "place"),
            ("quantity:temperature", "place"),
        ),
        ("reading", "addition", "in vessel", "made", "given"),
        sort="reading",
        narrows=("place",),
        scope="any",
        quantity="temperature",
        by_entry=True,
    ),
    Measure("sweetness", "how sweet it is", ("reading",), _sweetness, (("sweetness",),), ("last",), sort="words"),
    Measure(
        "readings",
        "readings",
        ("reading",),
        _all,
        (("reading",), ("lab",), ("lab", "reading")),
        ("lab", "addition"),
        sort="reading",
    ),
    Measure(
        "gravity course",
        "gravity through the fermentation",
        ("reading",),
        _progress,
        (
            ("how", "ferment"),
            ("change", "quantity:sg"),
            ("change", "sg"),
            ("change", "ferment"),
            ("story", "ferment"),
            ("story", "sg"),
            ("story", "quantity:sg"),
        ),
        (),
        sort="reading",
        usual="change",
        quantity="sg",
    ),
)
