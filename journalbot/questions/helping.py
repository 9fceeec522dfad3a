"""Where a question was not understood: the words that stopped it, and near questions that would be answered."""

from journalbot.model import Answer
from journalbot.questions.measures import MEASURES
from journalbot.questions.query import Batches, Query, What, describe
from journalbot.questions.reading import Understood
from journalbot.questions.says import join
from journalbot.questions.scene import Scene
from journalbot.questions.whom import label_of

_USUAL = ("yeast", "story", "bottles left")


def not_understood(question: str, read: Understood, scene: Scene) -> Answer:
    """An answer that gives none, and says why."""
    stopped = join([f"“{w}”" for w in read.stopped_by[:5]])
    why = f"I did not understand {stopped} in that question." if stopped else "I did not understand that question."
    near = [
        MEASURES[n]
        for n in (read.near or _USUAL)
        if MEASURES[n].scope == "batch" and "{" not in MEASURES[n].phrase.partition("[")[0]
    ]
    numbers = scene.cellar.last_spoken
    batch = scene.cellar.batches.get(numbers) if numbers is not None else None
    if batch is None:
        return Answer(question, None, False, why)
    whose = Batches((batch.number,), (label_of(batch),))
    tries = [describe(Query((What(m.name),), whose)).rstrip(".") for m in near[:3]]
    return Answer(question, None, False, f"{why} It would answer: {'; '.join(tries)}." if tries else why)
