"""One meaning in several wordings: plain, elliptical, misspelt, passive, chatty. All of a group give one Query."""

from typing import TYPE_CHECKING

import pytest

from tests.questions.paraphrases import MORE

if TYPE_CHECKING:
    from tests.questions.conftest import Cellar

GROUPS: tuple[tuple[str, ...], ...] = (
    (
        "what yeast did the 2022 syrah get",
        "yeast of the 2022 syrah?",
        "which yeast went into the 2022 syrah",
        "the 2022 syrah, what yeast was that",
        "whats the yeast in the 2022 sirah",
        "remind me which strain I used for the 2022 syrah please",
    ),
    (
        "when did I press batch 3",
        "when was batch 3 pressed",
        "date I pressed batch 3?",
        "so when exactly was it that I pressed batch 3",
        "wen did i press batch 3",
        "tell me when batch 3 was pressed",
    ),
    (
        "when did I last rack batch 1",
        "when was batch 1 last racked",
        "last time I racked batch 1?",
        "batch 1: when was the last racking",
        "tell me when I most recently racked batch 1",
    ),
    (
        "how long did the mead ferment",
        "how long did fermentation of the mead take",
        "how many days did the mead ferment for",
        "length of the mead's fermentation",
        "mead fermentation time?",
        "how long was the mead fermenting, all told?",
    ),
    (
        "how many bottles of the mead are left",
        "mead bottles left",
        "how many botles of mead do I have left",
        "bottles of mead remaining?",
        "how many bottles of the mead are still there",
        "how many meads are left",
    ),
    (
        "what is in demijohn 2",
        "whats in demijohn 2",
        "what's sitting in demijohn 2 right now?",
        "demijohn 2: what's in it",
        "contents of demijohn 2",
        "what does demijohn 2 hold at the moment",
    ),
    (
        "what is the alcohol of the mead",
        "alcohol of the mead?",
        "how strong is the mead",
        "mead abv",
        "what strength did the mead come to",
        "what ABV does the mead have",
    ),
    (
        "what was the original gravity of batch 1",
        "og of batch 1",
        "batch 1 starting gravity?",
        "what was the starting density of batch 1",
        "initial SG, batch 1",
        "what gravity did batch 1 start at",
    ),
    (
        "what was the final gravity of batch 1",
        "fg of batch 1?",
        "batch 1 final gravity",
        "what gravity did batch 1 end at",
        "how dry did batch 1 finish",
        "finishing gravity of batch 1 please",
    ),
    (
        "what was the pH of batch 3",
        "pH of batch 3?",
        "batch 3 ph",
        "what pH did batch 3 have",
        "tell me the pH of batch 3",
        "batch 3, what was its pH",
    ),
    (
        "did I oak the mead",
        "was the mead oaked?",
        "did I ever oak the mead",
        "has the mead been oaked",
        "did the mead ever get any oak?",
    ),
    (
        "which wines did I add acid to",
        "to which wines have I added acid?",
        "which wines got acid",
        "wines that I added acid to",
        "wich wines did i add acid too",
        "what wines were given acid",
    ),
    (
        "who did I give syrah to",
        "who was given syrah?",
        "who got syrah",
        "to whom did I give syrah",
        "who'd I give syrah to",
    ),
    (
        "what did I spend in 2023",
        "how much did I spend in 2023",
        "total spent in 2023",
        "how much money was spent in 2023?",
        "spending in 2023",
        "what were my costs in 2023",
    ),
    (
        "what did the mead cost per bottle",
        "cost per bottle of the mead",
        "what did the mead run me per bottle",
        "mead cost a bottle?",
        "how much did the mead cost me per bottle",
        "price per bottle, mead",
    ),
    (
        "average score of batch 1",
        "what is the average score of batch 1",
        "batch 1 average score?",
        "mean score for batch 1",
        "what does batch 1 score on average",
        "avg score batch 1",
    ),
    (
        "which wine has the highest score",
        "which wine scored highest",
        "highest scoring wine?",
        "which wine got the highest mark",
        "wine with the highest score",
        "which of my wines has the top score",
    ),
    (
        "how many bottles have I filled in all",
        "how many bottles have I filled altogether, every wine together",
        "total bottles filled",
        "how many bottles have been filled in total?",
        "all bottles filled in total",
    ),
    (
        "tell me the whole story of the mead",
        "timeline of the mead",
        "gimme the whole story of the mead",
        "full history of the mead please",
        "everything about the mead",
        "mead timeline",
    ),
    (
        "what did I do in july 2023",
        "what was done in july 2023",
        "what happened in july 2023?",
        "what did we get up to in july 2023",
        "so what was I doing in july 2023",
    ),
    (
        "what have I got planned",
        "what is coming up",
        "whats on the to do list",
        "what have I planned",
        "any plans?",
    ),
    (
        "what's due",
        "what is due now",
        "what needs doing",
        "whats due",
        "anything that needs doing?",
        "tell me what is due",
    ),
    (
        "how long was batch 1 on oak",
        "how many days was batch 1 on oak",
        "how long did batch 1 spend on oak",
        "batch 1: how long on oak?",
        "time batch 1 spent on oak in days",
    ),
    (
        "did the mead get stuck",
        "was the mead ever stuck?",
        "did the mead's fermentation stick",
        "has the mead been stuck",
        "did the fermentation of the mead get stuck",
    ),
    (
        "which wines went through malolactic",
        "which wines have been through malolactic?",
        "wines that went through malo",
        "which batches have gone through MLF",
        "which wines went thru malo",
    ),
    (
        "what oak went into batch 1",
        "what oak did batch 1 get",
        "what kind of oak did I use in batch 1",
        "oak in batch 1?",
        "what did I put in batch 1 for oak",
        "which oak was used in batch 1",
    ),
    (
        "how has batch 1 changed over the years",
        "how has batch 1 changed over time in tastings",
        "how have the tastings of batch 1 changed",
        "how did batch 1 taste over the years",
        "so how has batch 1 changed through the years",
    ),
    ("is the tub free", "is the tub empty?", "is the tub free right now", "tub free?", "is my tub free at the moment"),
    (
        "which vessels are empty",
        "which vessels are free?",
        "what vessels are free",
        "empty vessels",
        "any vessels free at the moment?",
    ),
    (
        "how many times was batch 1 racked",
        "how often was batch 1 racked",
        "how many times did I rack batch 1",
        "number of times batch 1 was racked",
        "how many rackings did batch 1 get",
    ),
    (
        "batches without oak",
        "which batches have no oak",
        "which batches were never oaked",
        "wines that never got oak",
        "which wines did I not oak",
    ),
    (
        "wines that scored over 15",
        "which wines scored above 15",
        "which wines scored more than 15?",
        "wines with a score over 15",
        "list the wines that have scored over 15",
    ),
    (
        "where is batch 3",
        "where's batch 3 now",
        "which vessel is batch 3 in",
        "batch 3 location",
        "in which vessel is batch 3",
    ),
)


@pytest.mark.parametrize("group", [*GROUPS, *MORE], ids=[g[0] for g in (*GROUPS, *MORE)])
def test_one_query_whatever_the_wording(cellar: "Cellar", group: tuple[str, ...]) -> None:
    first = cellar.query(group[0])
    assert first is not None
    others = {wording: cellar.query(wording) for wording in group[1:]}
    assert {w: q for w, q in others.items() if q != first} == {}
