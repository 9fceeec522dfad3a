"""Tastings and their scores, and the search for words in them and in all notes."""

from journalbot.model import Entry
from journalbot.questions.measures.base import Case, Fact, Measure, fact_of
from journalbot.questions.says import number_said

_LIMIT = 40  # notes that a search may look at


def score_said(entry: Entry) -> str:
    """A score as given: `8/10`."""
    score, out_of = entry.get("score"), entry.get("out_of")
    return (
        f"{score:g}/{out_of:g}"
        if isinstance(score, int | float) and out_of
        else number_said(score)
        if score is not None
        else ""
    )


def tasting_said(entry: Entry) -> str:
    """A tasting in one line: its words and its score."""
    return "; ".join(p for p in (", ".join(map(str, entry.get("words") or ())), score_said(entry)) if p) or "tasted"


def _tastings(case: Case) -> list[Fact]:
    wanted = case.of.get("words", "").casefold()
    return [
        fact_of(e, ", ".join(map(str, e.get("words") or ())) or None, "", tasting_said(e))
        for e in case.kind("taste")
        if not wanted or word_fits(e, wanted)
    ]


def word_fits(entry: Entry, wanted: str) -> bool:
    """Whether a tasting has a descriptor that holds all the words asked for, endings forgiven."""
    need = {_stem(w) for w in wanted.split()}
    return any(
        need <= {_stem(w) for w in str(d).casefold().replace("-", " ").split()} for d in entry.get("words") or ()
    )


def _described(case: Case) -> list[Fact]:
    """What says a word of the wine: a tasting, what it came to in the end, or a remark."""
    wanted = case.of.get("words", "").casefold()
    out = [f for f in _tastings(case) if f.text]
    need = {_stem(w) for w in wanted.split()}
    for e in case.kind("start", "end", "remark"):
        made_of = " ".join((*map(str, e.get("from") or ()), str(e.get("name") or "")))
        text = str(e.get("reason") or e.get("text") or "") if e.kind != "start" else made_of.strip()
        if need <= {_stem(w.strip(".,;:!?()\"'")) for w in text.casefold().replace("-", " ").split()}:
            out.append(fact_of(e, text, "", text))
    return out


def _stem(word: str) -> str:
    for end in ("ies", "es", "s", "y"):
        if word.endswith(end) and len(word) - len(end) > 2:
            return word[: -len(end)]
    return word


def _scores(case: Case) -> list[Fact]:
    out = []
    for e in case.kind("taste"):
        score, out_of = e.get("score"), e.get("out_of")
        if isinstance(score, int | float):
            words = ", ".join(map(str, e.get("words") or ()))
            out.append(
                fact_of(
                    e,
                    float(score),
                    f"/{out_of:g}" if out_of else "",
                    score_said(e) + (f" ({words})" if words else ""),
                )
            )
    return out


def _search(case: Case) -> list[Fact]:
    """Notes that hold the words: in a tasting first, else anywhere in the text; each with the batch it speaks of."""
    wanted = case.of.get("words", "")
    if not wanted:
        return []
    out: list[Fact] = []
    phrase = f'"{wanted}"' if " " in wanted else wanted  # words side by side first
    found = case.source.search(phrase, limit=_LIMIT, prefix=False)
    found = found or case.source.search(wanted, limit=_LIMIT, prefix=False) or case.source.search(wanted, limit=_LIMIT)
    for hit in found:
        note = case.source.note(hit.note)
        if note is None:
            continue
        entries = case.source.entries(seat=hit.note)
        tasted = [e for e in entries if e.kind == "taste" and word_fits(e, wanted.casefold())]
        if case.of.get("in") == "tastings" and not tasted:
            continue
        numbers = list(dict.fromkeys(e.batch for e in tasted or entries if e.batch is not None))
        date = tasted[0].date if tasted else entries[0].date if entries else note.on
        shown = note.text if len(note.text) <= 160 else hit.snippet
        owners: list[int | None] = [*numbers] or [None]
        out += [Fact(n, date, wanted, "", f"“{shown}”", (hit.note,), order=(hit.note, 0)) for n in owners]
    return sorted(out, key=lambda f: (f.date, f.order))


MEASURES: tuple[Measure, ...] = (
    Measure(
        "taste",
        "tasting notes[ with {words}]",
        ("taste",),
        _tastings,
        (
            ("taste",),
            ("taste", "mention"),
            ("change",),
            ("taste", "change"),
            ("taste", "made"),
            ("is", "descriptor"),
            ("having", "descriptor"),
        ),
        ("mention", "is", "made", "note", "addition", "begin"),
        sort="words",
        narrows=("words",),
        done="tasted",
        by_entry=True,
        each=True,
    ),
    Measure(
        "described",
        "being told of with “{words}”",
        ("taste", "start", "end", "remark"),
        _described,
        (),
        sort="words",
        narrows=("words",),
    ),
    Measure(
        "score",
        "score",
        ("taste",),
        _scores,
        (("score",), ("score", "taste"), ("score", "given"), ("score", "made")),
        ("given", "addition", "taste", "made", "is", "ferment"),
        sort="figure",
        quantity="score",
        by_entry=True,
    ),
    Measure(
        "search",
        "notes that say “{words}”",
        (),
        _search,
        (("mention",), ("smell",), ("mention", "taste"), ("mention", "note"), ("smell", "note")),
        ("mention", "note", "taste", "is", "in vessel", "did"),
        sort="words",
        narrows=("words",),
        scope="none",
    ),
)
