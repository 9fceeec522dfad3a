"""Help that teaches by example, from the person's own batches where there are any."""

from journalbot.journal.cellar import Cellar
from journalbot.journal.store import Journal
from journalbot.model import Batch
from journalbot.phrases import label

# What each line of help is an example of; {batch}, {other}, {vessel} and {yeast} are filled from the journal.
NOTES = (
    "{batch}: SG 1.010 at 68F",
    "racked {batch} to {vessel}, added 1/4 tsp kmeta",
    "tasted {batch} yesterday: black cherry, a bit tannic, 7/10",
    "need to rack {batch} in 3 weeks",
    "bought 100 corks for $12",
)
FIRST_NOTES = (
    "started batch 1, 6 gal of merlot juice in bucket 1",
    "pitched 5 g K-17 into batch 1, 68F",
)
QUESTIONS = (
    "what yeast did I use for {batch}?",
    "when did I last rack {batch}?",
    "what is in {vessel}?",
    "how many bottles of {other} are left?",
)
PUT_RIGHT = (
    "make that 0.998",
    "no, that was {other}",
    "undo",
)
ALSO = (
    "when I say bubbly I mean {batch}",
    "use metric",
    "what is waiting?",
)


def help_text(journal: Journal) -> str:
    """What can be typed, shown on the person's own batches."""
    cellar = journal.cellar()
    fill = _own(cellar)
    notes = NOTES if cellar.batches else FIRST_NOTES
    parts: list[tuple[str, tuple[str, ...]]] = [("Jot down what you did, in your own words:", notes)]
    if cellar.batches:
        parts += [("Ask about it:", QUESTIONS), ("Put the last note right:", PUT_RIGHT)]
    parts.append(("And:", ALSO if cellar.batches else ALSO[1:]))
    lines = [line for head, examples in parts for line in (head, *(f"  {e.format(**fill)}" for e in examples))]
    return "\n".join(
        (*lines, "“bye” or Ctrl-D leaves. Nothing you type is lost, and whatever was filed can be undone.")
    )


def _own(cellar: Cellar) -> dict[str, str]:
    spoken = cellar.batches.get(cellar.last_spoken or 0)
    batches = sorted(cellar.batches.values(), key=lambda b: (b is spoken, b.under_way, b.number), reverse=True)
    vessels = [v.name for v in cellar.vessels.values()]
    return {
        "batch": _called(batches[0], cellar) if batches else "batch 1",
        "other": _called((batches[1:] or batches)[0], cellar) if batches else "batch 2",
        "vessel": next(iter(batches[0].vessels), "") or (vessels or ["carboy 2"])[-1] if batches else "carboy 2",
    }


def _called(batch: Batch, cellar: Cellar) -> str:
    """The name of a batch where it is its own and short, else its number."""
    name = label(batch) if batch.name else ""
    same = [b for b in cellar.batches.values() if b.name == batch.name]
    return (
        f"the {name}"
        if name and len(name) < 20 and "…" not in name and len(same) == 1 and not name.lower().startswith("the ")
        else f"batch {batch.number}"
    )
