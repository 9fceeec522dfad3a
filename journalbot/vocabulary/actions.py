"""What is done to a wine, and the words for doing it. One row a way of saying it; verbs are given by their base form.

A row is (kind, detail, forms): `detail` is the stage of a fermentation or malolactic, or a part that another word must
complete ("lees" before a stirring counts). `VERBS` are inflected when the lexicon is built, `PHRASES` are taken as
they are.
"""

from typing import NamedTuple


class Cue(NamedTuple):
    """What a word or phrase says was done."""

    kind: str
    detail: str = ""
    form: str = "done"  # "done", "base" (rack), "ing" (racking) or "noun"


# base: (past, past participle) where not regular
IRREGULAR: dict[str, tuple[str, ...]] = {
    "give": ("gave", "given", "giving"), "drink": ("drank", "drunk", "drinking"), "take": ("took", "taken", "taking"),
    "begin": ("began", "begun", "beginning"), "go": ("went", "gone", "going"), "stir": ("stirred", "stirring"),
    "buy": ("bought", "buying"), "pay": ("paid", "payed", "paying"), "stick": ("stuck", "sticking"),
    "bring": ("brought", "bringing"), "throw": ("threw", "thrown", "throwing"), "put": ("put", "putting"),
    "get": ("got", "gotten", "getting"), "top": ("topped", "topping"), "dump": ("dumped", "dumping"),
    "pop": ("popped", "popping"), "chuck": ("chucked", "chucking"), "tip": ("tipped", "tipping"),
    "degas": ("degassed", "degased", "degassing", "degasing"), "de-gas": ("de-gassed", "de-gassing"),
    "lug": ("lugged", "lugging"), "transfer": ("transferred", "transfered", "transferring"), "make": ("made", "making"),
    "fill": ("filled", "filling"), "tread": ("trod", "trodden", "treading"), "destem": ("destemmed", "destemming"),
    "de-stem": ("de-stemmed", "de-stemming"), "chip": ("chipped", "chipping"), "run": ("ran", "running"),
    "split": ("split", "splitting"), "swap": ("swapped", "swapping"), "cost": ("cost", "costing", "costed"),
    "set": ("set", "setting"), "hit": ("hit", "hitting"), "feed": ("fed", "feeding"), "eat": ("ate", "eaten"),
    "sink": ("sank", "sunk", "sinking"), "draw": ("drew", "drawn", "drawing"), "drop": ("dropped", "dropping"),
    "drag": ("dragged", "dragging"), "bleed": ("bled", "bleeding"), "restart": ("restarted", "restarting"),
    "tie": ("tied", "tying"), "lay": ("laid", "laying"), "spend": ("spent", "spending"),
    "knock": ("knocked", "knocking"), "swirl": ("swirled", "swirling"), "syphon": ("syphoned", "syphoning"),
    "wet": ("wetted", "wetting"), "cut": ("cut", "cutting"), "send": ("sent", "sending"),
    "pd": ("pd'd", "pded", "pd'ed"), "decant": ("decanted", "decanting"), "have": ("had", "having"),
    "do": ("did", "done", "doing"), "sell": ("sold", "selling"), "bin": ("binned", "binning"),
    "shift": ("shifted", "shifting"), "wrap": ("wrapped", "wrapping"), "dose": ("dosed", "dosing"),
    "hand": ("handed", "handing"), "drain": ("drained", "draining"), "whisk": ("whisked", "whisking"),
}

