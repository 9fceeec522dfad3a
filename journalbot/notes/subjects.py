"""Which batch an entry is about: by what its clause names, what the note spoke of before, or what the act allows."""

import itertools

from journalbot.journal.vessel_names import is_bare, vessel_key
from journalbot.language.batch_index import GENERIC
from journalbot.language.lexicon import Mention
from journalbot.model import Ask, Batch
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene
from journalbot.notes.kinds.racking import role
from journalbot.vocabulary.english import english
from journalbot.vocabulary.everyday import EVERYDAY

_OVER = ("taste", "drink", "give")  # acts on wine that may be in bottles
_SOURCE_LEADS = {"with", "like", "than", "as", "using", "w", "w/"}
_COMPARED = {"like", "than", "as", "unlike", "versus", "vs"}
_IDLE = {"about", "did", "do", "love", "call", "called", "with", "than", "worth", "wrote", "write", "say", "said"}
_SKIP = {"the", "my", "our", "some", "a", "an", "of", "same", "for", "bit", "more", "last", "that"}


def _plausible(kind: str, batch: Batch) -> bool:
    """Whether an act of this kind can be meant for a batch in this state."""
    if kind == "pitch":
        return batch.pitched is None
    if kind in ("punch_down", "press"):
        return batch.pressed is None and batch.finished is None
    if kind in _OVER:
        return True
    return batch.under_way


_BASES = {"grapes", "juice", "fruit", "kit", "honey", "must", "berries", "apples", "pears", "plums", "peaches"}
_DETERMINERS = {"the", "my", "our", "that", "this"}
_OBJECTS = (  # acts whose object is the wine
    "rack",
    "press",
    "crush",
    "bottle",
    "degas",
    "filter",
    "stir",
    "chill",
    "punch_down",
    "pitch",
    "top_up",
    "drink",
    "give",
    "taste",
    "move",
    "blend",
)
_RECEIVING = {"to", "into", "in", "on", "for"}
_BOTTLES_OF = {"of", "a", "an", "another"}
_RECEIVED = ("addition", "pitch", "oak", "malolactic", "reading", "fermentation", "top_up", "punch_down", "stir")
_SAID_OF = {"off", "into", "to", "with", "is", "was", "at", "has", "from", "'s", "went", "now", ":"}
_NOT_A_WINE = {"color", "colour", "chips", "juice", "skins", "wood", "barrel", "flavor", "flavour", "notes", "taste"}

# Acts that only a batch in one state can take, so that one such batch need not be named.
_DECIDING = ("pitch", "press", "punch_down")


