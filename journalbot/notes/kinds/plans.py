"""Plans: what is to be done, and when."""

import datetime
from collections.abc import Iterator

from journalbot.language.lexicon import Mention
from journalbot.language.static import lemma
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene

_STRONG = {
    "need to", "needs to", "needs", "remind me", "reminder", "note to self", "todo", "to do", "to-do", "must",
    "plan to", "plan is to", "planning to", "going to", "gonna", "have to", "has to", "gotta", "should", "want to",
    "wanna", "don't forget", "dont forget", "remember to", "time to", "must remember", "jobs", "next job", "next up",
    "i'll", "we'll", "will", "intend to", "supposed to", "am to", "plan", "ought to", "aiming to", "aim to",
    "scheduled", "booked", "due", "not to forget", "must not forget", "try to",
}
_STRIP = {
    "it", "the", "a", "an", "i", "we", "that", "this", "to", "of", "in", "on", "by", "for", "at", "me", "about", "then",
    "so", "and", "is", "be", "will", "my", "also", "its", "them", "one", "some", "again", "goes", "go", "going", "self",
    "note", "maybe", "probably", "next", "ll",
}
_LEADS = {
    "on", "by", "in", "for", "around", "about", "before", "until", "at", "from", "after", "sometime", "end", "of",
    "the",
}


