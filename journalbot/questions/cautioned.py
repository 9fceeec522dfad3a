"""The cautions that an answer calls for by the act that it leads to, and questions that ask for a caution itself."""

from collections.abc import Sequence
from datetime import date
from typing import TYPE_CHECKING

from journalbot.language.tokens import tokenize
from journalbot.model import Entry
from journalbot.questions.query import Query, What
from journalbot.vocabulary.questions import words

if TYPE_CHECKING:
    from journalbot.journal.store import Journal

# Measure -> the act that it leads to, with the fields that its cautions go by; a material asked for replaces theirs.
_SULFITE = ("addition", {"material": "potassium metabisulfite"})
_ACTS: dict[str, tuple[str, dict[str, str]]] = {
    "sulfite dose": _SULFITE,
    "sulfite needed": _SULFITE,
    "sulfite for molecular": _SULFITE,
    "sorbate dose": ("addition", {"material": "potassium sorbate"}),
    "sugar needed": ("addition", {"material": "sugar"}),
    "nitrogen dose": ("addition", {"material": "diammonium phosphate"}),
    "bottles needed": ("bottle", {}),
}
# Measure -> cautions that it calls for whatever the batch.
_OUTRIGHT = {
    "gas": ("carbon dioxide",),
    "gas of a wine": ("carbon dioxide",),
    "bottle pressure": ("bottle pressure",),
    "sweetening": ("bottle pressure",),
}

_ASKED_OF = words(
    "danger dangers dangerous caution cautions safety hazard hazards hazardous risk risks risky warning "
    "warnings warn precaution precautions harmful careful safely"
)
_MAY = (
    ("can", "i"),
    ("can", "we"),
    ("may", "i"),
    ("could", "i"),
    ("is", "it"),
    ("should", "i"),
    ("do", "i"),
    ("how", "do"),
    ("how", "can"),
    ("am", "i"),
    ("are", "we"),
    ("what", "happens"),
    ("what", "if"),
    ("is", "there"),
    ("how", "should"),
)
_TOLD = words("did was were wrote write written noted note notes mention mentioned mentions last")
# What a caution is asked for by, beyond the words of `vocabulary.hazards`: key -> words.
_NAMED: dict[str, frozenset[str]] = {
    "sulfite": words("sulfite sulphite sulfites sulphites kmeta metabisulfite metabisulphite campden so2 kmbs"),
    "carbon dioxide": words("co2 carbon dioxide gas ferment fermenting fermentation"),
    "bottle pressure": words("bottle bottles bottling bombs bomb explode exploding bursting"),
    "lifting": words("carboy carboys lifting lift demijohn demijohns heavy carrying"),
    "glass": words("glass"),
    "sorbate": words("sorbate"),
    "cleaners": words("caustic cleaners cleaner bleach lye percarbonate"),
    "containers": words("plastic metal bucket containers copper galvanised galvanized"),
    "mould": words("mould mold mouldy moldy rot"),
    "wild plants": words("elderberry elderberries elder wild pits"),
    "roots": words("potato potatoes beet beets parsnip parsnips garlic botulism"),
    "distilling": words("distil distill distilling still spirits"),
    "selling": words("sell selling law legal"),
    "heating": words("heater heating belt"),
    "entering a vat": words("vat tank"),
    "allergens": words("allergens allergy allergic"),
    "drinking": words("drinking pregnancy driving"),
    "mixing chemicals": words("mixing mix chemicals acids chlorine"),
    "copper and test chemicals": words("copper chromatography"),
    "blocked airlock": words("airlock blocked foam"),
    "sealed ferment": words("sealed bung stopper"),
}


def caution_asked(question: str) -> Query | None:
    """The Query of a caution's longer text; None where none is asked for.

    It is asked for by name (`what are the dangers of CO2`), by a plan that one warns of (`can I mix bleach and
    vinegar`), or as that which was shown last (`tell me more about that caution`).
    """
    said = [t.low for t in tokenize(question) if t.kind != "mark"]
    named = set(said)
    if named & _TOLD:
        return None
    if named & _ASKED_OF or ({"more", "about"} <= named and named & {"warning", "caution"}):
        from journalbot.winemaking.cautions import called_for

        keys = called_for(question) or tuple(k for k, ws in _NAMED.items() if named & ws)[:2]
        return Query((What("caution", (("about", "; ".join(keys) or "the last"),)),))
    if tuple(said[:2]) in _MAY or named & {"safe", "legal", "illegal"}:
        from journalbot.winemaking.cautions import called_for

        if keys := called_for(question):
            return Query((What("caution", (("about", "; ".join(keys)),)),))
    return None


def cautions_for(
    query: Query, journal: "Journal", today: date, question: str = ""
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The cautions to show with an answer, as keys and as sentences: dangers always, others not where shown lately.

    Nothing is marked as shown here: an answer only reads. See `turns/care.py` for what marks them.
    """
    if any(what.measure == "caution" for what in query.whats):
        return (), ()
    keys = [key for what in query.whats for key in _keys(what, query.batches.numbers, journal, today)]
    if not keys:
        return (), ()
    from journalbot.winemaking.cautions import sentence, to_show

    days = {key: date.fromisoformat(day) for key in keys if (day := journal.marked(f"caution {key}"))}
    shown = to_show(dict.fromkeys(keys), days, today)
    return shown, tuple(sentence(key) for key in shown)


def _keys(what: What, numbers: Sequence[int], journal: "Journal", today: date) -> tuple[str, ...]:
    outright = _OUTRIGHT.get(what.measure, ())
    if what.measure not in _ACTS:
        return outright
    from journalbot.winemaking.cautions import called_for
    from journalbot.winemaking.record import record_of

    kind, fields = _ACTS[what.measure]
    cellar = journal.cellar()
    batch = int(what.get("batch") or 0) or (numbers[0] if len(numbers) == 1 else 0)
    known = cellar.batches.get(batch)
    records = {batch: record_of(known, journal.entries(batch=batch), today)} if known else {}
    material = {"material": what.get("material")} if what.get("material") and fields else {}
    act = Entry(kind, batch if known else None, today.isoformat(), {**fields, **material})
    return (*outright, *called_for("", [act], records))
