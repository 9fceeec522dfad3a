"""Whether a line is a question rather than a note."""

import re
from functools import cache

from journalbot.language.tokens import tokenize
from journalbot.questions.followups import PHRASES
from journalbot.questions.signs import written_out
from journalbot.vocabulary.question_signs import SIGNS
from journalbot.vocabulary.questions import RELATIVES, SUPERLATIVES, TESTS, words

_ASKING = words("what which who whom whose where why how when")
_AFTER_HOW = words(  # "how lovely it smells" is no question
    "long much many often old hot cold warm cool dry strong sweet big high low far come did do does is are was "
    "were has have can should would will about full empty acidic sour heavy large small fast quickly slow soon "
    "frequently alcoholic expensive good bad well dear cheap"
)
_SHOWN = words(
    "me us the all my our every everything notes note batch batches timeline wines reds whites what which any its "
    "it readings additions tastings bottles"
)
_SUBJECTS = words("i we you it the my our there any this that they he she anything anyone anybody batch ml malo mlf")
_AUXILIARIES = words("did do does is are was were has have had can could should shall will would am")
_BASE_VERBS = words(
    "get have ferment finish start stop need go take use contain make cost come turn end stay sit reach taste "
    "score hold fit see spend receive stick stall last clear"
)
_NOT_AFTER_IS = words("down up at now still dry done in out going bubbling fermenting finally clear all a")
# What makes a line that begins like a question a statement after all.
_STATES = words("is was went dropped fell rose down up now are were looks seems smells tastes stands reads")
_DONE = re.compile(
    r"\b(racked|pressed|bottled|pitched|added|tasted|topped|moved|started|crushed|punched|gave|drank|opened|bought|paid|"
    r"stirred|filtered|degassed|dumped|filled|leaked|finished)\b"
)
_VALUE = re.compile(
    r"(?<![\w.'#])(?:\d+[.,]\d+|[.,]\d{3}|\d+\s?(?:%|°|F\b|C\b|g\b|kg\b|ml\b|gal\b|l\b|tsp\b|oz\b|lbs?\b|ppm\b|brix\b|x\b|"
    r"bottles\b))|[$€£]\s?\d",
    re.IGNORECASE,
)
_FOLLOW_UPS = frozenset(phrase for phrases in PHRASES.values() for phrase in phrases) - {
    "all",
    "both",
    "each",
    "average",
    "notes",
    "the note",
    "the first",
    "the last",
}
_HOW_MUCH = re.compile(
    r"\s*(?:so |and |ok |please )*how (?:much|many|big|strong|long|often|old)\b(?!.{0,200}!)", re.IGNORECASE
)
_OF_A_BATCH = re.compile(r"\s*(?:is|are|does|has|will|was) batch\b", re.IGNORECASE)
_NUMBER = r"-?\d*[.,]?\d+"
_LONGEST_TO_WORK_OUT = 200  # characters: what is to be worked out is said in a line
_STUFF = (
    r"(?:sugar|water|honey|acid|tartaric|kmeta|meta|sul(?:f|ph)ite|so2|bicarb|chalk|carbonate|dap|nutrient|campden|"
    r"tablets|grams|ppm|sorbate|bentonite)"
)
_MEASURED = (
    r"(?:sg|brix|plato|gravity|litres|liters|gallons|gal|l|ml|grams|g|kg|oz|lb|pounds|ounces|cups|quarts|pints|celsius|"
    r"fahrenheit|c|f)"
)
_ASKED_LAST = r"(?:'s|would|will|is|does|should|alcohol|abv|gravity|dose|ta|ph|brix|sg|pressure)"
# Forms of a line that wants something worked out; no note reads so.
_WORKED_OUT = (
    r"^(?:calculate|work out|convert|translate)\b",
    rf"{_NUMBER}.*\b(?:is|gives?|makes?|equals|comes? to) (?:what|how (?:much|many))\b",
    rf"{_NUMBER}.*\bhow (?:much|many) (?:\w+ )?{_STUFF}(?: is that| do i need| needed)?$",
    rf"{_NUMBER}.*\bwhat(?:'s| is) (?:the|that|it|its)\b",
    rf"^(?:at|with|for|from|in) .*{_NUMBER}.*\bwhat\b",
    rf"^(?:alcohol potential|potential)\b.*\bof\b.*{_NUMBER}",
    rf"^(?:adjust|correct)\b.*{_NUMBER}.*\d ?(?:°|deg|degrees)? ?[FC]\b",
    rf"^{_STUFF}(?: \w+)? needed\b.*\b(?:to|for)\b.*{_NUMBER}",
    r"^will (?:\w+ing|the|my|our|it|this|that|batch|malo\w*|mlf|ml|there|they|i|we)\b",
    r"^(?:potential|final|finished|end) (?:alcohol|abv) (?:of|for|from|at|if)\b",
    rf"^(?:alcohol|abv|strength|attenuation) (?:from|if|between)\b.*{_NUMBER}",
    rf"^(?:alcohol|abv|strength|attenuation) (?:of|for)\b.*{_NUMBER}.*\bto\b.*{_NUMBER}",
    r"^og\b.*\bfg\b.*\b(?:abv|alcohol)$",
    rf"^(?:the )?pressure\b.*{_NUMBER}",
    r"\bis how (?:much|many)\b",
    rf"^if\b.*{_NUMBER}.*\b(?:what|how (?:much|many|strong))\b",
    r"^if (?:i|we) (?:add|blend|mix|use|put|raise|bring|rack|sweeten)\b.*\b(?:what|how)\b",
    r"^what(?:'s| is| does| would| will| should| dose| strength| abv)\b"
    rf"(?!.*\b(?:is|was|went|had|were|got|[iw]e? \w+ed)\b).*{_NUMBER}",
    r"^molecular (?:so2|sulfite|sulphite) (?:of|for|at|from|in)\b",
    r"^(?:tell me )?more (?:about|on) (?:that|the|this) (?:caution|warning)",
    r"^(?:pearson|hydrometer correction|temperature correction)\b",
    rf"^(?:blend|mix)\b.*{_NUMBER}.*\bto (?:get|make|reach|give)\b",
    r",\s*(?:and )?how (?:much|many|strong|big|long)\b",
    rf",\s*(?:and )?what ?{_ASKED_LAST}\b",
    rf"{_NUMBER}.*,\s*(?:and )?what\b(?! an?\b| i\b| we\b)",
    rf"^(?:will|would|can|could|does)(?: a| an| my| the)? {_NUMBER}",
    rf"^is(?: a| an| my| the)? {_NUMBER}.*\b(?:too|enough|fits?|dry|ok|okay|safe)\b",
    r"^(?:may|might|can|could|should|shall) (?:i|we)\b",
    r"\bwhat (?:is|would) (?:it|that|the gravity) (?:really|corrected|be)\b",
    rf"^{_NUMBER}(?: ?[^\W\d]+)? (?:in|to|as|into) {_MEASURED}$",
)
_GROUPS = words("wines batches reds whites rosés roses")
# Nouns of figures: a line that begins with one, and tells nothing, asks for it.
_FIGURES = frozenset(
    p
    for name in (
        "sg",
        "temperature",
        "alcohol",
        "attenuation",
        "residual sugar",
        "original gravity",
        "final gravity",
        "score",
        "volume",
        "capacity",
        "ferment time",
        "story",
        "recipe",
        "per bottle",
    )
    for p in SIGNS[name]
    if p
    not in (
        "hot",
        "warm",
        "cold",
        "cool",
        "heat",
        "strong",
        "rate",
        "rated",
        "marked",
        "points",
        "grade",
        "everything",
        "proof",
        "end at",
        "start at",
        "a bottle",
        "a pop",
        "life",
        "log",
        "record",
        "records",
        "fit in",
        "big",
        "large",
        "hold",
        "holds",
        "fits",
        "details",
        "process",
        "method",
    )
) | {
    "ph",
    "ta",
    "brix",
    "va",
    "free so2",
    "total so2",
    "yan",
    "price",
    "cost",
    "days",
    "time",
    "number of",
    "average",
    "yeast",
    "total",
    "tasting notes",
    "bottles",
}
_OF = words("of for from between on in to per")
_FIRST = {  # a superlative or the like, and what must follow it
    "best": "wine mark score batch one rated bottle red white",
    "worst": "wine mark score batch one rated",
    "last": "time thing bottle sulfite sulphite addition reading gravity tasting date",
    "first": "time thing date",
    "most": "recent expensive",
    "total": "spent spend cost additions additions bottles amount volume number",
    "everything": "about on i",
    "old": "tasting notes",
}


