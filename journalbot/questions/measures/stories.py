"""A batch from start to end, how it was made, and what was done in a span of days."""

from journalbot.journal.fold import litres
from journalbot.model import Entry
from journalbot.questions.measures.base import Case, Fact, Measure, fact_of
from journalbot.questions.measures.money import money_said
from journalbot.questions.measures.readings import value_said
from journalbot.questions.measures.said import said
from journalbot.questions.measures.tastings import tasting_said
from journalbot.questions.says import number_said
from journalbot.vocabulary.quantities import QUANTITIES
from journalbot.winemaking.units import UnknownUnit, grams

_VERBS: dict[str, str] = {
    "start": "started",
    "pitch": "pitched",
    "addition": "added",
    "crush": "crushed",
    "press": "pressed",
    "degas": "degassed",
    "filter": "filtered",
    "stir": "lees stirred",
    "chill": "cold stabilised",
    "airlock": "airlock seen to",
    "punch_down": "punched down",
    "rack": "racked",
    "move": "moved",
    "top_up": "topped up",
    "oak": "oak in:",
    "oak_out": "oak out",
    "blend": "blended in",
    "bottle": "bottled",
    "drink": "drunk:",
    "give": "given away:",
    "end": "ended:",
    "plan": "planned:",
    "vessel": "vessel",
}
_ALL = (*_VERBS, "reading", "fermentation", "malolactic", "taste", "purchase", "remark")
_DONE = tuple(k for k in _ALL if k != "plan")
_RECIPE = (
    "start",
    "crush",
    "addition",
    "pitch",
    "fermentation",
    "press",
    "oak",
    "oak_out",
    "malolactic",
    "blend",
    "rack",
    "top_up",
    "stir",
    "filter",
    "degas",
    "chill",
    "bottle",
)


def entry_said(entry: Entry, currency: str = "USD") -> str:
    """An entry in a few words: `racked to carboy 2`, `gravity 0.996`."""
    if entry.kind == "reading":
        quantity = str(entry.get("quantity"))
        value = entry.get("value")
        label = QUANTITIES[quantity].label if quantity in QUANTITIES else quantity
        return (
            f"{label} {value_said(float(value), str(entry.get('unit') or ''))}"
            if isinstance(value, int | float)
            else label
        )
    if entry.kind == "fermentation":
        return f"fermentation {entry.get('stage') or ''}".strip()
    if entry.kind == "malolactic":
        return f"malolactic {said(entry)}".strip()
    if entry.kind == "taste":
        return f"tasted: {tasting_said(entry)}"
    if entry.kind == "purchase":
        price = entry.get("price")
        count, unit = entry.get("count"), entry.get("unit")
        size = f"{number_said(count)} {unit or ''} ".replace("  ", " ") if isinstance(count, int | float) else ""
        return f"bought {size}{entry.get('item') or ''}" + (
            f" for {money_said(float(price), str(entry.get('currency') or currency))}"
            if isinstance(price, int | float)
            else ""
        )
    if entry.kind == "vessel":
        return (
            f"{entry.get('name')} holds {number_said(entry.get('capacity'))} {entry.get('unit')}"
            if entry.get("capacity") is not None
            else f"vessel {entry.get('name')}"
        )
    if entry.kind == "remark":
        return str(entry.get("text") or "")
    return f"{_VERBS.get(entry.kind, entry.kind)} {said(entry)}".strip()


_TOLD = 3  # words from which a remark tells something; shorter ones are what entries leave of a note's words


def _story(case: Case) -> list[Fact]:
    told = [e for e in case.entries if e.kind != "remark" or len(str(e.get("text")).split()) >= _TOLD]
    return [fact_of(e, None, "", entry_said(e, case.settings.currency)) for e in told]


def _summary(case: Case) -> list[Fact]:
    """How a batch stands: its start, its latest racking, gravity and tasting, what is left of it and planned."""
    batch = case.batch
    out = [fact_of(e, None, "", entry_said(e, case.settings.currency)) for e in case.kind("start")[:1]]
    out += [fact_of(e, None, "", entry_said(e, case.settings.currency)) for e in case.kind("pitch")]
    for kind in ("press", "rack", "oak", "oak_out", "malolactic", "bottle", "taste", "end"):
        out += [fact_of(e, None, "", entry_said(e, case.settings.currency)) for e in case.kind(kind)[-1:]]
    out += [fact_of(e, None, "", entry_said(e)) for e in case.kind("fermentation")[-1:]]
    out += [fact_of(e, None, "", entry_said(e)) for e in case.kind("reading") if e.get("quantity") == "sg"][-1:]
    out += [fact_of(e, None, "", entry_said(e)) for e in case.kind("plan") if str(e.get("due") or "") >= case.today]
    if batch.filled:
        gone = case.kind("bottle", "drink", "give")[-1]
        out.append(fact_of(gone, None, "", f"{batch.bottles} bottles left"))
    return sorted(out, key=lambda f: (f.date, f.order))


def _recipe(case: Case) -> list[Fact]:
    """What was done, in order, with doses for a litre beside them where the volume is known."""
    volume, day = 0.0, ""
    out = []
    for e in case.entries:
        if known := _volume_told(e):
            # Wine racked into several vessels on one day is that much in all.
            volume = volume + known if e.kind == "rack" and e.date == day else known
            day = e.date if e.kind == "rack" else ""
        rate = _rate(e, volume)
        text = entry_said(e, case.settings.currency)
        out.append(fact_of(e, None, "", text + (f" (= {rate})" if rate else "")))
    return out


def _volume_told(entry: Entry) -> float:
    """The litres of wine that an entry tells there are, or 0."""
    if entry.kind == "reading" and entry.get("quantity") == "volume":
        return litres(entry.get("value"), entry.get("unit")) or 0.0
    return litres(entry.get("volume"), entry.get("unit")) or 0.0 if entry.kind in ("start", "rack") else 0.0


def _rate(entry: Entry, volume: float) -> str:
    amount, unit = entry.get("amount"), str(entry.get("unit") or "")
    if (
        entry.kind not in ("addition", "oak", "pitch")
        or not isinstance(amount, int | float)
        or not volume
        or "/" in unit
    ):
        return ""
    try:
        mass = grams(amount, unit, str(entry.get("material") or ""))
    except (UnknownUnit, ValueError):
        return ""
    rough = "about " if mass.high > mass.low else ""
    return f"{rough}{number_said(mass.value / volume, 2)} g/L"


MEASURES: tuple[Measure, ...] = (
    Measure(
        "story",
        "the whole record",
        _ALL,
        _story,
        (("story",), ("story", "made"), ("story", "mention"), ("story", "doing")),
        (
            "mention",
            "press",
            "drained",
            "finished",
            "begin",
            "made",
            "started",
            "bottle",
            "crush",
            "pitch",
            "harvest",
            "between",
            "doing",
            "is",
        ),
        sort="story",
    ),
    Measure(
        "recipe",
        "how it was made",
        _RECIPE,
        _recipe,
        (("recipe",), ("how", "made"), ("how", "begin")),
        ("made", "begin"),
        sort="story",
    ),
    Measure(
        "doing",
        "what was done",
        _DONE,
        _story,
        (("what", "doing"), ("doing",), ("when", "doing")),
        ("made",),
        sort="story",
        scope="any",
        by_entry=True,
    ),
    Measure(
        "summary",
        "how it stands",
        _ALL,
        _summary,
        (("summary",), ("how", "summary"), ("summary", "doing"), ("how", "doing")),
        ("is", "doing", "left", "last", "made"),
        sort="story",
    ),
)