class Subjects:
    """Settles batches for the drafts of one note, in order."""

    def __init__(self, scene: Scene, acts: frozenset[str] = frozenset()) -> None:
        self.scene = scene
        self._acts = acts  # the kinds of all drafts of the note
        self.by_clause: dict[int, tuple[int, ...]] = {}
        self.spoken: list[int] = []
        self._given: int | None = scene.given.get("batch")

    def main(self) -> int | None:
        """The one batch that the note is about, if there is just one."""
        named = (m.value.fits for c in self.scene.clauses for m in self._references(c))
        each = set(self.spoken) or {fits[0] for fits in named if len(fits) == 1}
        return each.pop() if len(each) == 1 else None

    def of(self, draft: Draft) -> tuple[int | None, ...] | Ask | None:
        """The batches that a draft is an entry for; an Ask where that cannot be told; None where the draft must go."""
        if draft.needs == "none":
            return (None,)
        found = self._find(draft)
        if not isinstance(found, Ask) and found:
            self.spoken.extend(found)
            self.by_clause[draft.clause.first] = found
            return found
        if draft.needs == "tied" or draft.needs == "maybe-null":
            return (None,)
        if draft.needs == "maybe":
            return None
        if self._given is not None:
            self.spoken.append(self._given)
            return (self._given,)
        return found if isinstance(found, Ask) else self._ask(draft)

    def _find(self, draft: Draft) -> tuple[int, ...] | Ask:
        if draft.batches:
            return draft.batches
        clause = draft.clause
        if draft.ref is not None:
            return self._narrow(draft.ref, draft.kind)
        refs = self._references(clause)
        if draft.kind == "purchase":
            if self._other_goods(draft):
                return ()
            refs = [r for r in refs if r.value.how != "age"]
            refs = [
                r for r in refs if r.value.how == "number" or "for" in clause.text.words[max(0, r.first - 2) : r.first]
            ]
        each = list(dict.fromkeys(self.spoken))
        housed = any(c.of("vessel") for c in self.scene.sentence(clause)) and not clause.has("wine", "wines", "batch")
        if (
            draft.kind == "addition"
            and len(each) > 1
            and not housed
            and any(m.first >= draft.last for m in clause.of("both"))
        ):
            return tuple(each)
        nameless = "" if clause.first in self.scene.start_clauses or refs else self._nameless(draft)
        if not clause.of("pronouns") and (strange := self._strange(draft) or nameless):
            return self._which(strange)
        for m in clause.of("stranger") if refs else ():
            pairs = [sorted((r, m), key=lambda m: m.first) for r in refs]
            if any(a.last < b.first and self._coordinated([a, b], clause) for a, b in pairs):
                return self._which(ref_text(self.scene, m))  # "both the zin and the cider"
        if refs:
            return self._several(refs, draft)
        both = [m for m in clause.of("both") if not any(v.first == m.last for v in clause.of("vessel"))]
        if both and len(each) > 1 and draft.kind != "purchase":
            return tuple(each[-2:]) if clause.has("both", "two") else tuple(each)
        under_way = self.scene.cellar.under_way()
        if both and not each and clause.has("both") and len(under_way) == 2 and draft.kind != "purchase":
            return tuple(b.number for b in under_way)
        if self.scene.started is not None and clause.first in self.scene.start_clauses:
            apart = clause.sentence != self._start_sentence() and draft.kind not in ("start", "rack")
            apart = apart and any(not is_bare(vessel_key(v.value.name)) for v in clause.of("vessel"))
            return (self._by_vessel(clause, draft) if apart else ()) or (self.scene.started,)
        if draft.kind == "plan" and clause.of("vessel"):
            return self._by_vessel(clause, draft)
        if draft.needs == "tied" and self.scene.started is None and not self._tied(clause):
            return ()
        vessels = self._by_vessel(clause, draft)
        if vessels:
            return vessels
        return self._carried(draft)

    def _start_sentence(self) -> int:
        here = [c for c in self.scene.clauses if c.first in self.scene.start_clauses]
        numbered = [c for c in here if any(m.value.new == self.scene.started for m in c.of("batch"))]
        return (numbered or here)[0].sentence if here else -1

    def _other_goods(self, draft: Draft) -> bool:
        """Something bought in a note that starts a batch, but not what it is made from: no part of that batch."""
        clause = draft.clause
        return (
            self.scene.started is not None
            and not clause.of("batch", "pronouns", "fruit", "variety")
            and not clause.has("it", "kit", "juice", "honey", "grapes")
            and "item" in draft.fields
            and any(c is not clause and c.of("money") for c in self.scene.clauses)
        )

    def _tied(self, clause: Clause) -> bool:
        words = clause.text.words
        paid = {m.last for m in clause.of("money")}  # "paid $34.95 for it" is of the thing bought
        if any(
            words[i] == "for" and words[i + 1 : i + 2] in (["it"], ["this"], ["that"]) and i not in paid
            for i in range(clause.first, clause.last)
        ):
            return True
        goods = _BASES.intersection(clause.words())
        return any(
            any(r.value.how != "age" for r in self._references(c))
            and not c.of("money")
            and (goods or not any(q.value.detail != "weak" for q in c.of("cue")))
            for c in self.scene.sentence(clause)
        ) or any(
            clause.text.words[r.first - 1] in ("for", "the") and r.value.how == "number"
            for r in self._references(clause)
        )

    def _references(self, clause: Clause) -> list[Mention]:
        """References that say what a clause is about, without those it only draws on or compares with."""
        words = clause.text.words
        out = []
        for m in clause.of("batch", "stranger"):
            if m.value.how != "unclear" and (m.kind == "stranger" or self._inert(m, clause)):
                continue
            i = m.first - 1
            while i >= clause.first and (
                words[i] in _SKIP or any(a.first <= i < a.last for a in clause.of("amount", "number"))
            ):
                i -= 1
            lead = words[i] if i >= clause.first else ""
            if lead in _COMPARED or (lead in _SOURCE_LEADS and clause.cues("top_up", "blend")):
                continue
            if (
                clause.cues("top_up")
                and ({"with", "w", "using"} & set(words[clause.first : m.first]) or lead in ("from", "out"))
            ) or (clause.cues("blend") and not clause.has("into")):
                continue
            out.append(m)
        return out

    def _inert(self, m: Mention, clause: Clause) -> bool:
        """A fruit's name that stands for the fruit here: a tasting word, a material, what a wine is started from."""
        if m.value.how == "number":
            return False
        if not m.value.fits:
            return True
        if m.first in self.scene.doses and any(x.first <= m.first and m.last <= x.last for x in clause.of("material")):
            return True
        if clause.text.words[max(0, m.first - 2) : m.first] and {"to", "into", "for", "on"} & set(
            clause.text.words[max(0, m.first - 2) : m.first]
        ):
            return False
        return (
            self.scene.started is not None
            and clause.first in self.scene.start_clauses
            and all(c.value.detail == "weak" for c in clause.cues("rack", "bottle", "top_up", "drink", "taste", "give"))
            and m.value.how == "name"
            and self.scene.started not in m.value.fits
        )

    def _several(self, refs: list[Mention], draft: Draft) -> tuple[int, ...] | Ask:
        clause = draft.clause
        if len(refs) > 1 and not self._coordinated(refs, clause):
            before = [r for r in refs if r.last <= draft.first]
            near = before[-1] if before else refs[0]
            after = [r for r in refs if r.first >= draft.last]
            if (
                after
                and after[0].first - draft.last <= 3
                and clause.text.words[after[0].first - 2 : after[0].first - 1]
                + clause.text.words[after[0].first - 1 : after[0].first]
                and {"for", "in", "into", "on", "to", "of"} & set(clause.text.words[draft.last : after[0].first])
            ):
                near = after[0]
            return self._narrow(near, draft.kind)
        out: list[int] = []
        for ref in refs:
            found = self._narrow(ref, draft.kind)
            if isinstance(found, Ask):
                return found
            out.extend(found)
        return tuple(dict.fromkeys(out))

    def _coordinated(self, refs: list[Mention], clause: Clause) -> bool:
        words = clause.text.words
        return all(
            all(
                w in ("and", "&", ",", "+", "the", "my", "/", "batch", "for", "in", "into", "on")
                for w in words[a.last : b.first]
            )
            for a, b in itertools.pairwise(refs)
        )

    def _narrow(self, ref: Mention, kind: str) -> tuple[int, ...] | Ask:
        """The one batch that a reference means, by what the note spoke of, what is under way and what the act
        allows.
        """
        fits = ref.value.fits
        if ref.value.new is not None:
            return (ref.value.new,) if ref.value.new == self.scene.started else self._unknown(ref)
        if len(fits) == 1:
            return tuple(fits)
        if len(fits) == 0:
            return self._unknown(ref)
        if self._given in fits and self._given is not None:
            return (self._given,)
        batches = [self.scene.cellar.batches[n] for n in fits]
        if self.scene.started in fits:
            return (self.scene.started,) if self.scene.started is not None else ()
        spoken = [n for n in dict.fromkeys(reversed(self.spoken)) if n in fits]
        if len(spoken) == 1:
            return (spoken[0],)
        if kind not in _OVER:
            able = [b.number for b in batches if b.under_way]
            if len(able) > 1:
                able = [b.number for b in batches if b.under_way and _plausible(kind, b)] or able
            if len(able) == 1:
                return (able[0],)
        else:
            stocked = [b.number for b in batches if b.bottles > 0 or b.under_way]
            if kind in ("drink", "give"):
                stocked = [b.number for b in batches if b.bottles > 0]
            if len(stocked) == 1:
                return (stocked[0],)
        return Ask("batch", tuple(self._label(n) for n in fits), ref_text(self.scene, ref))

    def _unknown(self, ref: Mention) -> Ask:
        return self._which(ref_text(self.scene, ref))

    def _which(self, said: str) -> Ask:
        """What to ask where a wine is named that is none of the journal's: one of those under way is likeliest."""
        return Ask("batch", tuple(self._label(b.number) for b in self.scene.cellar.under_way()), said)

    def _by_vessel(self, clause: Clause, draft: Draft) -> tuple[int, ...]:
        """The batch in the vessel that a clause speaks of; not in one that wine is just being racked into."""
        out: list[int] = []
        for v in clause.of("vessel"):
            goes_to = role(v, clause) == "to"
            if (
                goes_to
                and clause.of("pronouns")
                and any(c.first in self.by_clause for c in self.scene.sentence(clause))
            ):
                continue  # "apple 1.014 so tipped it into carboy 2, 1 tsp nutrient": the wine just spoken of
            filled = any(m.value.unit in ("gal", "L") for m in clause.of("amount"))
            if (
                (goes_to and filled and draft.kind == "reading")
                or (goes_to and draft.kind in ("rack", "start", "press", "move"))
                or (goes_to and clause.cues("rack") and any(c.value.detail != "weak" for c in clause.cues("rack")))
            ):
                continue
            if (
                draft.kind == "top_up"
                and clause.text.words[max(0, v.first - 3) : v.first]
                and {"with", "of", "from"} & set(clause.text.words[max(0, v.first - 2) : v.first])
            ):
                continue
            inside = [b.number for b in self.scene.cellar.in_vessel(v.value.name)] or self._called(v)
            if len(inside) == 1:
                out.append(inside[0])
        return tuple(dict.fromkeys(out))

    def _called(self, vessel: Mention) -> list[int]:
        """A vessel called by the wine in it ("the pink jug"), where the journal has no vessel of that name."""
        if self.scene.cellar.find_vessel(vessel.value.name):
            return []
        lexicon = self.scene.names.lexicon
        words = self.scene.text.words[vessel.first : vessel.last]
        terms = [
            m.value[0]
            for m in lexicon.find(words, self.scene.text.tokens[vessel.first : vessel.last])
            if m.kind in ("colour", "fruit", "variety")
        ]
        fits = self.scene.names.batches.having(terms) if terms else set()
        return [n for n in fits if self.scene.cellar.batches[n].under_way]

    def _carried(self, draft: Draft) -> tuple[int, ...] | Ask:
        """The batch spoken of before in this note, or after it in the sentence; a pronoun's; the only one it can be."""
        scene = self.scene
        clause = draft.clause
        i = scene.clauses.index(clause)
        for c in reversed(scene.clauses[:i]):
            if c.first in self.by_clause:
                found = self.by_clause[c.first]
                return found[-1:] if clause.joined_by == "which" else found
            refs = self._references(c)
            if refs and not (c.mood == "planned" and not c.of("reading")):
                return self._several(refs, Draft(draft.kind, c, c.first, c.last))
            if vessels := self._by_vessel(c, Draft("reading", c, c.first, c.last)):
                return vessels
        if scene.started is not None and clause.first in scene.start_clauses:
            return (scene.started,)
        for c in scene.clauses[i + 1 :] if "with" not in draft.fields else ():
            refs = self._references(c)
            own = any(q.value.detail != "weak" for q in c.of("cue"))
            if own and clause.of("pronouns") and draft.kind not in _OVER:
                break  # "pitched it, and gave Ann a bottle of the 2022": it is the wine spoken of before
            if refs and c.sentence == clause.sentence:
                return self._several(refs[:1], Draft(draft.kind, c, c.first, c.last))
            if c.sentence == clause.sentence and (vessels := self._by_vessel(c, Draft(draft.kind, c, c.first, c.last))):
                return vessels
        if self._given is not None:
            return (self._given,)
        if any(self._points(c) for c in scene.sentence(clause)):
            last = scene.cellar.last_spoken
            if last is not None and (draft.kind in _OVER or scene.cellar.batches[last].under_way):
                return (last,)
        return self._only(draft)

    def _points(self, clause: Clause) -> bool:
        """Whether a pronoun in the clause stands for a wine: not "telling me about it", "did it"."""
        words = clause.text.words
        return any(m.first == 0 or words[m.first - 1] not in _IDLE for m in clause.of("pronouns"))

    def _only(self, draft: Draft) -> tuple[int, ...] | Ask:
        cellar = self.scene.cellar
        if draft.kind in ("drink", "give"):
            stocked = [b.number for b in cellar.batches.values() if b.bottles > 0]
            return (stocked[0],) if len(stocked) == 1 else self._ask(draft)
        under_way = cellar.under_way()
        if draft.kind == "taste" and len(cellar.batches) > 1:
            return self._ask(draft)
        if len(under_way) == 1:
            return (under_way[0].number,)
        if draft.kind == "malolactic" and draft.fields.get("stage") == "finished":
            able = [b.number for b in under_way if b.malolactic == "started"]
            if len(able) == 1:
                return (able[0],)
        for kind in _DECIDING:
            able = [b.number for b in under_way if _plausible(kind, b)] if kind in self._acts else []
            if len(able) == 1:
                return (able[0],)
        return self._ask(draft)

    def _strange(self, draft: Draft) -> str:
        """A wine that the journal does not have, named where the act's wine stands (`racked the cider`, `kmeta to the
        mead`).
        """
        clause, words = draft.clause, self.scene.text.words
        if clause.first in self.scene.start_clauses:
            return ""
        acts = {c.last for c in clause.of("cue") if c.value.detail != "weak" and c.value.kind in _OBJECTS}
        counts = clause.of("number")
        for m in clause.of("stranger"):
            if GENERIC.issuperset(m.value.terms) and m.value.terms:
                continue  # "crushed the grapes"
            i = m.first
            while i > clause.first and words[i - 1] in _DETERMINERS:
                i -= 1
            after = words[m.last] if m.last < len(words) else ""
            lead = words[i - 1] if i > clause.first else ""
            if after not in _NOT_A_WINE and (
                (i == clause.first and self._said_of(m.last, clause))
                or (i in acts and (draft.kind != "taste" or i < m.first))
                or (lead in _RECEIVING and draft.kind in _RECEIVED)
                or (draft.kind in ("drink", "give") and (lead in _BOTTLES_OF or any(n.last == i for n in counts)))
            ):
                return ref_text(self.scene, m)
        return ""

    def _said_of(self, i: int, clause: Clause) -> bool:
        """Whether what stands before token `i` is the subject of what follows: a reading, "is", "off its lees"."""
        words = self.scene.text.words
        return (i < len(words) and words[i] in _SAID_OF) or any(r.first in (i, i + 1) for r in clause.of("reading"))

    def _nameless(self, draft: Draft) -> str:
        """A word in the place of a wine's name that nothing explains (`windfall 1.008`, `racked windfall off its
        lees`).
        """
        text, clause = self.scene.text, draft.clause
        acts = [c.last for c in clause.of("cue") if c.value.detail != "weak" and c.value.kind not in ("add", "vessel")]
        for i in (clause.first, *acts):
            at = i
            while i < clause.last and text.words[i] in _DETERMINERS:
                i += 1
            told = text.words[i + 1 : i + 2] in (
                ["gave"],
                ["reads"],
                ["read"],
                ["says"],
                ["said"],
                ["shows"],
                ["showed"],
            )
            named = not told and ((i > at and at != clause.first) or self._said_of(i + 1, clause))
            if i < clause.last and text.tokens[i].kind == "word" and named and self._unexplained(i):
                return text.slice(i, i + 1)
        return ""

    def _unexplained(self, i: int) -> bool:
        word = self.scene.text.words[i]
        known = self.scene.names.knows(word) or word in EVERYDAY or not word.isalpha() or len(word) < 4
        known = known or word in english() or word.removesuffix("s") in english()
        return not known and not any(m.first <= i < m.last for m in self.scene.text.mentions)

    def _ask(self, draft: Draft) -> Ask:
        pool = self.scene.cellar.under_way() if draft.kind not in _OVER else list(self.scene.cellar.batches.values())
        return Ask(
            "batch",
            tuple(self._label(b.number) for b in pool),
            self.scene.text.slice(draft.clause.first, draft.clause.last),
        )

    def _label(self, number: int) -> str:
        b = self.scene.cellar.batches[number]
        what = b.name or ", ".join(b.fruit)
        return f"batch {number}" + (f" ({b.year} {what})" if what else f" ({b.year})" if b.year else "")


def ref_text(scene: Scene, ref: Mention) -> str:
    """A reference as the note has it."""
    return scene.text.slice(ref.first, ref.last)
