"""The line with which a talk begins: what the journal holds, and what waits."""

from journalbot.assistant import Assistant


def greeting(assistant: Assistant) -> str:
    """One short line, two where something waits for an answer."""
    notes = assistant.journal.count_notes()
    if not notes:
        return "An empty journal. Type what you did in your own words, or help for examples. Ctrl-D leaves."
    cellar = assistant.journal.cellar()
    under_way = len(cellar.under_way())
    held = f"{_counted(notes, 'note')}, {_counted(len(cellar.batches), 'batch')}, {under_way} under way"
    lines = [f"{held}. “help” shows what to say."]
    waiting = len(assistant.journal.open_asks())
    if waiting:
        lines.append(
            f"{_counted(waiting, 'note')} {'waits' if waiting == 1 else 'wait'} for an answer: say “what is waiting?”"
        )
    return "\n".join(lines)


def _counted(count: int, what: str) -> str:
    return f"{count:,} {what if count == 1 else what + ('es' if what.endswith('ch') else 's')}"
