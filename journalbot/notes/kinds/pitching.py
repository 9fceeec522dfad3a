"""Pitching yeast: by a verb that says so, or by a strain that goes in."""

from collections.abc import Iterator

from journalbot.language.amounts import Amount
from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene, amount_fields

_YEAST_WORDS = {"yeast", "strain", "starter", "packet", "packets", "sachet", "packs", "pack", "pkt"}
_PLAIN = {
    "the", "a", "some", "of", "it", "its", "my", "our", "with", "dry", "fresh", "new", "more", "same", "yeast", "on",
    "in", "into", "at", "to", "and", "this", "that", "another", "last", "rehydrated", "half", "full", "whole", "both",
    "onto", "over", "for", "was", "is", "using", "used", "went", "goes",
}
_BEFORE_NOUN = {"before", "after", "since", "until", "at", "of", "for"}  # "SG before pitching"
_KINDS_OF_YEAST = {
    "champagne", "wild", "native", "bread", "baker's", "bakers", "ale", "wine", "mead", "cider", "killer", "natural",
    "indigenous", "sherry", "general", "purpose",
}


def read(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """One pitch a clause, where yeast goes into a wine."""
    if clause.mood in ("planned", "denied", "told", "asked", "supposed") or _malolactic(clause) or clause.of("money"):
        return
    strong = clause.cues("pitch")
    strong = [c for c in strong if c.value.detail != "weak" or _speaks_of_yeast(clause)]
    strong = [
        c for c in strong if not {"before", "until"}.intersection(clause.text.words[max(0, c.first - 2) : c.first])
    ]
    if clause.cues("fermentation") and not clause.of("code", "amount"):
        return  # "the wild yeast in the bins got going"
    strong = [c for c in strong if c.value.form != "ing" or clause.text.words[c.first - 1] not in _BEFORE_NOUN]
    codes = [m for m in clause.of("code") if not _culture(m, clause, scene)]
    if not strong and not codes:
        return
    if not strong and not any(_goes_in(m, clause, scene) for m in codes):
        return
    if strong and not codes and strong[0].value.form == "base" and not clause.text.words[strong[0].last : clause.last]:
        return
    if len([c for c in codes if c.first in scene.doses]) > 1:
        for one in codes:
            ref = next((b for b in clause.of("batch") if 0 <= b.first - one.last < 5), None)
            yield Draft(
                "pitch",
                clause,
                one.first,
                one.last,
                {"yeast": one.value, **amount_fields(scene.doses.get(one.first))},
                ref=ref,
            )
        return
    if codes and (each := _each_dose(clause, codes[0], scene)):
        yield from each
        return
    code = codes[0] if codes else None
    fields: dict[str, object] = {}
    dose: Amount | None = None
    if code:
        fields["yeast"] = code.value
        dose = scene.doses.get(code.first)
    elif name := _named(clause, strong[0]):
        fields["yeast"] = name
    if dose is None:
        dose = _yeast_amount(clause, scene)
    fields.update(amount_fields(dose))
    at = code or strong[0]
    yield Draft("pitch", clause, at.first, at.last, fields)


def _each_dose(clause: Clause, code: Mention, scene: Scene) -> list[Draft]:
    """`GN-8 for both: 20 g in batch 5, 2 g in batch 6`: one strain, and each batch's dose of it."""
    out = []
    i = scene.clauses.index(clause) + 1
    for c in scene.clauses[i:] if clause.of("both") and code.first not in scene.doses else ():
        doses, refs = c.of("amount"), c.of("batch")
        if c.sentence != clause.sentence or c.of("cue", "material") or len(doses) != 1 or len(refs) != 1:
            break
        fields = {"yeast": code.value, **amount_fields(doses[0].value)}
        out.append(Draft("pitch", c, doses[0].first, refs[0].last, fields, ref=refs[0]))
    return out


def _speaks_of_yeast(clause: Clause) -> bool:
    return clause.has(*_YEAST_WORDS) or bool(clause.of("code"))


def _malolactic(clause: Clause) -> bool:
    return bool(clause.cues("malolactic")) and not clause.has("yeast")


def _culture(m: Mention, clause: Clause, scene: Scene) -> bool:
    """Whether a strain is a malolactic culture: called one here, or known as one."""
    known = {c.lower() for c in scene.cellar.cultures}
    return m.value.lower() in known or any(
        c.value.kind == "malolactic" for s in scene.sentence(clause) for c in s.of("cue") if abs(c.first - m.first) < 8
    )


def _goes_in(m: Mention, clause: Clause, scene: Scene) -> bool:
    """A strain that goes in without a verb for it: with its dose, for or into a wine, or as what a wine gets."""
    if m.first in scene.doses or any(m.value.lower() == y.lower() for y in scene.cellar.yeasts):
        return True
    words = clause.text.words
    after = words[m.last : m.last + 2]
    before = words[max(clause.first, m.first - 2) : m.first]
    return bool({"into", "in", "on", "for", "onto", "went", "goes"}.intersection(after[:1])) or bool(
        {"gets", "got", "yeast", "used", "using", "with", "strain"}.intersection(before)
    )


def _named(clause: Clause, cue: Mention) -> str | None:
    """The name of a yeast that is no code: the words of the clause beside "yeast" or after the verb that nothing else
    explains.
    """
    words = clause.text.words
    taken = {
        i
        for m in clause.mentions
        if m.kind in ("amount", "batch", "vessel", "date", "time", "reading", "temperature", "number", "material")
        for i in range(m.first, m.last)
    }
    for i in range(clause.first, clause.last):
        if words[i] == "yeast":
            j = i
            while (
                j - 1 >= clause.first
                and words[j - 1] not in _PLAIN
                and j - 1 not in taken
                and clause.text.tokens[j - 1].kind == "word"
                and not _is_cue(clause, j - 1)
            ):
                j -= 1
            if j < i:
                return clause.text.slice(j, i + (words[i - 1] in _KINDS_OF_YEAST))
    run: list[int] = []
    for i in range(cue.last, clause.last):
        token = clause.text.tokens[i]
        if (
            token.kind == "word"
            and i not in taken
            and words[i] not in _PLAIN
            and not _is_cue(clause, i)
            and (token.text[:1].isupper() or (run and words[i - 1] not in _PLAIN))
        ):
            run.append(i)
        elif run:
            break
    if not run:
        return None
    last = run[-1] + 1
    numbered = any(
        n.first == last and n.last == last + 1 and n.value.style == "figure" and n.value.value < 1000
        for n in clause.of("number")
    )
    return clause.text.slice(run[0], last + numbered)


def _is_cue(clause: Clause, i: int) -> bool:
    return any(
        m.first <= i < m.last
        for m in clause.mentions
        if m.kind in ("cue", "both", "variety", "fruit", "planned", "denied")
    )


def _yeast_amount(clause: Clause, scene: Scene) -> Amount | None:
    """The dose of an unnamed yeast, or one that stands apart from it."""
    for m in clause.of("amount"):
        if m.value.unit in ("g", "packet", "oz", "tsp", "tbsp", "kg", "ml", "mg", "tablet") and not any(
            v is m.value for v in scene.doses.values()
        ):
            dose: Amount = m.value
            return dose
    return None