def is_question(text: str) -> bool:
    """Whether this line asks something. A line that tells, and asks or exclaims beside, is a note."""
    stripped = text.strip()
    words = [t.low for t in tokenize(written_out(stripped)) if t.kind != "mark"]
    if not words:
        return False
    sentences = [s for s in re.split(r"(?<=[.!?;])\s+|\n", stripped) if re.search(r"\w", s)]
    if any(not s.rstrip().endswith("?") and (_VALUE.search(s) or _DONE.search(s.lower())) for s in sentences[1:]):
        return False
    if to_work_out(stripped):
        return True
    marked = sentences[0].rstrip(")\"' ").endswith("?")
    if not marked and _tells(words, stripped):
        return False
    if _asks_by_form(words):
        return True
    if marked:
        return not (_DONE.search(stripped.lower()) and _VALUE.search(stripped) and "," in stripped)
    return " ".join(words).removeprefix("and ") in _FOLLOW_UPS or _asks_without_mark(words, stripped)


def to_work_out(text: str) -> bool:
    """Whether a line asks for something to be worked out by its form, question mark or not: `alcohol from 1.090 to
    0.996`, `23 plato in sg`, `raise 5 gal by 1 g/L, how much tartaric`. No note reads so."""
    return len(text) <= _LONGEST_TO_WORK_OUT and any(form.search(text) for form in _forms())