def read(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """A clause that speaks of something to do."""
    if clause.mood != "planned":
        return
    planned = clause.of("planned")
    due = _due(clause, scene)
    told = any(c.first == clause.first and c.value.form == "base" for c in clause.of("cue"))  # "Pull it in April"
    acts = (
        clause.of("code")
        or clause.has("yeast")
        or any(c.value.detail != "weak" for c in clause.of("cue"))
        or _CHORES.intersection(clause.words())
    )
    if not planned and not told and not (acts and _does_something(clause)):
        return  # "school goes back tomorrow"
    planned = [m for m in planned if m.first == clause.first or clause.text.words[m.first : m.last] != ["to", "do"]]
    if not planned and clause.of("planned"):
        return  # "while I have the holidays to do it in"
    strong = any(" ".join(clause.text.words[m.first : m.last]) in _STRONG for m in planned)
    said = {" ".join(clause.text.words[m.first : m.last]) for m in planned}
    if not due and not (strong and (said & _REMINDERS or _does_something(clause))) and not _goes_on(clause, scene):
        return
    what = _what(clause)
    if clause.has("bring") and not due:
        return  # what a dose is to reach, not a thing to do
    naming = clause.has("call", "calling", "name") and (clause.of("batch") or clause.first in scene.start_clauses)
    if naming or clause.text.words[clause.first] in (
        "what", "who", "how", "which",
    ):
        return
    before = scene.clauses[scene.clauses.index(clause) - 1] if scene.clauses.index(clause) else None
    if what in ("do", "do it") and before and (acts := [c for c in before.of("cue") if c.value.form == "base"]):
        what = before.text.slice(acts[0].first, acts[0].last)  # "didn't rack it. Will do it next Saturday"
    if all(w.isdigit() or w in _LENGTHS for w in what.lower().split()):
        return  # "plan on 3 months"
    if not what or (not due and planned and clause.text.words[planned[0].last : planned[0].last + 1] == ["be"]):
        return
    fields: dict[str, object] = {"what": what}
    if due:
        fields["due"] = due
    yield Draft("plan", clause, clause.first, clause.last, fields, needs=_needs(clause))


_REMINDERS = {
    "remind me", "reminder", "note to self", "todo", "to do", "to-do", "don't forget", "dont forget", "remember to",
    "must remember", "jobs", "next job", "next up", "plan", "plan to", "plan is to", "planning to",
}
_CHORES = {
    "order", "buy", "check", "clean", "wash", "get", "call", "book", "ask", "borrow", "find", "label", "measure",
    "test", "move", "start", "make", "pick", "sterilise", "sterilize", "sanitise", "sanitize", "fix", "replace",
    "build",
}


def _does_something(clause: Clause) -> bool:
    """Whether what is planned is a thing to do: an act of the cellar, or a chore."""
    planned = clause.of("planned")
    start = planned[0].last if planned else clause.first
    return (
        any(
            c.first >= start
            and c.value.detail != "weak"
            and c.value.kind not in ("add", "fermentation", "start", "vessel")
            for c in clause.of("cue")
        )
        or bool(clause.of("material", "code"))
        or clause.has("yeast")
        or bool(_CHORES.intersection(clause.text.words[start : start + 4]))
    )


def _goes_on(clause: Clause, scene: Scene) -> bool:
    before = scene.clause_before(clause)
    return bool(
        before
        and before.mood == "planned"
        and clause.cues(
            "rack", "bottle", "pitch", "press", "taste", "filter", "top_up", "add", "oak_out", "purchase", "degas"
        )
    )


def _due(clause: Clause, scene: Scene) -> str | None:
    today = scene.on.isoformat()
    here = [
        m.value.future_iso
        for m in clause.of("date")
        if m.value.future_iso and m.value.future_iso >= today[: len(m.value.future_iso)]
    ]
    if here:
        return str(here[0])
    after = [
        c
        for c in scene.sentence(clause)
        if c.mood == "planned" and c.first > clause.first and not c.of("cue") and c.of("date")
    ]
    return str(after[0].of("date")[0].value.future_iso) if after else _ago(clause, scene.on)


def _ago(clause: Clause, on: datetime.date) -> str | None:
    return (on + datetime.timedelta(days=1)).isoformat() if clause.has("tomorrow") else None


def _what(clause: Clause) -> str:
    """What is to be done: the clause without the words that plan it, its date and its batch."""
    text = clause.text
    drop = {
        i
        for m in clause.mentions
        if m.kind in ("date", "time", "planned", "supposed") or (m.kind == "batch" and not _another(m, clause))
        for i in range(m.first, m.last)
    }
    for m in clause.of("date"):
        if m.first - 1 >= clause.first and text.words[m.first - 1] in _LEADS:
            drop.add(m.first - 1)
    act = next(
        (
            c.first
            for c in clause.of("cue")
            if (c.value.form in ("base", "ing") or clause.text.words[c.first - 1] == "be")
            and c.value.detail != "weak"
            and c.value.kind not in ("add", "start")
        ),
        clause.first,
    )
    turns = [i for i in range(act + 1, clause.last) if text.words[i] in ("when", "while", "because", "unless")]
    turns += [
        i
        for i in range(act + 1, clause.last)
        if text.words[i] in ("and", ",") and i > min((d.last for d in clause.of("date")), default=clause.last) - 1
    ]
    stop = min([m.first for m in clause.of("supposed") if m.first > act] + turns, default=clause.last)
    planned = clause.of("planned")
    start = max(clause.first, act) if planned and planned[0].first < act else clause.first
    kept = [i for i in range(start, stop) if i not in drop and text.tokens[i].kind != "mark"]
    parted = [i for i in kept if text.words[i] in ("it", "them") and text.words[i + 1 : i + 2] in (["up"], ["out"])]
    kept = [i for i in kept if i not in parted]  # "pick it up"
    while kept and text.words[kept[0]] in _STRIP:
        kept = kept[1:]
    while kept and text.words[kept[-1]] in _STRIP:
        kept = kept[:-1]
    if len(kept) > 1 and text.words[kept[-1]] in ("up", "out") and text.words[kept[-2]] not in _PHRASAL:
        kept = kept[:-1]
    if not kept:
        batches = clause.of("batch")
        return text.slice(batches[0].first, batches[0].last) if batches and not clause.of("cue") else ""
    runs: list[str] = []
    start = previous = kept[0]
    for i in [*kept[1:], 10**9]:
        if i != previous + 1:
            runs.append(text.slice(start, previous + 1))
            start = i
        previous = i
    if runs and (clause.text.words[kept[0]].endswith("ing") or clause.text.words[kept[0] - 1] == "be"):
        first, _, rest = runs[0].partition(" ")
        runs[0] = f"{lemma(first.lower())} {rest}".strip()
    return " ".join(runs)


def _another(batch: Mention, clause: Clause) -> bool:
    """`start a merlot kit in January`, `press apples again`: a wine that is to come, not one of the journal's."""
    words = clause.text.words
    before = words[batch.first - 1] if batch.first > clause.first else ""
    begun = clause.cues("start") or clause.has("start", "make", "begin", "started", "another")
    fetched = clause.cues("purchase") or clause.has("collect", "order", "fetch", "get")
    if fetched and {"juice", "grapes", "must", "fruit"}.intersection(words[batch.first : batch.last + 1]):
        return True
    plural = words[batch.last - 1].endswith("s") and bool(
        clause.cues("press", "crush", "harvest") or clause.has("pick")
    )
    return batch.value.how == "name" and bool((begun and before in ("a", "an", "another", "new", "some")) or plural)


_LENGTHS = {
    "one", "two", "three", "four", "day", "days", "week", "weeks", "month", "months", "year", "years", "a", "on",
    "about", "more", "another",
}
_PHRASAL = {"pick", "top", "clean", "set", "wash", "sort", "clear", "use", "fill"}


def _needs(clause: Clause) -> str:
    """Whether the plan is about one wine: it names one, points at one, or is an act done to one."""
    start = planned[0].last if (planned := clause.of("planned")) else clause.first
    fetched = any(c.first <= start + 1 and c.value.detail != "weak" for c in clause.cues("purchase"))
    if fetched and not clause.of("batch"):
        return "none"  # "buy another carboy", "pick it up on Saturday"
    if any(not _another(m, clause) for m in clause.of("batch")) or clause.of("pronouns"):
        return "batch"
    if clause.of("batch") or clause.cues("start") or clause.has("start", "begin"):
        return "none"
    if clause.of("vessel"):
        return "maybe-null"
    act = clause.of("code") or clause.cues(
        "rack",
        "press",
        "pitch",
        "top_up",
        "bottle",
        "filter",
        "degas",
        "oak_out",
        "malolactic",
        "punch_down",
        "chill",
        "stir",
        "taste",
    )
    of_wine = clause.of("material", "oak_form", "quantity") or clause.has("yeast", "oak")
    return "maybe-null" if act or of_wine else "none"
