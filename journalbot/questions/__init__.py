"""Questions in plain words, answered from the journal's entries."""

from datetime import date
from typing import TYPE_CHECKING

from journalbot.model import Answer

if TYPE_CHECKING:
    from journalbot.journal.store import Journal
    from journalbot.language.names import Names
    from journalbot.questions.query import Query

__all__ = ["ask"]


def ask(
    question: str, today: date, journal: "Journal", names: "Names", before: "Query | None" = None
) -> "tuple[Answer, Query | None]":
    """Answer a question on a day. `before` is the last question's Query: a follow-up keeps its parts.

    The Query comes back for the next follow-up; None where the question was not understood.
    """
    from journalbot.questions.answers import answer
    from journalbot.questions.cautioned import cautions_for
    from journalbot.questions.helping import not_understood, unknown_batch
    from journalbot.questions.query import describe
    from journalbot.questions.reading import read_question
    from journalbot.questions.respelling import doubtful_words, respelled
    from journalbot.questions.scene import Scene

    settings, cellar = journal.settings, journal.cellar()
    scene = Scene(journal, cellar, names, settings, today.isoformat())
    read, changed = read_question(question, today, names, cellar, settings, before), dict[str, str]()
    if doubtful := doubtful_words(read, journal, names):
        again, changed = respelled(question, doubtful, names)
        other = read_question(again, today, names, cellar, settings, before) if changed else read
        read, changed = (other, changed) if other.query and not (other.unknown or other.unused) else (read, {})
    if read.query is None:
        return not_understood(question, read, scene), None
    if read.unknown and not read.query.batches.numbers:
        return Answer(question, describe(read.query), False, unknown_batch(read.unknown, scene)), None
    reply = answer(question, read.query, scene, one=read.one, said=read.said)
    if reply.found and (warned := cautions_for(read.query, journal, today)):
        reply = reply._replace(answer="\n".join((reply.answer, *warned)))
    if changed and reply.found:
        mended = ", ".join(f"“{old}” as “{new}”" for old, new in changed.items())
        reply = reply._replace(answer=f"{reply.answer}\n(I read {mended}.)")
    if read.unused and reply.found:
        passed = ", ".join(f"“{w}”" for w in read.unused)
        reply = reply._replace(answer=f"{reply.answer}\n(I passed over {passed}.)")
    if read.unknown:
        reply = reply._replace(answer=f"{reply.answer}\n({unknown_batch(read.unknown, scene)})")
    return reply, read.query