@cache
def _forms() -> tuple[re.Pattern[str], ...]:
    return tuple(re.compile(form, re.IGNORECASE) for form in _WORKED_OUT)


def surely_asks(text: str) -> bool:
    """Whether a line can be no note, however it is understood: it asks how much or how many, or what to work out."""
    figures = any(c.isdigit() for c in text)
    return bool(_HOW_MUCH.match(text) or _OF_A_BATCH.match(text)) or (figures and to_work_out(text))


def _tells(words: list[str], text: str) -> bool:
    """Whether a line without a question mark tells something, whatever its first word."""
    first, second = words[0], words[1] if len(words) > 1 else ""
    if first in _ASKING and second in ("i", "we") and first != "how":
        return True  # "what I have to work with", "when I got home"
    if first == "what" and (
        second in ("a", "an")
        or (
            second in ("is", "was") and any(w in ("is", "was", "are") for w in words[3:]) and _DONE.search(text.lower())
        )
    ):
        return True
    if first == "how" and (second not in _AFTER_HOW or text.endswith("!")):
        return True
    if first in ("which", "who") and (
        (second in ("is", "was") and words[2:3] in (["why"], ["great"], ["good"])) or re.match(r"\w+ \w+,", text)
    ):
        return True
    if (first == "where" and second in ("the", "it")) or (
        first in ("any", "anything") and second in ("more", "longer", "day", "time", "less")
    ):
        return True
    return bool(re.search(r":\s*\d", text) or (":" in text and _VALUE.search(text.partition(":")[2])))


