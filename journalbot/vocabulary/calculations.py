"""What can be worked out, and the words that ask for it. Common speech, no source.

A row of `CALCULATIONS` fits a question that has all its `needs`: a topic of `TOPICS`, a sort of figure (`sg`, with a
role `sg@to`), a batch, or a material of a group; `a|b` is either. Of the rows that fit, the one with the most needs is
taken; words and figures that a row has no use for keep it from fitting. `slots` say what fills the measure's parts, in
order: `to:sg@to|sg` is the gravity to reach, or any gravity not yet used; a `?` marks what may be missing.
"""

from typing import NamedTuple


class Calculation(NamedTuple):
    """What a question needs to be this calculation, what fills it, and which topics' words it may be asked with."""

    measure: str
    needs: tuple[str, ...]
    slots: tuple[str, ...] = ()
    also: tuple[str, ...] = ()
    done: bool = False  # whether it may be asked of what has been


def _row(measure: str, needs: str, slots: str = "", also: str = "", *, done: bool = False) -> Calculation:
    return Calculation(measure, tuple(needs.split()), tuple(slots.split()), tuple(also.split()), done)


_HERE = "volume:volume|capacity? batch?"
CALCULATIONS: tuple[Calculation, ...] = (
    # care
    _row("overdue", "overdue batch", "batch", "due_what should_now"),
    _row("due", "due_what batch", "batch", "should_now"),
    _row("when due", "when should_now act", "=act batch?", "may"),
    _row("when due", "should_now act_now", "=act batch?", "may"),
    _row("one worry", "is_it worry batch", "=worry batch", "acid fermenting"),
    _row("worries", "is_it all_right batch", "batch", "in_bottle"),
    # gravity and sugar
    _row("scales", "sg|brix", "value:sg|brix", "scale in_scale how_much alcohol giving", done=True),
    _row("scales", "brix refractometer", "value:brix", "scale instrument"),
    _row("scales", "batch in_scale", "batch", "scale instrument", done=True),
    _row("potential alcohol", "potential sg|brix", "value:sg|brix", "alcohol giving may scale"),
    _row("potential alcohol", "alcohol may sg|brix", "value:sg|brix",
        "instrument alcohol giving potential scale how_much ending"),
    _row("potential alcohol", "potential batch", "batch", "alcohol giving may"),
    _row("corrected gravity", "sg temperature", "value:sg temperature:temperature",
        "correct instrument scale headspace", done=True),
    _row("corrected gravity", "correct batch", "temperature:temperature? batch", "instrument scale", done=True),
    _row("corrected Brix", "brix temperature refractometer", "value:brix temperature:temperature",
        "correct instrument scale", done=True),
    _row("strength from gravities", "sg@from sg@to", "from:sg@from to:sg", "alcohol ending giving may how_much scale"),
    _row("strength from gravities", "sg sg alcohol", "from:sg to:sg", "ending giving may how_much scale"),
    _row("strength from gravities", "sg alcohol ending", "from:sg", "giving may how_much scale potential"),
    _row("attenuation from gravities", "attenuation sg sg", "from:sg to:sg", "ending"),
    _row("alcohol at the end", "alcohol ending batch", "batch", "may how_much potential giving"),
    _row("alcohol at the end", "ending may batch", "batch", "alcohol how_much giving scale"),
    _row("dryness", "dry_now batch", "batch", "dryness how_much"),
    _row("dryness", "dryness sg", "value:sg alcohol:percent|alcohol?", "alcohol scale"),
    _row("dryness", "sugar_left batch may|is_it", "batch", "dryness how_much sugar losing"),
    _row("sugar of a reading", "sg sugar_left", "value:sg", "scale how_much sugar losing"),
    _row("sugar of a reading", "sg percent|alcohol sugar_left", "value:sg alcohol:percent|alcohol",
        "alcohol scale how_much"),
    # sulfite
    _row("sulfite dose", "#sulfite mg/L|free_so2", f"material:#sulfite from:free_so2@from|mg/L@from? to:free_so2@to|"
        f"mg/L@to|free_so2@at? rise:mg/L|free_so2? {_HERE}", "how_much needed raising so2 free giving"),
    _row("sulfite for molecular", "molecular@for|molecular@to|molecular@at|molecular@by #sulfite",
        f"material:#sulfite molecular:molecular ph:ph? from:free_so2|mg/L? {_HERE}",
        "how_much needed raising so2 free molecular giving"),
    _row("sulfite dose", "#sulfite volume how_much", "material:#sulfite volume:volume", "needed so2 free"),
    _row("sulfite for molecular", "#sulfite ph volume", f"material:#sulfite ph:ph from:free_so2|mg/L? {_HERE}",
        "how_much needed so2 free giving"),
    _row("sulfite needed", "#sulfite batch needed", "batch", "how_much advice so2 free raising giving"),
    _row("sulfite needed", "#sulfite batch how_much", "batch", "so2 free raising"),
    _row("sulfite given", "#sulfite mass|spoon|tablet|rate", f"material:#sulfite amount:mass|spoon|tablet|rate {_HERE}",
        "how_much giving so2 free raising"),
    _row("free SO2 needed", "free|so2 ph", "ph:ph molecular:molecular? alcohol:percent|alcohol? "
        "temperature:temperature?", "how_much needed so2 free molecular giving"),
    _row("free SO2 needed", "free|so2 ph molecular", "ph:ph molecular:molecular alcohol:percent|alcohol? "
        "temperature:temperature?", "how_much needed so2 free molecular giving"),
    _row("free SO2 needed", "free needed batch", "batch", "how_much so2 molecular giving"),
    _row("molecular SO2", "molecular mg/L|free_so2 ph", "value:mg/L|free_so2 ph:ph alcohol:percent|alcohol? "
        "temperature:temperature?", "so2 free giving how_much alcohol", done=True),
    _row("molecular SO2", "molecular batch", "batch ph:ph? value:mg/L|free_so2?", "so2 free how_much giving",
        done=True),
    _row("free SO2 now", "free batch estimate", "batch", "so2 how_much raising giving"),
    # acid
    _row("TA in other units", "acid as_acid ta|g/L", "value:ta|g/L", "acid acids giving so2"),
    _row("TA in other units", "g/L as_acid acids", "value:g/L", "acid acids giving so2"),
    _row("acid dose", "#acid g/L@to|ta@to", f"material:#acid to:ta@to|g/L@to from:ta|g/L? {_HERE}",
        "how_much needed raising acid giving acids"),
    _row("acid dose", "#acid g/L|ta", f"material:#acid rise:g/L|ta {_HERE}",
        "how_much needed raising acid giving acids"),
    _row("acid dose", "#acid percent", f"material:#acid rise:percent {_HERE}", "how_much needed raising acid acids"),
    _row("acid dose", "acid raising g/L|ta how_much", f"from:ta@from|g/L@from? to:ta@to|g/L@to? rise:g/L|ta? {_HERE}",
        "needed giving"),
    _row("acid dose", "#deacidify g/L|ta", f"material:#deacidify from:ta@from|g/L@from? to:ta@to|g/L@to? rise:g/L|ta? "
        f"{_HERE}", "how_much needed lowering acid giving raising"),
    _row("acid dose", "acid lowering g/L|ta how_much", f"from:ta@from|g/L@from? to:ta@to|g/L@to? rise:g/L|ta? "
        f"lower=yes {_HERE}", "needed giving"),
    _row("acid given", "#acid mass|spoon volume|batch", f"material:#acid amount:mass|spoon {_HERE}",
        "how_much giving acid raising acids"),
    _row("pH not promised", "ph #acid lowering|raising|giving|to",
        "with:g/L|mass|spoon? to:ph|bare? volume:volume? batch?",
        "how_much lowering raising acid needed acids giving ending may"),
    _row("pH not promised", "ph lowering|raising how_much", "to:ph|bare? volume:volume? batch?",
        "acid needed giving lowering raising may"),
    _row("acid advice", "too_acid batch", "batch", "acid"),
    _row("TA in other units", "ta acid", "value:ta", "scale in_scale how_much acids"),
    _row("malolactic change", "malolactic malic|g/L", "value:malic|g/L", "acid how_much lowering giving acids ph"),
    _row("malolactic change", "malolactic acid batch", "batch", "how_much lowering giving ph acids"),
    _row("diluted", "water|dilute volume volume ta|g/L|percent", "first:volume second:volume value:ta|g/L|percent",
        "acid how_much giving alcohol ending"),
    # sugar, honey, concentrate, water
    _row("sugar needed", "#sugar sg volume|batch", f"material:#sugar to:sg@to|sg@at|sg@by? from:sg? {_HERE}",
        "how_much needed raising lowering scale giving"),
    _row("sugar needed", "#sugar brix volume|batch", f"material:#sugar at:brix@at? to:brix@to? from:brix? {_HERE}",
        "how_much needed raising lowering scale giving"),
    _row("sugar needed", "#sugar percent|alcohol", f"material:#sugar alcohol:percent|alcohol from:sg|brix? {_HERE}",
        "how_much needed raising lowering alcohol giving potential scale"),
    _row("sugar for alcohol", "#sugar percent@by|alcohol@by volume|batch",
        f"material:#sugar rise:percent|alcohol {_HERE}",
        "how_much needed raising alcohol giving potential"),
    _row("sugar given", "#sugar mass|spoon volume|batch sg|brix", f"material:#sugar amount:mass|spoon from:sg|brix "
        f"{_HERE}", "how_much giving raising scale potential may alcohol"),
    _row("sugar given", "#sugar mass|spoon volume water", "material:#sugar amount:mass|spoon volume:volume",
        "how_much giving scale potential may alcohol"),
    _row("sugar given", "#sugar mass|spoon batch", "material:#sugar amount:mass|spoon batch",
        "how_much giving raising scale potential may alcohol"),
    _row("sweetening", "sweeten sg", f"material:#sugar? from:sg@from? to:sg {_HERE}", "how_much needed sugar scale"),
    _row("sweetening", "sweeten g/L", f"material:#sugar? by:g/L {_HERE}", "how_much needed sugar scale giving"),
    _row("sorbate dose", "sorbate how_much|needed", f"alcohol:percent|alcohol? ph:ph? {_HERE}",
        "how_much needed giving alcohol advice"),
    _row("nitrogen dose", "nutrient yan|mg/L", f"from:yan@from|mg/L@from? to:yan@to|mg/L@to? rise:yan|mg/L? {_HERE}",
        "how_much needed raising giving"),
    _row("nitrogen need", "nutrient brix|sg", "value:brix|sg", "how_much needed giving scale"),
    _row("nitrogen need", "nutrient batch how_much|needed", "batch", "how_much needed giving advice raising"),
    _row("nitrogen given", "nutrient mass|spoon volume|batch", f"amount:mass|spoon {_HERE}",
        "how_much giving raising"),
    _row("usual dose", "#usual volume", "material:#usual volume:volume", "how_much needed giving fining oak"),
    _row("usual dose", "#usual volume|batch how_much", f"material:#usual {_HERE}", "needed giving fining oak"),
    # blends
    _row("blend to add", "three_and_volume blend|to3", "=topped volume:volume",
        "blend how_much acid alcohol scale giving "
        "needed may"),
    _row("blend shares", "sort3 blend|to3", "=shares",
        "blend how_much acid ph alcohol scale giving may free so2 needed"),
    _row("blend of lots", "volume volume lots", "=lots",
        "blend how_much acid ph alcohol scale giving may free so2 ending"),
    _row("blend of batches", "two_batches blend", "=batches", "blend how_much acid ph alcohol scale giving may half "
        "free so2 ending sugar"),
    _row("blend to reach", "two_batches percent|alcohol|ta|ph|sg", "=batches to:percent|alcohol|ta|ph|sg",
        "blend how_much acid ph alcohol scale giving may"),
    # units, volumes and vessels
    _row("conversion", "unit_wanted volume|spoon|mass|tablet", "value:volume|spoon|mass|tablet =unit material:#any?",
        "how_much scale"),
    _row("conversion", "unit_wanted temperature", "value:temperature =unit", "how_much"),
    _row("room for foam", "headspace volume capacity", "volume:volume capacity:capacity",
        "primary how_much how_big may giving fitting needed"),
    _row("room for foam", "headspace volume volume", "volume:volume capacity:volume",
        "primary how_much how_big may giving fitting needed"),
    _row("room for foam", "volume capacity may|is_it|how_big|fermenting", "volume:volume capacity:capacity",
        "primary how_much how_big may giving fitting needed headspace fermenting"),
    _row("primary size", "how_big|headspace primary volume", "volume:volume",
        "how_big needed giving headspace how_much primary"),
    _row("racking loss", "losing racking volume|batch", _HERE, "how_much giving may"),
    _row("top-up needed", "top_up capacity volume|batch", f"capacity:capacity {_HERE}",
        "how_much needed primary racking may giving"),
    _row("top-up needed", "top_up how_much batch", "vessel? batch", "needed primary racking may giving"),
    _row("top-up needed", "top_up volume volume", "volume:volume capacity:volume|capacity", "how_much needed giving"),
    _row("vessels that fit", "which_vessels fitting volume|capacity|batch", _HERE, "may needed giving racking primary"),
    _row("bottles needed", "bottles volume", "size:size|spoon? volume:volume", "how_much filling corks giving needed"),
    _row("bottles needed", "corks volume", "size:size|spoon? volume:volume", "how_much filling giving needed corks"),
    _row("bottles needed", "bottles batch filling how_much", "size:size|spoon? batch", "corks giving"),
    _row("bottles needed", "bottles batch may|needed how_much", "size:size|spoon? batch",
        "how_much filling corks giving needed"),
    _row("bottles needed", "bottles|corks batch needed", "size:size|spoon? batch",
        "how_much filling corks bottles giving"),
    _row("bottles needed", "corks batch filling how_much", "size:size|spoon? batch",
        "how_much filling bottles corks giving needed"),
    _row("gas of a wine", "gas volume percent|alcohol", "volume:volume alcohol:percent|alcohol",
        "how_much gassing alcohol giving"),
    _row("bottle pressure", "pressure g/L|residual_sugar", "sugar:g/L|residual_sugar temperature:temperature?",
        "in_bottle sugar how_much giving may"),
    _row("bottle pressure", "pressure sg sg", "from:sg to:sg temperature:temperature?",
        "in_bottle sugar how_much giving may lowering"),
    _row("bottle pressure", "in_bottle sg may", "value:sg temperature:temperature?", "pressure sugar how_much giving"),
    _row("bottle pressure", "pressure sg", "value:sg temperature:temperature?",
        "in_bottle sugar how_much giving may scale"),
    _row("swelling", "swelling volume temperature temperature", "volume:volume from:temperature to:temperature "
        "alcohol:percent|alcohol?", "how_much giving alcohol"),
)  # fmt: skip