VERBS: tuple[tuple[str, str, tuple[str, ...]], ...] = (
    ("rack", "", ("rack", "wrack", "siphon", "syphon", "transfer", "re-rack", "rerack")),
    ("rack", "weak", (
        "run", "decant", "go", "move", "pump", "drain", "put", "divide", "split", "pour", "empty", "get",
    )),
    ("pitch", "", ("pitch", "inoculate", "repitch", "re-pitch", "innoculate", "inocculate")),
    ("pitch", "weak", ("sprinkle", "rehydrate", "dust")),
    ("press", "", ("press", "basket-press", "squeeze")),
    ("crush", "", (
        "crush", "destem", "de-stem", "stomp", "tread", "mill", "mash", "destalk", "squash", "foot-tread", "macerate",
    )),
    ("punch_down", "", ("punch", "plunge", "pump-over")),
    ("punch_down", "down", ("push", "poke", "press")),
    ("degas", "", ("degas", "de-gas", "degass")),
    ("filter", "", ("filter",)),
    ("stir", "lees", ("stir", "rouse", "swirl", "mix")),
    ("chill", "", ("cold-crash", "cold-stabilise", "cold-stabilize", "chill", "coldcrash", "crash")),
    ("top_up", "", ("top",)),
    ("blend", "", ("blend",)),
    ("blend", "weak", ("mix", "marry", "combine")),
    ("bottle", "", ("bottle",)),
    ("taste", "", ("taste", "sample", "retaste", "re-taste")),
    ("taste", "weak", ("try",)),
    ("drink", "", ("drink", "uncork", "pop")),
    ("drink", "weak", (
        "open", "kill", "have", "finish", "share", "crack", "serve", "pour", "polish", "do", "try", "demolish", "empty",
        "sink", "consume",
    )),
    ("give", "", ("give", "gift", "donate")),
    ("give", "weak", ("take", "hand", "send", "go", "swap", "bring", "drop")),
    ("purchase", "", ("buy", "pay", "cost", "order", "spend")),
    ("purchase", "weak", ("get", "grab", "pick", "come")),
    ("move", "", ("move", "carry", "lug", "haul", "roll", "shift", "wheel", "relocate", "drag", "hump")),
    ("move", "weak", ("take", "bring", "put", "set", "go", "stash", "sit")),
    ("end", "", ("dump", "ditch", "chuck", "toss", "bin")),
    ("end", "weak", ("throw", "pour", "tip")),
    ("oak_out", "weak", ("pull", "yank", "remove", "fish", "take", "lift", "draw", "get")),
    ("airlock", "weak", (
        "refill", "clean", "check", "top", "change", "replace", "fill", "rinse", "wash", "swap", "sort", "empty",
    )),
    ("add", "", (
        "add", "dose", "give", "put", "throw", "stir", "hit", "toss", "dump", "feed", "mix", "drop", "tip", "chuck",
        "dissolve", "use", "sprinkle", "pour", "get", "sulfite", "sulphite", "fine", "sweeten", "backsweeten",
        "back-sweeten", "stabilise", "stabilize", "chaptalise", "chaptalize", "adjust", "correct", "acidify",
        "deacidify", "bung", "bump",
    )),
    ("fermentation", "started", ("ferment", "bubble", "fizz", "bloop", "plop", "perk")),
    ("fermentation", "stuck", ("stall",)),
    ("fermentation", "restarted", ("restart", "re-start")),
    ("bleed", "", ("bleed", "saignee")),
    ("harvest", "", ("pick", "harvest", "gather", "forage")),
)

