"""What must be asked whatever the batch: an impossible value or date, a figure that could be two things."""

from journalbot.model import Ask
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene
from journalbot.notes.kinds.readings import bare_number


def must_ask(drafts: list[Draft], scene: Scene) -> Ask | None:
    """What has to be asked whatever the batch: an impossible value or date, a figure that could be two things."""
    for d in drafts:
        if d.ask == "value":
            if "value" in scene.given:
                d.fields["value"], d.ask = scene.given["value"], ""
                continue
            return Ask("value", (), scene.text.slice(d.clause.first, d.clause.last))
    planned = [range(c.first, c.last) for c in scene.clauses if c.mood == "planned"]
    scene.text.impossible = [
        d
        for d in scene.text.impossible
        if not (d.future_iso and any(d.first in span for span in planned))
        if scene.text.words[d.first - 1 : d.first] not in (["no"], ["not"])
    ]
    if scene.text.impossible and (drafts or any(c.of("cue", "batch") for c in scene.clauses)):
        if "date" not in scene.given:
            bad = scene.text.impossible[0]
            return Ask("date", (), scene.text.slice(bad.first, bad.last))
        for d in drafts:
            d.dates = (scene.given["date"],)
    if not any(d.kind != "plan" and d.kind != "taste" for d in drafts):
        for clause in scene.clauses:
            number = bare_number(clause)
            if number is None:
                continue
            if "quantity" in scene.given:
                drafts.append(_given_reading(scene, clause, number.first, float(number.value.value)))
                return None
            return Ask(
                "quantity", _quantities(float(number.value.value), scene), scene.text.slice(clause.first, clause.last)
            )
    return None


def _given_reading(scene: Scene, clause: Clause, first: int, value: float) -> Draft:
    from journalbot.language.amounts import tidy
    from journalbot.vocabulary.quantities import QUANTITIES

    quantity = str(scene.given["quantity"])
    unit = QUANTITIES[quantity].unit
    if quantity == "temperature":
        unit = "F" if scene.settings.units == "us" else "C"
    return Draft("reading", clause, first, first + 1, {"quantity": quantity, "value": tidy(value), "unit": unit})


def _quantities(value: float, scene: Scene) -> tuple[str, ...]:
    """The quantities that a bare figure could be of."""
    from journalbot.vocabulary.quantities import QUANTITIES

    warm = (35, 110) if scene.settings.units == "us" else (0, 45)
    usual = {
        "temperature": warm,
        "brix": (-3, 35),
        "free_so2": (5, 80),
        "ph": (2.8, 4.3),
        "ta": (3, 14),
        "total_so2": (30, 200),
    }
    return tuple(q for q, (low, high) in usual.items() if low <= value <= high and q in QUANTITIES)
