"""Whether a line is a question or a note."""

import pytest

from journalbot.questions.recognise import is_question

QUESTIONS = (
    "when did I rack batch 3",
    "What is in demijohn A at the moment?",
    "yeast blackcurrant?",
    "did I ever oak the riesling",
    "did the apple get stuck",
    "is ML done on the malbec",
    "who'd I give zin to",
    "abv of the apple wine",
    "sauv blanc bottles remaining",
    "days from pitch to dry on the riesling",
    "last time I sulfited batch 5?",
    "meta in the malbec, when and how much",
    "the pinot, what yeast was that",
    "old tasting notes that mention petrol",
    "lowest scoring wine",
    "average score for the apple",
    "show me the whites",
    "list all batches",
    "compare batches 1 and 5",
    "remind me what yeast it got",
    "tell me the story of batch 5",
    "how much meta in grams for 30 ppm in 6 gallons",
    "what's 1.088?",
    "anything sitting in carboy 2",
    "and batch 4?",
    "what about the white",
    "when was that",
    "the one before",
    "why",
    "show me the notes",
    "gravity of the malbec on may 10",
    "reds that I racked twice",
    "which wine scored over 7/10",
    "how hot did it get",
    "price of the barrel?",
    "to which wines have I added acid",
    "am I meant to rack anything this week",
)
NOTES = (
    "what a day, racked b3",
    "did the apple, carboy 3 to 4",
    "when I got home it was 1.010",
    "how lovely the malbec smells today",
    "racked batch 3. is it done?",
    "have to rack the zin",
    "was 1.010 on tuesday",
    "is 1.010 now",
    "had a taste, great",
    "remind me to rack the zin in 2 weeks",
    "best racking yet",
    "all 28 bottles labelled",
    "first racking of the malbec",
    "What was left of b6 is bottled: 24 x 0.75",
    "who knew, it finished overnight",
    "list of jobs: rack zin, bottle malbec",
    "temp 68, sg 1.010",
    "can't believe it, the kit is dry",
    "do the zin tomorrow",
    "does anyone read this? racked b2 anyway",
    "where the siphon leaked I lost a pint",
    "Compare notes with Odry: his is at 1.020",
    "total of 28 bottles filled",
    "any more and it would overflow",
    "which is why I racked it",
    "1.022 today, 62F",
    "bottles left over from last year: 12",
    "",
)


@pytest.mark.parametrize("text", QUESTIONS)
def test_questions(text: str) -> None:
    assert is_question(text)


@pytest.mark.parametrize("text", NOTES)
def test_notes(text: str) -> None:
    assert not is_question(text)