PHRASES: tuple[tuple[str, str, tuple[str, ...]], ...] = (
    ("rack", "", (
        "off the lees", "off its lees", "off the gross lees", "off gross lees", "off the mud", "off its mud",
        "off the sediment", "off the dregs", "splash racked", "to secondary", "into secondary", "into the secondary",
        "to the secondary", "off the trub", "off their lees", "off the heavy lees", "off the fine lees",
        "first racking", "second racking", "third racking",
    )),
    ("pitch", "", (
        "yeast went in", "yeast goes in", "in goes the yeast", "in went the yeast", "yeast in", "yeast is in",
        "yeast was added", "added the yeast", "added yeast", "put the yeast in", "yeast added", "yeast on",
        "threw in the yeast", "threw the yeast in", "yeasted", "pitched the yeast", "started the yeast", "yeast into",
        "woke the yeast",
    )),
    ("press", "", (
        "pressing", "off the skins", "run off the pulp", "ran off the pulp", "strained off the pulp",
        "squeezed out the pulp", "through the press", "squeezed out the skins", "press day",
    )),
    ("crush", "", ("crush day", "through the crusher", "crusher destemmer")),
    ("punch_down", "", (
        "punched down", "punch down", "punch downs", "punchdown", "punchdowns", "punch-down", "punch-downs",
        "punched the cap", "pumped over", "pumpover", "pumpovers", "pump over", "pump overs", "pumpedover",
        "pushed the cap", "pushed down", "pushed it down", "cap down", "stirred the cap", "broke the cap",
        "broke up the cap", "knocked the cap", "wet the cap", "pd", "pds", "cap punched", "submerged the cap",
        "pigeage", "pigeaged", "pushed down the cap", "cap pushed", "stirred down", "mixed the cap",
        "stirred in the cap", "punching down", "pushing the cap", "punched it down",
    )),
    ("degas", "", (
        "gas out", "degassing", "knocked the gas", "whipped the gas", "co2 out", "drove off the gas", "drove the gas",
        "got the gas off", "gas driven off",
    )),
    ("filter", "", (
        "through the filter", "through the plate filter", "through the pads", "through pads", "coarse filtered",
        "filter pads", "through a filter", "filtration",
    )),
    ("filter", "through", ("pads", "pad", "filter", "plate filter")),
    ("stir", "", ("batonnage", "bâtonnage", "lees stirring", "lees stirred", "stirred lees", "battonage")),
    ("chill", "", (
        "cold stabilize", "cold stabilise", "cold stabilizing", "cold stabilising", "cold stabilized",
        "cold stabilised", "cold stabilization", "cold stabilisation", "cold stable", "cold crash", "cold crashed",
        "cold crashing", "the tartrate", "the tartrates", "drop the tartrates", "drop tartrates", "cold stab",
        "for cold stab", "chilling down", "tartrates drop", "tartrates fall",
    )),
    ("top_up", "", (
        "topped up", "topped off", "topped it", "topping up", "topped with", "top up", "top off",
        "filled up to the neck", "top-up", "tu'd", "filled up with", "topup", "topped back up", "filled to the neck",
    )),
    ("stir", "lees", ("gave the lees a stir", "lees a stir", "lees a good stir")),
    ("bottle", "", (
        "corked", "bottling day", "in bottles", "in the bottle", "bottling", "into bottles", "bottling done",
        "bottle day",
    )),
    ("taste", "", (
        "tasting", "tastes", "took a taste", "had a taste", "tasting note", "tasting notes", "a taste", "a sip",
        "last glass", "a sniff and a sip", "quick taste", "tasted", "sip of", "wee taste", "thief sample",
    )),
    ("drink", "", (
        "had a bottle", "a bottle opened", "went thru", "went through", "got through", "polished off", "knocked back",
        "put away", "worked through", "drank up", "bottle of ... gone", "knocked off", "saw off", "cracked open",
        "popped open",
    )),
    ("drink", "weak", ("gone", "went down", "put paid to", "bit the dust")),
    ("give", "", (
        "went home with", "went home w", "gave away", "given away", "went to", "handed over", "took home", "as a gift",
        "as a present", "for his birthday", "for her birthday",
    )),
    ("purchase", "", ("picked up", "came to", "set me back", "on sale", "paid for")),
    ("end", "", (
        "down the drain", "down the sink", "tipped the lot", "poured the lot", "poured the whole", "tipped the whole",
        "dumped the lot", "tipped it all", "poured it all", "poured away", "poured out", "threw away", "threw out",
        "threw it out",
        "threw it away", "thrown out", "thrown away", "tipped out", "tipped away", "on the compost",
        "on the compost heap", "gave up on", "written off", "wrote off", "write off", "got rid of",
    )),
    ("oak_out", "", (
        "off the oak", "oak out", "off oak", "chips out", "cubes out", "spirals out", "staves out", "oak's out",
        "oak is out", "off the chips", "off the cubes", "off the spirals", "off the staves", "no more oak",
        "out of the barrel",
    )),
    ("malolactic", "", (
        "ml", "mlf", "malo", "malolactic", "malolactic fermentation", "ml bugs", "ml culture", "malo culture",
        "malolactic bacteria", "malolactic culture", "mlb", "ml bacteria", "malolactics", "ml bug", "mlf culture",
        "malo bugs", "malo bacteria", "malo-lactic", "lactic bacteria", "malolactic ferment", "ml fermentation",
    )),
    ("malolactic", "finished", (
        "malic's gone", "malic is gone", "malic gone", "no malic", "no malic spot", "no malic left", "malic spot gone",
        "malic spot's gone", "last spot gone", "malic all gone",
    )),
    ("fermentation", "started", (
        "took off", "taken off", "kicked off", "kicking off", "bubbling away", "bubbling", "fizzing", "fizzing away",
        "started fermenting", "began fermenting", "started to ferment", "begun fermenting", "begun to ferment",
        "began to ferment", "has started", "finally started", "started bubbling", "started working", "started up",
        "began", "has begun", "is working", "ferment started", "fermentation started", "fermentation has started",
        "fermentation began", "fermentation under way", "fermentation is under way", "has been fermenting",
        "away and running", "underway", "fermenting", "in full cry", "working away", "ticking over", "ticking",
        "blooping", "plopping", "got going", "is going", "off and running", "up and running", "fermenting well",
        "fermenting nicely", "fermenting away", "signs of fermentation", "signs of life", "started", "going like",
        "going nicely", "going well", "started to bubble", "began to bubble", "started to work", "came to life",
        "active ferment", "rolling ferment", "alive", "it lives", "fermentation underway", "active fermentation",
        "started properly", "started overnight", "ferment under way", "glugging", "glugging away", "burping",
        "airlock moving", "airlock going", "first bubbles", "first bubble", "first signs of life",
    )),
    ("fermentation", "stuck", (
        "stuck", "stalled", "hasn't moved", "hasnt moved", "has not moved", "not moving", "not budged", "hasn't budged",
        "hasnt budged", "stopped dead", "won't budge", "wont budge", "stuck fermentation", "ferment stuck", "has stuck",
        "not moved", "stuck ferment", "refuses to move",
    )),
    ("fermentation", "restarted", (
        "going again", "off again", "working again", "started again", "bubbling again", "fermenting again",
        "back to life", "took off again", "fizzing again", "moving again", "up again", "ticking again", "alive again",
        "restarted", "woken up", "is away again", "away again", "started back up", "running again", "kicked off again",
    )),
    ("fermentation", "finished", (
        "fermented right out", "fermented all the way out", "fermented out", "gone dry", "went dry", "is dry",
        "dry at last", "dry now", "fermented dry",
        "fermentation finished", "fermentation done", "fermentation over", "done fermenting", "finished fermenting",
        "ferment finished", "ferment done", "ferment over", "calling it done", "call it done", "calling it dry",
        "call it dry", "declare it finished", "calling it finished", "done done", "is done", "is finished",
        "fermentation complete", "ferment complete", "fermentation is over", "fermentation is complete",
        "fermentation is finished", "all done", "finished", "bone dry", "stopped fermenting", "fully dry", "to dryness",
        "dry as a bone", "'s dry", "'s done", "'s finished", "primary done", "primary is done", "primary complete",
        "fermenting done", "so dry", "done and dry", "finished out", "finished dry", "has finished", "has gone dry",
        "reached dryness", "dry and still", "hit dry", "dryness", "dry", "done", "complete",
    )),
    ("start", "", (
        "new batch", "new one", "started batch", "started a", "starting batch", "start batch", "next batch", "new wine",
        "started off", "set up", "kicked off batch", "began batch", "batch begun", "making up", "made up", "on the go",
        "this is batch", "call this batch", "call it batch", "gets number", "gets the number", "will be batch",
        "that's batch", "thats batch", "becomes batch", "makes batch", "is batch", "be batch",
    )),
    ("vessel", "", ("holds", "takes", "capacity", "can hold", "will hold", "hold", "hold about")),
    ("add", "", (
        "went in", "goes in", "in went", "in goes", "gets", "got", "in with", "went into", "goes into", "is in",
        "are in", "w/", "k-meta'd", "kmeta'd", "meta'd", "sulfited", "sulphited", "so2'd", "hit it with",
    )),
)

# Forms of one of these as a noun or an adjective are not the act ("a crushed campden tablet", "a press of people").
AIRLOCK_NOUNS: tuple[str, ...] = (
    "airlock", "airlocks", "air lock", "air-lock", "air locks", "bubbler", "bubblers", "fermentation lock",
    "water seal", "air-locks",
)
LEES_NOUNS: tuple[str, ...] = ("lees", "fine lees", "gross lees", "sediment")
CAP_NOUNS: tuple[str, ...] = ("cap", "the cap")