def _asks_by_form(words: list[str]) -> bool:
    first, second = words[0], words[1] if len(words) > 1 else ""
    third = words[2] if len(words) > 2 else ""
    if first in ("please", "so", "and", "ok", "hey", "hi", "but", "um", "well") and second:
        return _asks_by_form(words[1:])
    if first in ("in", "on", "to", "from", "for", "since", "by", "at", "with") and second in ("which", "what", "whom"):
        return True
    if first == "when":
        return (second in _AUXILIARIES and third != "done") or not second
    if first in _ASKING:
        return True
    if first in ("show", "list", "find", "compare", "rank"):
        return (
            second in _SHOWN or first in ("compare", "find", "rank") or (first == "list" and second not in ("of", "is"))
        )
    if first in ("search", "calculate", "convert", "summarise", "summarize") or (
        first in ("tell", "give", "let") and second in ("me", "us")
    ):
        return True
    if first == "remind" and second == "me":
        return third in _ASKING | {"of", "if", "whether"}
    if first in ("any", "anything"):
        return True
    return first in _AUXILIARIES and _auxiliary_asks(words)


def _auxiliary_asks(words: list[str]) -> bool:
    """`did I oak it` asks; `did the apple, carboy 3 to 4` and `was 1.010 on Tuesday` tell."""
    first, second = words[0], words[1] if len(words) > 1 else ""
    if second in ("i", "we", "you", "there", "any", "anything", "anyone", "anybody", "they", "he", "she"):
        return True
    if first in ("did", "do", "does"):
        return second in _SUBJECTS | {"a", "either", "both"} and any(w in _BASE_VERBS for w in words[2:])
    if first in ("is", "are", "has", "does", "am"):
        return second.isalpha() and second not in _NOT_AFTER_IS and not second.endswith("ing")
    return first in ("should", "could", "was", "were", "would") and second in _SUBJECTS


def _asks_without_mark(words: list[str], text: str) -> bool:
    """`abv of the apple wine`, `kmeta in the malbec, when and how much`: elliptical, nothing done or measured."""
    if words[0] in _GROUPS and len(words) > 2:
        return (
            words[1] in RELATIVES
            or any(words[1] == t.split()[0] for ts in TESTS.values() for t in ts)
            or ("," not in text and not _VALUE.search(text) and bool(_DONE.match(words[1])))
        )
    if _VALUE.search(text):
        return False
    if words[0] == "the" and len(words) > 1:
        words = words[1:]
    if (
        words[0] in SUPERLATIVES or words[0] in ("highest", "lowest", "average", "peak", "maximum", "minimum")
    ) and words[0] not in _FIRST:
        return len(words) > 1 and not _states(words) and not ("day" in words[:2] or "yet" in words)
    inner = [i for i, w in enumerate(words) if w in _ASKING and i]
    if inner and (
        words[inner[-1] :] in (["when"], ["who"], ["where"], ["why"])
        or words[inner[-1] : inner[-1] + 2]
        in (["how", "much"], ["how", "many"], ["what", "yeast"], ["how", "hot"], ["what", "was"], ["how", "long"])
    ):
        return not {"i", "knows", "wondering"} & set(words[: inner[0]]) and ("knows" not in text)
    if words[0] in _FIRST:
        return words[1:2] != [] and words[1] in _FIRST[words[0]].split() and not _states(words)
    if (
        words[-1] in ("left", "remaining")
        and {"bottle", "bottles", "botles"} & set(words)
        and not any(w.isdigit() and len(w) < 4 for w in words)
    ):
        return True
    if {"mention", "mentions", "mentioning"} & set(words) and {"notes", "note", "tasting", "tastings", "entries"} & set(
        words
    ):
        return True
    for n in (3, 2, 1):
        if " ".join(words[:n]) in _FIGURES and len(words) > n:
            return (
                bool(_OF & set(words[n : n + 3]))
                and not _states(words[n:])
                and not _DONE.search(re.sub(r"\b(i|we) \w+", "", text.lower()))
            )
    return (
        len(words) <= 5
        and words[-1] in ("yeast", "abv", "og", "fg", "timeline", "story", "recipe")
        and len(words) > 1
        and words[-2] not in ("of", "the", "more", "some", "pitched", "added", "with", "in")
    )


def _states(words: list[str]) -> bool:
    return bool(_STATES & set(words))
