"""The tables of care are whole: every interval, band and first step in order, and with its source."""

from journalbot.vocabulary.care import BANDS, FIRST_STEPS, INTERVALS


def test_every_row_is_in_order_and_says_whose_it_is() -> None:
    assert all(0 <= row.low <= row.high and row.source for row in INTERVALS.values())
    assert all(low < high and source for low, high, source in BANDS.values())
    assert all(step and source for step, source in FIRST_STEPS.values())
