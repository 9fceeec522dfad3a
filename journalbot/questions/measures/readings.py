"""What was measured: one measure a quantity, and the readings that have a name of their own (original gravity …)."""

from journalbot.journal.fold import order_of
from journalbot.model import Entry
from journalbot.questions.measures.base import Case, Compute, Fact, Measure, fact_of
from journalbot.questions.says import number_said
from journalbot.vocabulary.quantities import QUANTITIES
from journalbot.winemaking.gravity import sg_from_brix

_DRY_BY_READING = 1.000  # an SG at or below this shows a dry wine where no note says so; common practice, no source
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
    return fact_of(entry, value, unit, f"{said or about + value_said(value, unit)}{time}", label=str(entry.get("quantity")))


def _of(quantity: str) -> Compute:
    def compute(case: Case) -> list[Fact]:
        return [reading_fact(e) for e in readings(case, quantity)]

    return compute


def readings(case: Case, *quantities: str) -> list[Entry]:
    """The readings of these quantities, in order."""
    return [e for e in case.entries if e.kind == "reading" and e.get("quantity") in quantities and isinstance(e.get("value"), int | float)]


def gravity_of(entry: Entry) -> float:
    """The SG of a reading of gravity or of Brix."""
    return float(entry.get("value")) if entry.get("quantity") == "sg" else sg_from_brix(float(entry.get("value")))


def pitch_of(case: Case) -> Entry | None:
    """The first pitch, or else the first sign of fermentation."""
    pitches = case.kind("pitch")
    started = [e for e in case.kind("fermentation") if e.get("stage") == "started"]
    return pitches[0] if pitches else started[0] if started else None


def finish_of(case: Case) -> Entry | None:
    """The entry that calls the fermentation finished, or else the first reading that shows it."""
    finished = [e for e in case.kind("fermentation") if e.get("stage") == "finished"]
    if finished:
        return finished[-1]
    begun = pitch_of(case)
    dry = [e for e in readings(case, "sg") if float(e.get("value")) <= _DRY_BY_READING and (begun is None or order_of(e) >= order_of(begun))]
    return dry[0] if dry else None


def original_gravity(case: Case) -> Entry | None:
    """The gravity that fermentation began from: the last reading of SG, or else of Brix, up to the pitch; the first where nothing was pitched."""
    begun = pitch_of(case)
    for quantity in ("sg", "brix"):
        found = readings(case, quantity)
        before = [e for e in found if begun is None or e.date < begun.date or (e.date == begun.date and (e.place[0] <= begun.place[0]))]
        if before:
            return before[-1] if begun is not None else before[0]
    later = readings(case, "sg", "brix")
    return later[0] if later and begun is not None and later[0].date == begun.date else None


SWEETENERS = ("sugar", "honey", "concentrate", "syrup", "glycerin", "juice")


def sweetenings(case: Case) -> list[Entry]:
    """Additions of what tastes sweet, after the fermentation was over."""
    over = finish_of(case)
    return [e for e in case.kind("addition") if over is not None and order_of(e) > order_of(over) and any(s in str(e.get("material")) for s in SWEETENERS)]


def final_gravity(case: Case) -> Entry | None:
    """The gravity at which fermentation ended: the last reading before any sweetening, once it was over."""
    over = finish_of(case)
    if over is None:
        return None
    sweet = sweetenings(case)
    stop = order_of(sweet[0]) if sweet else ("9999", 0, 0)
    found = [e for e in readings(case, "sg") if order_of(e) < stop]
    settled = [e for e in found if e.date >= over.date] or [e for e in found if float(e.get("value")) <= _DRY_BY_READING]
    return settled[-1] if settled else None


def _one(find: str) -> Compute:
    def compute(case: Case) -> list[Fact]:
        entry = {"original": original_gravity, "final": final_gravity}[find](case)
        if entry is None:
            return []
        gravity = gravity_of(entry)
        said = value_said(gravity, "SG")
        if entry.get("quantity") == "brix":
            said += f" (from {value_said(float(entry.get('value')), 'Brix')})"
        return [fact_of(entry, gravity, "SG", said)]

    return compute


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
        return [reading_fact(e) for e in readings(case, "temperature") if e.date >= begun.date and (over is None or e.date <= over.date)]

    return compute


def _all(case: Case) -> list[Fact]:
    return [reading_fact(e, f"{QUANTITIES[e.get('quantity')].label if e.get('quantity') in QUANTITIES else e.get('quantity')} {value_said(float(e.get('value')), str(e.get('unit') or ''))}")
            for e in case.kind("reading") if isinstance(e.get("value"), int | float)]


def _progress(case: Case) -> list[Fact]:
    return [reading_fact(e) for e in readings(case, "sg", "brix")]


_BESIDE = {"sg": ("reading",), "temperature": ("ferment", "reading", "made"), "alcohol": ()}
_EXTRA: dict[str, tuple[tuple[str, ...], ...]] = {"sg": (("sg",),), "temperature": (("temperature",), ("temperature", "ferment")), "free_so2": (("free", "sulfite"),)}
_PLAIN = [q for q in QUANTITIES if q not in ("alcohol", "residual_sugar", "volume")]

MEASURES: tuple[Measure, ...] = (
    *(Measure(q, QUANTITIES[q].label, ("reading",), _of(q), ((f"quantity:{q}",), *_EXTRA.get(q, ())), ("lab", "addition", "reading", "mention", "taste", *_BESIDE.get(q, ())), sort="reading", quantity=q) for q in _PLAIN),
    Measure("original gravity", "original gravity", ("reading", "pitch", "fermentation"), _one("original"), (("original gravity",), ("first", "sg"), ("first", "quantity:sg"), ("original gravity", "sg"), ("original gravity", "quantity:sg"), ("first", "quantity:brix", "sg")), (),
            sort="reading", quantity="sg"),
    Measure("final gravity", "final gravity", ("reading", "pitch", "fermentation", "addition"), _one("final"),
            (("final gravity",), ("quantity:sg", "finished"), ("sg", "finished"), ("final gravity", "finished"), ("final gravity", "quantity:sg"), ("final gravity", "sg"), ("sg", "final gravity", "finished")), ("ferment",), sort="reading", quantity="sg"),
    Measure("pitch temperature", "temperature at the pitch", ("reading", "pitch", "fermentation"), _during("pitch", "pitch"), (("quantity:temperature", "pitch"), ("temperature", "pitch")), ("yeast",),
            sort="reading", quantity="temperature"),
    Measure("ferment temperature", "temperature while fermenting", ("reading", "pitch", "fermentation"), _during("pitch", "finish"), (("quantity:temperature", "ferment"), ("temperature", "ferment")), ("made",),
            sort="reading", quantity="temperature"),
    Measure("readings", "readings", ("reading",), _all, (("reading",),), ("lab", "addition"), sort="reading"),
    Measure("gravity course", "gravity through the fermentation", ("reading",), _progress, (("how", "ferment"), ("change", "quantity:sg"), ("change", "sg"), ("change", "ferment"), ("story", "ferment")), (), sort="reading", usual="change", quantity="sg"),
)

