"""Words that change how a clause is to be taken: planned, denied, supposed, told by others, put right."""

# Something to do, not done.
PLANNED: tuple[str, ...] = (
    "need to", "needs to", "needs", "have to", "has to", "gotta", "should", "going to", "gonna", "will", "i'll", "ill",
    "we'll", "it'll", "plan to", "plan is to", "planning to", "plan", "remind me", "reminder", "note to self", "todo",
    "to do", "to-do", "must", "want to", "wanna", "intend to", "hope to", "hoping to", "thinking of", "might", "let's",
    "lets", "aim to", "aiming to", "don't forget", "dont forget", "remember to", "ought to", "time to", "mean to",
    "ready to", "would like to", "about to", "supposed to", "next job", "next up", "i'd like to", "shall", "waiting to",
    "wait to", "expect to", "won't", "must remember", "jobs", "not to forget", "must not forget", "mustn't forget",
    "later i", "try to", "to be",
)
# Not done.
DENIED: tuple[str, ...] = (
    "didn't", "didnt", "did not", "don't", "dont", "do not", "doesn't", "doesnt", "does not", "haven't", "havent",
    "have not", "hasn't", "hasnt", "has not", "not", "never", "without", "wasn't", "wasnt", "was not", "isn't", "isnt",
    "is not", "no", "forgot to", "forgot", "meant to", "had meant to", "was going to", "were going to", "instead of",
    "skipped", "couldn't", "couldnt", "could not", "can't", "cant", "cannot", "decided against", "decided not",
    "rather than", "nor", "neither", "hadn't", "hadnt", "avoid", "avoided", "no need", "yet to", "not yet", "weren't",
    "nothing", "none", "aren't", "wouldn't", "won't", "wont", "failed to", "put off", "postponed", "cancelled",
    "ran out", "held off",
)
# A condition: what follows did not happen yet.
SUPPOSED: tuple[str, ...] = (
    "if", "unless", "when it", "once it", "in case", "whether", "until", "till", "would", "as soon as", "once the",
    "once they", "whenever",
)
# Somebody else's figure or advice.
HEARSAY: tuple[str, ...] = (
    "shop says", "recipe says", "recipe calls", "calls for", "says to", "said to", "told me to", "book says",
    "packet says", "instructions", "instructions say", "recommends", "recommended", "suggested", "suggests",
    "advice is", "advised", "according to the book", "the book", "forum", "youtube", "he says", "she says", "they say",
    "supposedly", "reckons", "recipe", "swears by", "suggest", "online says", "internet says", "label says",
    "the sheet says", "wanted me to", "thinks i should", "aiming for",
    "hoping for", "hope for", "should bring", "says i should", "said i should",
    "says i need", "says i ought", "tells me to", "reckons i should", "says you should", "said to add", "wants me to",
    "want it to", "want it at", "wants it", "should be", "should come to", "should get to", "should end", "ideal",
    "bench trial", "bench trials", "bench test", "bench tests", "bench tubes", "trial glasses", "aliquots",
    "wanted to know", "asked when", "asked whether", "asked if", "should have", "would have", "could have",
    "ought to have", "should've", "is telling", "told his wife", "told her husband", "wanted", "target is",
    "target", "my target", "the target", "goal is", "the goal is", "should read",
)
# "1.061, no sorry, 1.051": what stands before is taken back.
TAKEN_BACK: tuple[str, ...] = (
    "no", "sorry", "no sorry", "no wait", "wait", "wait no", "oops", "i mean", "make that", "rather", "scratch that",
    "correction", "no make that", "err", "er", "or rather", "nope", "no it's", "no its", "no it was", "actually",
    "whoops", "no correction", "sorry no", "i meant", "that should be", "no i mean", "wait make that", "oops no",
    "no actually", "uh no", "um no", "i tell a lie", "no hang on", "hang on", "hold on", "no hold on", "no that's",
    "no thats", "let me correct that",
)
STILL: tuple[str, ...] = ("still", "continues", "keeps", "carries on", "keeps on", "slowly")
LEFT: tuple[str, ...] = (
    "left", "remaining", "remain", "remains", "still", "left over", "on hand", "in there", "in hand",
)
FROM: tuple[str, ...] = ("down from", "from", "was", "up from", "dropped from", "before", "yesterday's", "started at")
PRONOUNS: tuple[str, ...] = (
    "it", "its", "it's", "this one", "that one", "same batch", "this batch", "that batch", "same one", "it'll",
    "this wine", "the wine", "the batch", "them", "the same",
)
BOTH: tuple[str, ...] = ("both", "each", "all of them", "both of them", "the two", "both batches", "both wines")
ALL: tuple[str, ...] = ("all", "everything", "all batches", "every batch", "all the wines", "all of it", "the lot")
