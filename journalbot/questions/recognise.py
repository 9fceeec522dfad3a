"""Whether a line is a question rather than a note."""

import re

from journalbot.language.tokens import tokenize
from journalbot.questions.followups import PHRASES
from journalbot.questions.signs import question_lexicon, written_out

_ASKING = frozenset("what which who whom whose where why how when whats".split())
_SHOWING = frozenset("show list compare find search calculate convert tell gimme rank summarise summarize".split())
_SUBJECTS = frozenset("i we you it the my our there any this that they he she anything anyone a all batch ml malo mlf".split())
_AUXILIARIES = frozenset("did do does is are was were has have had can could should shall will would am may".split())
# "what a day", "when I got home": exclamations, and clauses that tell when a thing was done.
_NOT_WHAT = frozenset("a an".split())
_PAST = frozenset("got came went was were had found opened checked looked woke saw started racked pressed bottled pitched tasted added moved finished is are".split())
# Nouns of figures: a line that begins with them, or holds nothing done, asks for the figure.
_FIGURES = frozenset((
    "abv", "attenuation", "average", "total", "price", "cost", "timeline", "recipe", "days", "hottest", "coldest", "lowest", "highest", "longest", "shortest", "cheapest", "strongest", "best", "worst", "number",
    "left", "remaining", "history", "story", "apparent", "mean", "last", "first", "latest", "most", "least", "everything", "starting", "original", "final", "peak", "maximum", "minimum", "og", "fg", "yeast", "driest", "sweetest", "oldest", "dearest", "strength",
))
_DONE = re.compile(r"\b(racked|pressed|bottled|pitched|added|tasted|topped|moved|started|crushed|punched|gave|drank|opened|bought|paid|stirred|filtered|degassed|dumped)\b")
_VALUE = re.compile(r"(?<![\w.'#])(?:\d+[.,]\d+|[.,]\d{3}|\d+\s?(?:%|°|F\b|C\b|g\b|kg\b|ml\b|gal\b|l\b|tsp\b|oz\b|lbs?\b|ppm\b|brix\b|x\b))|[$€£]\s?\d", re.IGNORECASE)
_FOLLOW_UPS = frozenset(phrase for phrases in PHRASES.values() for phrase in phrases)
_MENTIONS = frozenset(("mention", "mentions", "mentioning"))


def is_question(text: str) -> bool:
    """Whether this line asks something. A line that tells first and asks after is a note."""
    stripped = text.strip()
    tokens = [t for t in tokenize(written_out(stripped)) if t.text != "\n"]
    words = [t.low for t in tokens if t.kind != "mark"]
    if not words:
        return False
    sentences = [s for s in re.split(r"(?<=[.!?;])\s+|\n", stripped) if re.search(r"\w", s)]
    marked = stripped.rstrip(")\"' ").endswith("?")
    first_sentence = sentences[0] if sentences else stripped
    if _asks_by_form(words):
        return True
    if marked and (len(sentences) == 1 or first_sentence.rstrip().endswith("?")):
        return not _tells(stripped)
    if " ".join(words) in _FOLLOW_UPS and words[0] not in ("all", "both", "each", "average", "notes"):
        return True
    return _asks_without_mark(words, stripped)


def _asks_by_form(words: list[str]) -> bool:
    first, second = words[0], words[1] if len(words) > 1 else ""
    third = words[2] if len(words) > 2 else ""
    if first in ("please", "so", "and", "ok", "hey", "hi", "but", "um", "well") and len(words) > 1:
        return _asks_by_form(words[1:])
    if first in ("in", "on", "to", "from", "for", "since", "by", "at") and second in ("which", "what", "whom"):
        return True
    if first == "when":
        return second in _AUXILIARIES and not (second in ("is", "was") and third in ("done",)) or second == ""
    if first in _ASKING:
        if first == "what" and second in _NOT_WHAT:
            return False
        return not (first in ("which", "who", "whose") and second in ("is", "was") and third in ("why", "great", "good", "nice", "fine")) and not (first == "how" and second in ("about", "i", "the", "nice", "lovely") and third not in ("the", "batch", "my") and second != "about")
    if first in _SHOWING:
        return True
    if first == "give" and second == "me" or first == "let" and second in ("me", "us"):
        return True
    if first == "remind" and second == "me" and third in _ASKING | {"of", "if", "whether"}:
        return True
    if first in ("any", "anything"):
        return True
    if first in _AUXILIARIES and second in _SUBJECTS:
        return _auxiliary_asks(words)
    return False


def _auxiliary_asks(words: list[str]) -> bool:
    """`did I oak it` asks; `did the apple, carboy 3 to 4` tells."""
    first, second = words[0], words[1]
    if second in ("i", "we", "you", "there", "any", "anything", "anyone", "they", "he", "she"):
        return first not in ("had", "may") or second != "a"
    if first in ("did", "do", "does"):
        return any(w in _BASE_VERBS for w in words[2:])
    if first in ("had", "have", "can", "may", "will"):
        return False
    return first in ("is", "are", "has", "should", "could", "was", "were", "would") and second not in ("a", "all") and (first not in ("was", "were") or second in ("there", "the", "it", "my", "batch"))


_BASE_VERBS = frozenset("get have ferment finish start stop need go take use contain make cost come turn end stay sit reach taste score hold fit see spend receive stick stall".split())


def _tells(text: str) -> bool:
    """Whether a line with a question mark at its end still tells of something done, with a figure."""
    return bool(_DONE.search(text.lower().split("?")[0])) and bool(_VALUE.search(text)) and "," in text


def _asks_without_mark(words: list[str], text: str) -> bool:
    """`abv of the apple wine`, `kmeta in the malbec, when and how much`: elliptical, and nothing in it is done or measured."""
    if _VALUE.search(text) or _DONE.search(text.lower()) and not set(words) & {"last", "when", "which"}:
        return False
    lexicon = question_lexicon()
    inner = [w for i, w in enumerate(words) if w in _ASKING and i > 0]
    tail = " ".join(words[-3:])
    if inner and (words[-1] in ("when", "much", "many", "that", "long", "who", "where", "why") or any(words[i] in _ASKING and words[i + 1] in ("much", "many", "long", "often", "yeast", "was", "is", "did") for i in range(len(words) - 1))) and "wondering" not in tail:
        return "i" not in words[: words.index(inner[0])] or inner[0] == "how"
    if words[0] in _FIGURES and len(words) > 1 and any(w in lexicon.words for w in words[1:]):
        return len(words) < 14 and words[0] not in ("left", "final", "first", "last", "yeast", "total", "most", "best", "everything") or (len(words) > 2 and words[1] in ("time", "of", "score", "spent", "recent", "cost", "bottles", "about", "gravity", "on", "yeast", "in", "number") and words[:2] not in (["left", "on"], ["left", "in"]))
    if words[-1] in ("left", "remaining") and set(words) & {"bottle", "bottles", "botles", "wine"} and not any(w.isdigit() and len(w) < 4 for w in words):
        return True
    if set(words) & _MENTIONS and set(words) & {"notes", "note", "tasting", "tastings", "entries"}:
        return True
    return words[0] in ("timeline", "recipe", "abv", "attenuation", "plans") or (len(words) <= 6 and words[-1] in ("yeast", "abv", "og", "fg", "timeline", "story", "recipe") and len(words) > 1 and words[-2] not in ("of", "the", "more", "some", "pitched", "added", "with"))
