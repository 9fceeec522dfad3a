"""Whether a wine may ferment again in the bottle, as far as its entries tell. They never show that it cannot."""

from dataclasses import dataclass

from journalbot.journal.fold import order_of
from journalbot.model import Entry
from journalbot.vocabulary.care import DRY_SG, SAME_SG, STUCK_DAYS, SULFITES, SWEETENERS
from journalbot.winemaking.alcohol import MICROBIALLY_DRY, alcohol, dryness
from journalbot.winemaking.record import Record, last_day, notes_of, value_of

_DRY_WITHOUT_ORIGINAL = 1.000  # SG: under it a wine of unknown strength is taken for dry; this program's threshold
_STILL_FALLING = 28  # days: the usual two to four weeks of steady readings before bottling; common practice, no source


@dataclass(frozen=True)
class Risk:
    """Why a wine might start again in the bottle, and the notes that say so."""

    reason: str
    notes: tuple[int, ...]


def dryness_of(record: Record, reading: Entry) -> str:
    """How a gravity reads: "dry", "unclear", "sugar left". By dryness(); without an original SG by 0.998 and 1.000."""
    sg, og = value_of(reading), record.original_sg
    if sg is None:
        return "unclear"
    if og is not None and 1.040 <= og <= 1.120 and 0.980 <= sg <= og:
        return dryness(sg, alcohol(og, sg)).state
    return "dry" if sg <= DRY_SG else "unclear" if sg <= _DRY_WITHOUT_ORIGINAL else "sugar left"


def stabilised(record: Record, since: Entry | None = None) -> bool:
    """Whether sorbate and a sulfite are both on record, the sorbate not before `since` (common practice, no source)."""
    start = since.date if since else ""
    sorbate = [e for e in record.additions(("potassium sorbate", "stabiliser")) if e.date >= start]
    return bool(sorbate) and bool(record.additions((*SULFITES, "stabiliser")))


def bottling_risk(record: Record) -> Risk | None:
    """What on record speaks against bottling the wine as it stands: the first of gas still to come, sugar left,
    sweetening, or no reading that shows it dry; None where the entries hold nothing against it."""
    return (_fermenting(record) or _malolactic(record) or _sweetened(record) or _sugar_read(record)
            or _gravity(record) or _never_read(record))


def _fermenting(record: Record) -> Risk | None:
    """Gravity that fell over the last readings, the last of them near the end of the record."""
    if len(record.gravities) < 2:
        return None
    before, last = record.gravities[-2:]
    fall = (value_of(before) or 0) - (value_of(last) or 0)
    near = record.days_since(last.date) <= _STILL_FALLING
    apart = (last_day(last.date) - last_day(before.date)).days
    if near and fall > SAME_SG and apart <= _STILL_FALLING:
        return Risk(f"gravity fell {fall:.3f} between the last two readings", notes_of(before, last))
    return None


def _malolactic(record: Record) -> Risk | None:
    going = record.malolactic
    return Risk("malolactic started and not called finished", notes_of(going)) if going else None


def _sweetened(record: Record) -> Risk | None:
    over = record.settled
    sweet = [e for e in record.additions(SWEETENERS) if over and order_of(e) > order_of(over)]
    if not sweet or stabilised(record, over):
        return None
    reason = f"sweetened with {sweet[-1].get('material')}, and no sorbate with sulfite on record"
    return Risk(reason, notes_of(sweet[-1]))


def _sugar_read(record: Record) -> Risk | None:
    last = next(reversed(record.readings("residual_sugar")), None)
    sugar = value_of(last) if last else None
    if last is None or sugar is None or sugar <= MICROBIALLY_DRY or stabilised(record):
        return None
    return Risk(f"residual sugar {sugar:g} g/L", notes_of(last))


def _gravity(record: Record) -> Risk | None:
    """Sugar left by the last gravity; or one that may be either, and not read the same twice days apart.

    None at 0.998 or less, where the trade calls a steady wine ready to bottle (common practice, no source).
    """
    if not record.gravities or stabilised(record):
        return None
    last = record.gravities[-1]
    if (value_of(last) or 0) <= DRY_SG:
        return None
    state = dryness_of(record, last)
    if state == "sugar left":
        return Risk(f"gravity {value_of(last):.3f} reads as sugar left", notes_of(last))
    same = [e for e in record.gravities[:-1] if abs((value_of(e) or 0) - (value_of(last) or 0)) <= SAME_SG + 1e-9
            and (last_day(last.date) - last_day(e.date)).days >= STUCK_DAYS]
    if state == "unclear" and not same:
        return Risk(f"gravity {value_of(last):.3f} may be dry or not, and was not read the same twice", notes_of(last))
    return None


def _never_read(record: Record) -> Risk | None:
    finished = record.settled is not None
    if record.begun is None or finished or record.gravities or stabilised(record):
        return None
    return Risk("no gravity read since fermentation began, and not called finished", notes_of(record.begun))
