"""A question that leans on the one before it: `and batch 4?`, `when was that?`, `the one before`, `the notes`."""

from journalbot.journal.cellar import Cellar
from journalbot.language.lexicon import Mention
from journalbot.language.names import Names
from journalbot.language.text import Text
from journalbot.questions.candidates import candidates, content
from journalbot.questions.measures import MEASURES
from journalbot.questions.narrowing import narrowed
from journalbot.questions.query import Batches, Query, What
from journalbot.questions.signs import Sign
from journalbot.questions.times import dates_in
from journalbot.questions.whom import Whom, label_of, whom

# Whole phrases that ask something of the last answer; what each does is in `follow_up`.
from journalbot.vocabulary.questions import words

PHRASES: dict[str, tuple[str, ...]] = {
    "notes": (
        "show me the notes",
        "show the notes",
        "the notes",
        "which notes",
        "what notes",
        "show me the note",
        "show the note",
        "notes",
        "the note",
        "notes please",
        "why",
        "why is that",
        "how do you know",
        "how come",
        "how do you know that",
        "how so",
        "where does that come from",
        "says who",
        "what is that based on",
        "what did i write",
        "how did you get that",
        "how is that worked out",
        "from which notes",
        "based on what",
        "show me what i wrote",
        "in which note",
        "what does the note say",
        "prove it",
        "show the source",
        "sources",
    ),
    "date": (
        "when",
        "when was that",
        "when was it",
        "when did that happen",
        "when was this",
        "what date",
        "what day was that",
        "on what day",
        "when did i do that",
        "when exactly",
        "which day",
        "when was that again",
    ),
    "amount": (
        "how much",
        "how much was that",
        "how much was it",
        "what amount",
        "how much did i use",
        "how much did i add",
        "what dose",
    ),
    "before": (
        "the one before",
        "the one before that",
        "before that",
        "the previous one",
        "the time before",
        "the time before that",
        "previously",
        "what about before that",
        "the last but one",
    ),
    "all": (
        "all of them",
        "both",
        "both of them",
        "every one",
        "each of them",
        "all",
        "the others too",
        "for all of them",
        "all batches",
        "for all wines",
        "for every batch",
        "and the others",
        "the rest",
        "each",
    ),
    "first": (
        "the first one",
        "the first",
        "the first time",
    ),
    "last": (
        "the last one",
        "the last",
        "the last time",
        "the latest",
    ),
    "most": (
        "the highest",
        "the most",
        "the best",
        "the longest",
        "the hottest",
    ),
    "least": (
        "the lowest",
        "the least",
        "the worst",
        "the shortest",
        "the coldest",
    ),
    "mean": ("the average", "and the average", "on average", "and on average", "average"),
    "who": ("to whom", "who", "who to", "to who", "who got them", "who got it", "who was that", "to whom was that"),
    "sum": ("in total", "and in total", "altogether", "in all", "the total", "and the total"),
}
_BY_PHRASE = {phrase: does for does, phrases in PHRASES.items() for phrase in phrases}
_LEADS = words("and what how about or also same then for but ok okay so as well too with in of the is was it that now")


def follow_up(
    text: Text, refs: list[Mention], signs: list[Sign], names: Names, cellar: Cellar, before: Query
) -> tuple[Query, Whom] | None:
    """The Query that a follow-up means; None where the question stands on its own."""
    phrase = " ".join(w for i, w in enumerate(text.words) if text.tokens[i].kind != "mark").strip()
    for stop in (" please", " then", " again"):
        phrase = phrase.removesuffix(stop)
    nobody = Whom()
    does = _BY_PHRASE.get(phrase) or _BY_PHRASE.get(phrase.removeprefix("and ").removeprefix("but "))
    if does:
        return _done(does, before), nobody
    who = whom(text, refs, names, cellar)
    days = dates_in(text, who.tokens, weak=True)
    led = bool(text.words) and (
        text.words[0] in ("and", "or", "also", "same", "but", "then", "ok", "so")
        or text.words[:2] in (["what", "about"], ["how", "about"], ["what", "of"])
    )
    rest = [
        i
        for i in range(len(text.words))
        if i not in who.tokens | days.tokens and text.words[i] not in _LEADS and text.tokens[i].kind != "mark"
    ]
    if not rest and (who.numbers or who.unknown or days.when):
        query = before
        if who.numbers:
            chosen = tuple(n for n in who.numbers if n in before.batches.numbers)
            if chosen and len(before.batches.numbers) > len(chosen):
                who.numbers, who.one = chosen, len(chosen) > 1  # it picks among those just asked about
            every = who.every
            query = query._replace(
                batches=Batches(who.numbers, tuple(label_of(cellar.batches[n]) for n in who.numbers), every),
                over="" if query.over in ("most", "least", "compare") else query.over,
            )
        if days.when:
            query = query._replace(when=days.when)
        return query, who
    if led and not refs and before.batches.numbers:
        return _measure_of_same(text, signs, before, rest)
    return None


def _done(does: str, before: Query) -> Query:
    if does == "notes":
        return before._replace(show="notes")
    before = before._replace(show="")
    if does == "who":
        return before._replace(whats=(What("give", before.whats[0].of),), within="", over="", by="")
    if does in ("date", "amount"):
        whats = tuple(
            w._replace(part=does if MEASURES[w.measure].sort == "act" or does == "date" else w.part)
            for w in before.whats
        )
        return before._replace(whats=whats)
    if does == "before":
        way = before.within or before.over or "last"
        way = way if way in ("first", "last") else "last"
        over = (
            way
            if before.over in ("", "first", "last") and not before.batches.numbers
            else before.over
            if before.over not in ("", "first", "last")
            else ""
        )
        return before._replace(within=way, over=over, skip=before.skip + 1)
    if does == "all":
        return before._replace(
            batches=before.batches._replace(every=True)
            if before.batches.numbers and len(before.batches.numbers) > 1
            else Batches(every=True),
            over="" if before.over in ("first", "last") else before.over,
        )
    if does in ("first", "last"):
        return before._replace(within=does, over=does if not before.batches.numbers else "", skip=0)
    return before._replace(over=does, within="")


def _measure_of_same(text: Text, signs: list[Sign], before: Query, rest: list[int]) -> tuple[Query, Whom] | None:
    """Another measure of the same batches: `and the pH?`."""
    ranked = [
        c for c in candidates(text, signs, rest, set()) if not c.left and MEASURES[c.measure.name].scope == "batch"
    ]
    if not ranked or not content(text, rest):
        return None
    what = narrowed(text, ranked[0], signs, rest, set())
    asked = {s.name for s in signs}
    part = "date" if "when" in asked else ""
    usual = ranked[0].measure.usual
    query = Query(
        (what._replace(part=part),),
        before.batches,
        before.when,
        within=usual if usual in ("last", "first", "sum", "change") else "",
        over="sum" if usual == "sum" else "",
    )
    return query, Whom()
