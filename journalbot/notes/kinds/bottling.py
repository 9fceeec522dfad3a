"""Bottles filled: counts, sizes and closures."""

from collections.abc import Iterator

from journalbot.language.amounts import Amount, Bottles, bottle_size, tidy
from journalbot.language.lexicon import Mention
from journalbot.language.numerals import Number
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene
from journalbot.notes.kinds.counts import bottle_amounts

_HALF = 0.5
_CONTAINED = {
    "into", "in", "filled", "and", "plus", ",", "got", "gave", "made", "yielded", "bottled", "=", ":", "total", "for",
    "bottling", "-", "is", "came", "as", "x", "of", "makes",
}


def read_bottling(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """A bottling: counts, sizes and closure, one entry a size."""
    if clause.mood != "done":
        return
    cues = [c for c in clause.cues("bottle") if _verb(c, clause)] or _did_too(clause, scene)
    filled = _filled_bottles(clause)
    if not cues and not filled and not _count_and_closure(clause) and not _yielded(clause, scene):
        return
    before = scene.clauses[max(0, scene.clauses.index(clause) - 4) : scene.clauses.index(clause)]
    if not cues and any(clause in _tail(c, scene) and any(read_bottling(c, scene)) for c in before):
        return
    other = clause.cues("drink", "give", "purchase") and not cues and not _yielded(clause, scene)
    if clause.of("money") or other:
        return
    here = [clause, *_tail(clause, scene)]
    counts = _counts(here, scene) or _counts(_told_before(clause, scene), scene)
    closures = [m for c in here for m in _closures(c)]
    at = cues[0] if cues else clause.of("amount", "bottles", "number")[0]
    entries = [dict(c) for c in counts] or [{}]
    days = _days(here, len(entries))
    counted = next((c for c in here if c.of("bottles") or bottle_amounts(c)), clause)
    if counted is not clause and counted.own_date and not clause.own_date:
        days = [(counted.date,)] * len(entries)  # "it is in bottles. Yesterday we filled 19"
    for i, fields in enumerate(entries):
        if closures:
            fields["closure"] = closures[i if len(closures) == len(entries) else 0]
        yield Draft("bottle", clause, at.first, at.last, fields, dates=days[i])


def _yielded(clause: Clause, scene: Scene) -> bool:
    """`got 14 bottles out of the blueberry`, `24 bottles of zin done`: of a wine that is not in bottles yet."""
    fits = [n for m in clause.of("batch") for n in m.value.fits]
    fresh = bool(fits) and all(scene.cellar.batches[n].under_way and not scene.cellar.batches[n].bottles for n in fits)
    if any(c.cues("bottle") for c in scene.sentence(clause) if c is not clause):
        return False
    out_of = clause.has("got", "made", "yielded", "gave") and (clause.has("out", "from"))
    return fresh and bool(bottle_amounts(clause)) and bool(out_of or clause.has("done", "filled", "corked", "capped"))


def _did_too(clause: Clause, scene: Scene) -> list[Mention]:
    """`bottled the red, 23 bottles, and on Friday we did the white, 11 bottles`: a verb that stands for the first."""
    before = any(c.first < clause.first and c.cues("bottle") for c in scene.sentence(clause))
    did = [c for c in clause.cues("drink") if clause.text.words[c.first] == "did"]
    return did if before and clause.of("batch") and bottle_amounts(clause) else []


def _verb(cue: Mention, clause: Clause) -> bool:
    words = clause.text.words
    word = words[cue.first]
    if word == "bottle" and cue.last - cue.first == 1:
        return cue.first == clause.first and words[cue.last : cue.last + 1] not in (["of"], [], [","])
    if word == "corked":
        return bool(bottle_amounts(clause)) or any(n.first == cue.last for n in clause.of("number"))
    if word == "bottling":
        return words[cue.last : cue.last + 1] not in (["bucket"], ["wand"], ["line"]) and words[
            cue.first - 1 : cue.first
        ] not in (["before"], ["for"], ["after"], ["since"], ["until"], ["pre"], ["at"], ["the"])
    if words[cue.first : cue.last] in (["in", "bottles"], ["into", "bottles"], ["in", "the", "bottle"]):
        return not clause.has("still", "since", "months", "years", "year", "weeks", "has", "been")
    return True


def _filled_bottles(clause: Clause) -> bool:
    """`filled into 29 bottles`, `through the filter and into 28 bottles of 0.75`."""
    words = clause.text.words
    for m in clause.of("amount", "bottles"):
        unit = m.value.unit if isinstance(m.value, Amount) else "bottle"
        if (
            (unit == "bottle" or isinstance(m.value, Bottles))
            and m.first > 0
            and (words[m.first - 1] in ("into", "filled", "in") or clause.joined_by in ("into",))
        ):
            return True
    return False


def _count_and_closure(clause: Clause) -> bool:
    """`28 bottles, real corks`: so many bottles and what closes them."""
    counted = [m for m in clause.of("amount") if m.value.unit == "bottle"] or clause.of("bottles")
    return (
        bool(counted)
        and bool(clause.of("closure"))
        and not clause.of("money")
        and not clause.cues("drink", "give", "purchase")
    )


def _tail(clause: Clause, scene: Scene) -> list[Clause]:
    """The clauses after a bottling that only go on about it: counts, sizes, closures."""
    i = scene.clauses.index(clause)
    out: list[Clause] = []
    for c in scene.clauses[i + 1 : i + 5]:
        about = c.of("closure") or c.of("bottles") or bottle_amounts(c)
        bare = bool(c.of("number")) and c.last - c.first <= 4 and not c.of("reading")
        if (
            c.sentence - clause.sentence > 1
            or not (about or bare)
            or any(
                x.value.kind in ("drink", "give", "purchase", "rack") and x.value.detail != "weak" for x in c.of("cue")
            )
            or c.of("money", "score")
            or c.mood != "done"
        ):
            break
        if c.of("batch") and not _same_ref(c, clause):
            break
        out.append(c)
    return out


def _days(clauses: list[Clause], entries: int) -> list[tuple[str, ...]]:
    """The day of each count, where each has its own (`60 x 750 ml yesterday and 48 x 750 ml today`)."""
    counted = [m for c in clauses for m in c.of("bottles")]
    dates = {m.first: m.value.iso for c in clauses for m in c.of("date")}
    own = [dates.get(m.last) for m in counted]
    return [(d,) for d in own if d] if all(own) and len(own) == entries else [()] * entries


def _told_before(clause: Clause, scene: Scene) -> list[Clause]:
    """`got 12 x 375 and 20 x 750 ml out of the zin, bottled today`: clauses of counts alone, before the verb."""
    out: list[Clause] = []
    for c in reversed(scene.clauses[: scene.clauses.index(clause)]):
        acts = any(x.value.detail != "weak" and x.value.kind != "add" for x in c.of("cue"))
        if c.sentence != clause.sentence or acts or c.mood != "done" or not (c.of("bottles") or bottle_amounts(c)):
            break
        out.insert(0, c)
    return out


def _same_ref(a: Clause, b: Clause) -> bool:
    return {m.value.fits for m in a.of("batch")} == {m.value.fits for m in b.of("batch")}


def _counts(clauses: list[Clause], scene: Scene) -> list[dict[str, object]]:
    """The counts of a bottling, each with its size where that is said."""
    out: list[dict[str, object]] = []
    words = scene.text.words
    for clause in clauses:
        sized = [m for m in bottle_amounts(clause) if _size_after(m, clause, words)]
        for m in sorted([*clause.of("bottles"), *sized], key=lambda m: m.first):
            if isinstance(m.value, Bottles):
                out.append({"count": m.value.count, "size": m.value.size, "unit": m.value.unit})
            elif size := _size_after(m, clause, words):
                count = 1 if m.value.value == _HALF else m.value.value  # "one half bottle of 37.5 cl"
                out.append({"count": count, "size": size[0], "unit": size[1]})
        if out:
            continue
        for m in clause.of("amount", "number"):
            count = _count_of(m, clause)
            if count is None:
                continue
            fields: dict[str, object] = {"count": count}
            if size := _size_after(m, clause, words):
                fields["size"], fields["unit"] = size
            out.append(fields)
            break
    sizes = {(o["size"], o["unit"]) for o in out if "size" in o}
    if len(out) > 1 and not sizes:
        said = [a.value for c in clauses for a in c.of("amount") if a.value.unit in ("ml", "cl")]
        sizes = {(a.value, a.unit) for a in said}
        for o in out if len(sizes) == 1 else ():
            o["size"], o["unit"] = next(iter(sizes))  # "750 ml. 18 bottles with corks, 6 with screw caps"
    if len(out) == 1 and "size" not in out[0]:
        for clause in clauses:
            for m in clause.of("amount", "number"):
                if (
                    m.kind == "number"
                    and (size := bottle_size(m.value.value))
                    and words[m.last : m.last + 1] in (["s"], ["'s"], ["ml"])
                ):
                    out[0]["size"], out[0]["unit"] = tidy(size[0]), size[1]
                elif (
                    m.kind == "amount"
                    and m.value.unit in ("ml", "cl", "L")
                    and (m.value.unit != "L" or m.value.value <= 3)
                    and "count" in out[0]
                ):
                    out[0]["size"], out[0]["unit"] = m.value.value, m.value.unit
    return out


def _count_of(m: Mention, clause: Clause) -> int | float | None:
    words = clause.text.words
    if m.kind == "amount":
        return m.value.value if m.value.unit == "bottle" else None
    n: Number = m.value
    if (
        n.style not in ("figure", "words")
        or not 1 <= n.value < 1000
        or any(r.first <= m.first < r.last for r in clause.of("reading", "date", "time", "batch", "vessel", "score"))
    ):
        return None
    before = words[m.first - 1] if m.first else ""
    after = words[m.last] if m.last < len(words) else ""
    known = bottle_size(n.value) and after in ("s", "ml")
    if known or (
        after in ("%", "°", "degrees", "f", "c", "days", "weeks", "months", "hours", "people", "of") and after != "of"
    ):
        return None
    named = any(w in ("bottles", "bottle", "btls") for w in words[m.last : m.last + 2])  # "24 champagne bottles"
    follows = named or any(c.first == m.last or c.first == m.last + 1 for c in clause.of("closure")) or after in (
        "of", "under", "with", "", "x", ",", "full", "standard", "half", "swing", "screw", "clear", "green", "bordeaux",
        "burgundy", "in", "for", "w", "at", "plus", "and", "so", "this", "today", "total",
    )
    return (
        tidy(n.value)
        if (before in _CONTAINED and follows)
        or (m.first == clause.first and follows)
        or (follows and clause.cues("bottle"))
        else None
    )


def _size_after(m: Mention, clause: Clause, words: list[str]) -> tuple[float | int, str] | None:
    """`28 bottles of 0.75`, `29 bottles of 0.75 L`, `24 half-litre swing tops`."""
    i = m.last
    if words[i : i + 1] in (["of"], ["x"], ["×"], ["@"]):
        i += 1
    if words[i : i + 1] in (["half-litre"], ["half-liter"], ["half-litres"]):
        return 0.5, "L"
    for a in clause.of("amount", "number"):
        if a.first != i:
            continue
        if a.kind == "amount" and a.value.unit in ("ml", "cl", "L"):
            return a.value.value, a.value.unit
        if a.kind == "number" and (size := bottle_size(a.value.value)):
            return tidy(size[0]), size[1]
    return None


def _closures(clause: Clause) -> list[str]:
    found = list(clause.of("closure"))
    long = [
        m
        for m in found
        if not any(
            o is not m and o.first <= m.first and m.last <= o.last and o.last - o.first > m.last - m.first
            for o in found
        )
    ]
    return [clause.text.slice(m.first, m.last) for m in long]
