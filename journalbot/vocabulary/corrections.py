"""Words by which a line puts right what was filed before."""

# The whole line: what was done last is undone.
TAKE_BACK: frozenset[str] = frozenset({
    "undo", "undo that", "undo it", "scratch that", "scratch that last one", "delete that", "delete that last note",
    "delete the last note", "delete last note", "forget that", "never mind", "nevermind", "take that back",
    "strike that", "undo the last one", "undo last", "remove that", "remove the last note", "delete it", "scratch it",
    "forget it", "forget the last one", "delete that last one", "scratch the last one", "scratch that note",
    "delete the last one", "undo the last note", "ignore that", "ignore that last note", "ignore the last note",
    "no scratch that", "oops undo", "oops scratch that", "strike the last note", "forget i said that", "take it back",
    "please delete that last note", "disregard that", "disregard the last note", "scrap that", "scrap the last note",
    "scrap that last note", "bin that last note", "delete my last note", "undo my last note", "cancel that",
})
# Within a line, or at its start: something said before is put right.
MARKERS: tuple[str, ...] = (
    "make that", "make the", "make it",
    "i meant", "i mean", "should be", "should have been", "should've been", "should have said",
    "shd have said", "correction", "no that was", "no , that was", "oh no that was", "no it was", "no , it was",
    "oh no it was", "sorry that was", "sorry , that was", "sorry it was", "sorry i meant", "that was batch",
    "that was the", "that was on", "oops that was", "oops , that was", "oops it was", "that should",
    "that was actually", "it was actually", "wait no that was", "no wait that was", "wait that was", "wait , that was",
    "actually that was", "actually it was", "was actually", "not the", "wrong batch", "misread", "typo",
    "whoops that was", "whoops , that was", "change the", "change that", "that was", "it was batch", "must correct",
    "i must put right", "have to correct",
)
# Of these, those after which the right figure follows, so that any before them is the old one.
FIRM: tuple[str, ...] = (
    "make that", "make it", "should be", "should have been", "should've been", "should have said", "i meant", "i mean",
    "it was", "correct that to",
)
# What makes "it was" such words: a figure was written before.
WRITTEN: frozenset[str] = frozenset({"wrote", "written", "typed", "noted", "logged", "said", "put"})
# Words that make a line a correction only at its beginning, or that of a sentence.
OPENING_WORDS: frozenset[str] = frozenset({
    "no", "oh", "sorry", "correction", "oops", "that", "wait", "it", "actually", "typo", "whoops", "change", "make",
})
SAYING_NO: frozenset[str] = frozenset({"no", "sorry", "oops", "whoops", "correction", "wait", "actually"})
# Before a value: it is the old one.
NEGATED: frozenset[str] = frozenset({"not", "isn't", "wasn't", "wasnt", "isnt", "instead"})
