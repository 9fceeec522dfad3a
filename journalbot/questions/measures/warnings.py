"""Cautions told whole, on request: what to do, what is known, whom they give way to and who says so."""

from journalbot.questions.measures.base import Case, Fact, Measure


def _told(case: Case) -> list[Fact]:
    """The cautions asked for, each whole: what to do, what is known, whom it defers to and who says so."""
    from journalbot.vocabulary.cautions import CAUTIONS

    about = case.of["about"]
    keys = _last_shown(case) if about == "the last" else about.split("; ")
    out = []
    for key in keys:
        row = CAUTIONS[key]
        text = f"{_without_figure(row.sentence)} {row.longer}"
        out.append(
            Fact(None, "", key, "", f"{text} What comes before it: {row.defers_to}. Sources: {'; '.join(row.sources)}")
        )
    if not out:
        return [Fact(None, "", None, "", f"Which caution? There is one on {', '.join(CAUTIONS)}", bare=True)]
    return out


def _without_figure(sentence: str) -> str:
    head, _, rest = sentence.partition(" [")
    return f"{head}{rest.partition(']')[2]}" if rest else sentence


def _last_shown(case: Case) -> list[str]:
    rows = list(case.source.sql("SELECT key, day FROM marks WHERE key LIKE 'caution %' ORDER BY day DESC"))
    return [str(key).removeprefix("caution ") for key, day in rows if day == rows[0][1]]


MEASURES: tuple[Measure, ...] = (
    Measure("caution", "the caution on {about}", (), _told, (), sort="calculation", scope="none"),
)
