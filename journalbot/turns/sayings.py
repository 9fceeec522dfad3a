"""Short lines that are neither note nor question: calls for help, for what is waiting, for the settings; goodbyes.

Each is a set of whole lines, compared in lower case without punctuation; nothing longer is taken for one of them.
"""

HELP = frozenset((
    "help", "help me", "help please", "what can i say", "what can i ask", "what can i type", "what can you do",
    "how does this work", "how do i use this", "how do i start", "what now", "examples", "show me examples",
    "show examples", "?",
))
WAITING = frozenset((
    "what is waiting", "what's waiting", "whats waiting", "what is open", "what's open", "whats open",
    "anything open", "anything waiting", "is anything open", "is anything waiting", "is there anything open",
    "is there anything waiting", "open questions", "show open questions", "what needs an answer",
    "what needs attention", "anything pending", "what is pending", "what's pending", "what do you need to know",
    "what is waiting for me", "what's waiting for me", "what are you waiting for", "next question", "ask me",
    "go on asking",
))
SETTINGS = frozenset((
    "settings", "my settings", "show settings", "show my settings", "what are my settings", "what are the settings",
    "show me the settings", "how are you set", "which units do you use", "what units do you use",
))
TAUGHT = frozenset((
    "what words have i taught you", "what have i taught you", "which words have i taught you",
    "what words do you know", "words i taught you", "show my words", "my words", "words taught",
))
GOODBYE = frozenset((
    "bye", "bye bye", "goodbye", "good bye", "quit", "exit", "good night", "goodnight", "that's all", "thats all",
    "see you", "cheers bye", "i'm done", "im done", "done for today", "that's it for today", "close",
))
LATER = frozenset((
    "later", "not now", "skip", "skip it", "skip that", "ask me later", "i don't know", "i dont know", "don't know",
    "dont know", "dunno", "no idea", "not sure", "i'm not sure", "im not sure", "unsure", "pass", "leave it open",
    "next",
))
LET_GO = frozenset((
    "never mind", "nevermind", "forget it", "forget that", "doesn't matter", "doesnt matter", "drop it",
    "none of them", "none of these", "none", "neither", "leave it", "leave it as it is", "no batch", "ignore it",
    "ignore that",
))
YES = frozenset((
    "yes", "y", "yep", "yeah", "yup", "right", "correct", "that's right", "thats right", "exactly", "ok", "sure",
    "it is", "it was",
))
# "Put it back" after an undo; corrections proper are read in notes.corrections.
REDO = frozenset((
    "redo", "put it back", "put that back", "undo the undo", "undo that undo", "bring it back", "bring that back",
    "no put it back",
))


def plain(line: str) -> str:
    """A line as the sets above hold it: lower case, single spaces, no punctuation but inner apostrophes."""
    low = line.lower().replace("’", "'")
    words = "".join(c if c.isalnum() or c in "'?" else " " for c in low).split()
    if words == ["?"]:
        return "?"
    return " ".join(w.strip("'?") for w in words if w.strip("'?"))
