"""How the facts are to be put together, by the question's own words or else as is usual for the measure."""

from journalbot.language.text import Text
from journalbot.questions.candidates import Candidate
from journalbot.questions.draft import Pieces, tokens_of
from journalbot.questions.measures import MEASURES
from journalbot.questions.periods import PERSON
from journalbot.questions.query import Batches, Query, What
from journalbot.questions.signs import Sign
from journalbot.vocabulary.questions import FILLERS

AGGREGATES = frozenset(("most", "least", "mean", "sum", "range"))
_ORDER = ("mean", "sum", "most", "least", "range", "change", "compare", "first", "last", "each")
_STRICTLY_EACH = frozenset(("each", "each of", "per batch", "by batch", "respectively", "every one of"))
# Signs whose words may say how facts are put together too: "hottest" is a temperature and the most of it.
_BOTH = frozenset(
    (
        "when",
        "score",
        "temperature",
        "alcohol",
        "how long",
        "final gravity",
        "money",
        "age",
        "ph",
        "ta",
        "plan",
        "ferment time",
        "batch size", "gravity now",
    )
)
# What has no first or last of its own: it is as it is now.
_NOW = frozenset(("where", "contents", "sweetness", "free vessels", "plans", "bottles left"))
_WEIGHED = frozenset(("addition", "sweetened", "chaptalising", "fruit weight"))
# How the facts of a batch come to the one that it is ranked by.
RANKED_BY = {"figure": "mean", "days": "sum", "money": "sum", "act": "count"}
_WHETHER = frozenset(("is", "was", "are", "were", "did", "does", "do", "has", "had"))
_CLAUSE = frozenset(("i", "we", "it", "the", "they", "pitched", "pitching", "bottled", "racked", "pressed"))


def put_together(p: Pieces, whats: tuple[What, ...], best: Candidate) -> Query:
    """The Query of measures, with the part of them that is asked and how their facts come together."""
    if whats[0].measure == "cost":
        return Query(whats, when=p.when)
    measure = best.measure
    asked = {s.name for s in p.signs if not (s.name == "when" and _leads_clause(p.text, s))}
    part = part_asked(asked, measure.sort, {s.name for s in best.signs})
    plain = tuple(w._replace(part="") for w in whats)
    whats = tuple(
        w._replace(part=part if MEASURES[w.measure].sort == "act" or part in ("date", "time") else "") for w in whats
    )
    if measure.counts == "sum" and "times" not in asked and ("how many" in asked or p.has("volume")):
        return Query(plain, when=p.when, within="sum", over="sum")
    if p.has("per day") and measure.name == "punch_down":
        return Query(plain, when=p.when, over="mean")
    if part == "times" and {"different", "distinct"} & set(p.text.words):
        return Query(plain, when=p.when, over="distinct")
    way = _way(p, best)
    period = next((s.name.partition(":")[2] for s in p.signs if s.name.startswith("period:")), "")
    if measure.name == "give" and "who" in asked and way in ("most", "least"):
        return Query(plain, when=p.when, over=way, by=PERSON)
    if measure.name == "bought" and way in ("most", "least") and p.has("money"):
        return Query(tuple(What("money", w.of) for w in plain), when=p.when, over=way)  # "the cheapest kit I bought"
    if measure.name == "bought" and way == "sum" and not p.has("how many"):
        return Query(tuple(What("money", w.of) for w in plain), when=p.when, within="sum", over="sum")
    if period:
        return Query(plain, when=p.when, over=way if way in ("most", "least") else "", by=period)
    if p.has("rank") and MEASURES[whats[0].measure].sort not in ("words", "story"):
        return Query(plain, Batches(every=True), p.when, within=RANKED_BY.get(measure.sort, "last"), over="rank")
    if p.has("plot"):
        return Query(plain, when=p.when, within="change", show="plot")
    if not way and any(w.get("unit") for w in whats) and measure.name in _WEIGHED and not p.when.anchor:
        return Query(plain, when=p.when, within="sum")  # "how many grams of it": in all
    if way in ("most", "least") and len(p.who.numbers) == 2 and not p.who.one and p.text.words[0] in _WHETHER:
        claim = "or" not in p.text.words  # "did I use more sugar in batch 1 or batch 7"
        if measure.name in _WEIGHED:
            return Query(plain, when=p.when, within="sum", over=way, claim=claim)
        return Query(whats, when=p.when, within=usual_way(measure.usual), over=way, claim=claim)
    if part == "times":
        return Query(whats, when=p.when, within="count", over="mean" if way == "mean" else "count")
    usual = usual_way(measure.usual)
    if way == "compare":
        return Query(whats, when=p.when, within=usual, over="compare")
    if way in ("most", "least") and len(p.who.numbers) > 1:
        return Query(whats, when=p.when, within=usual, over=way)
    if way == "each":
        return Query(whats, Batches(every=True), p.when, within=usual)
    if way in AGGREGATES:
        inner = "sum" if measure.usual == "sum" or (way in ("most", "least") and measure.sort == "days") else ""
        return Query(whats, when=p.when, over=way, within=inner)
    if way:
        return Query(whats, when=p.when, within=way, over=way if way != "change" else "")
    if part in ("date", "time", "amount", "done") and measure.sort == "act":
        return Query(whats, when=p.when)
    return Query(whats, when=p.when, within=usual, over="sum" if usual == "sum" else "")


def usual_way(usual: str) -> str:
    """How a measure's facts come together within a batch where nothing is said."""
    return usual if usual in ("last", "first", "sum", "change") else ""


def _way(p: Pieces, best: Candidate) -> str:
    """The way that the question's words say; "" where they say none that fits the measure."""
    row, measure = set(best.signs), best.measure
    if "change" in {s.name.removeprefix("way:") for s in row}:
        return "change"
    ways = {
        s.name.removeprefix("way:")
        for s in p.signs
        if s.name.startswith("way:")
        and s not in row
        and not tokens_of([s]) & p.explained
        and not any(r.first < s.last and s.first < r.last and r.name not in _BOTH for r in row)
    }
    way = next((w for w in _ORDER if w in ways), "")
    if way == "sum" and measure.sort in ("words", "story"):
        return "each"
    if (
        way == "each"
        and measure.usual == "sum"
        and not any(s.value in _STRICTLY_EACH for s in p.signs if s.name == "way:each")
    ):
        return "sum"
    if way == "sum" and measure.sort == "days" and len(p.who.numbers) == 1:
        return ""  # "how long did it ferment, all told"
    return "" if way in ("first", "last") and measure.name in _NOW else way


def _leads_clause(text: Text, when: Sign) -> bool:
    """Whether "when" leads a clause (`gravity when I pitched`) and does not ask."""
    if not any(w not in FILLERS for w in text.words[: when.first]) or when.last >= len(text.words):
        return False
    return text.words[when.first - 1] not in ("and", ",", "since") and text.words[when.last] in _CLAUSE


def part_asked(asked: set[str], sort: str, row: set[str]) -> str:
    """The side of a measure that is asked for: its date, its amount, how often, or whether at all."""
    wants: set[str] = {n for n in ("when", "times", "how much", "how many") if n in asked and n not in row}
    wants |= {"when"} & row if sort == "act" else set()
    if {"when", "how much"} <= wants:
        return ""
    if "clock" in asked:
        return "time"
    if "times" in wants or ("how many" in wants and sort in ("act", "words")):
        return "times"
    if "when" in wants:
        return "date"
    others = {"what", "who", "where", "why", "how long", "when", "how much", "how many", "times"}
    return "done" if sort in ("act", "words") and "did" in asked and not asked & others else ""
