"""Which batch an entry is about: by what its clause names, what the note spoke of before, or what the act allows."""

from journalbot.journal.vessel_names import is_bare, vessel_key
from journalbot.language.lexicon import Mention
from journalbot.model import Ask, Batch
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene
from journalbot.notes.kinds.racking import role
from journalbot.notes.references import coordinated, points, ref_text, references
from journalbot.notes.strangers import nameless, strange

_OVER = ("taste", "drink", "give")  # acts on wine that may be in bottles
_DECIDING = ("pitch", "press", "punch_down")  # only a batch in one state can take them: one such need not be named
_BASES = {"grapes", "juice", "fruit", "kit", "honey", "must", "berries", "apples", "pears", "plums", "peaches"}


def _plausible(kind: str, batch: Batch) -> bool:
    """Whether an act of this kind can be meant for a batch in this state."""
    if kind == "pitch":
        return batch.pitched is None
    if kind in ("punch_down", "press"):
        return batch.pressed is None and batch.finished is None
    if kind in _OVER:
        return True
    return batch.under_way


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
        named = (m.value.fits for c in self.scene.clauses for m in references(self.scene, c))
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
        refs = references(self.scene, clause)
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
        unnamed = "" if clause.of("pronouns") else strange(self.scene, draft)
        if not unnamed and not refs and not clause.of("pronouns"):
            unnamed = nameless(self.scene, clause)
        if unnamed:
            return self._which(unnamed)
        for m in clause.of("stranger") if refs else ():
            pairs = [sorted((r, m), key=lambda m: m.first) for r in refs]
            if any(a.last < b.first and coordinated([a, b], clause) for a, b in pairs):
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
            any(r.value.how != "age" for r in references(self.scene, c))
            and not c.of("money")
            and (goods or not any(q.value.detail != "weak" for q in c.of("cue")))
            for c in self.scene.sentence(clause)
        ) or any(
            clause.text.words[r.first - 1] in ("for", "the") and r.value.how == "number"
            for r in references(self.scene, clause)
        )

    def _several(self, refs: list[Mention], draft: Draft) -> tuple[int, ...] | Ask:
        clause = draft.clause
        if len(refs) > 1 and not coordinated(refs, clause):
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
            refs = references(self.scene, c)
            if refs and not (c.mood == "planned" and not c.of("reading")):
                return self._several(refs, Draft(draft.kind, c, c.first, c.last))
            if vessels := self._by_vessel(c, Draft("reading", c, c.first, c.last)):
                return vessels
        if scene.started is not None and clause.first in scene.start_clauses:
            return (scene.started,)
        for c in scene.clauses[i + 1 :] if "with" not in draft.fields else ():
            refs = references(self.scene, c)
            own = any(q.value.detail != "weak" for q in c.of("cue"))
            if own and clause.of("pronouns") and draft.kind not in _OVER:
                break  # "pitched it, and gave Ann a bottle of the 2022": it is the wine spoken of before
            if refs and c.sentence == clause.sentence:
                return self._several(refs[:1], Draft(draft.kind, c, c.first, c.last))
            if c.sentence == clause.sentence and (vessels := self._by_vessel(c, Draft(draft.kind, c, c.first, c.last))):
                return vessels
        if self._given is not None:
            return (self._given,)
        if any(points(c) for c in scene.sentence(clause)):
            last = scene.cellar.last_spoken
            if last is not None and (draft.kind in _OVER or scene.cellar.batches[last].under_way):
                return (last,)
        return self._only(draft)

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
