"""Cautions: one sentence for when the work calls for it, a longer text on request, whom to ask, and who says so.

The journal measures nothing and never calls anything safe. Labels and data sheets, local law and code, the emergency
service, a doctor or a licensed trade come before any of these. Sources are regulators, standards, extension services
and reviewed papers; what rests on habit says so.
"""

from typing import NamedTuple

HABIT = "common practice, no source"


class Caution(NamedTuple):
    """One caution: `{figure}` in the sentence is worked out from the batch, and the bracket around it falls away where
    it cannot be. A danger is shown whenever it is called for, another not again before `again` days have passed."""

    sentence: str
    longer: str
    defers_to: str
    sources: tuple[str, ...]
    danger: bool = False
    again: int = 1


CAUTIONS: dict[str, Caution] = {
    "emergency": Caution(
        "If anyone is hurt, call the emergency number or a poison centre now; fresh air or plenty of running water "
        "while help comes, and nobody follows a person who has gone down beside a ferment.",
        "Eyes or skin hit by a chemical want water at once and for a long time: half an hour or more for caustic. In "
        "the United States poison control answers at 1-800-222-1222. Nobody should go in after someone overcome by "
        "gas: air the place from outside and wait for rescuers. The journal cannot say what is wrong or how to treat "
        "it.",
        "emergency services, poison centres, doctors",
        ("New Jersey Right to Know, fact sheet on sodium hydroxide",
         "J Forensic Sci 2013, a death in a rescue"), danger=True),
    "sulfite": Caution(
        "Sulfite powder and the gas off it bite the eyes and lungs and can bring on asthma: cover your eyes, let air "
        "through, do not lean over it, and store it dry, shut, labelled and out of children's reach.",
        "Breathing the dust can bring wheezing and short breath; keep dust down, use glasses and moving air, and "
        "close the tub well. Workplaces limit how much of the gas may be in the air, and that law comes first where "
        "anyone is paid to help. Some people with asthma react to sulfite in wine.",
        "the packet and its data sheet; a doctor, for anyone with asthma",
        ("International Chemical Safety Card 1175",
         "NIOSH, sulfur dioxide",
         "Vally and Thompson, Thorax 2001"), again=90),
    "mixing chemicals": Caution(
        "Keep sulfite powder and strong solutions away from acids, and chlorine away from acid, ammonia and sulfite, "
        "for together they give off poisonous gas: one product at a time, rinsed off before the next, in moving air.",
        "A sulfite salt tipped into an acid bath once drove 148 people out of a plant and put 40 before a doctor. "
        "Bleach gives chlorine with acids, vinegar included, and chloramines with ammonia. A measured dose stirred "
        "into wine is another thing: it is thin, and most of it stays dissolved. No recipe for acid rinses is given "
        "here.",
        "product labels, a poison centre, local rules on waste",
        ("CDC, Morbidity and Mortality Weekly Report, sulfur dioxide in Missouri",
         "Columbia University health service, household cleaners",
         "City of Torrance Fire Department"), danger=True),
    "carbon dioxide": Caution(
        "A ferment breathes out carbon dioxide [, some {figure} litres of it from this one]: it cannot be smelt and "
        "pools low, so keep fresh air moving, never sleep beside it, and leave at once if dizzy or short of breath.",
        "Each litre of wine gives off about 49 litres of gas on the way to 12 % alcohol, most of it within days. Too "
        "much of it takes consciousness within minutes, and headache and drowsiness may be the only sign before. Six "
        "people were overcome together where grape must fermented in a closed place, and four died. What the air of a "
        "room holds, the journal cannot tell.",
        "building and fire codes, workplace law, makers of gas alarms",
        ("NIOSH, carbon dioxide",
         "Forensic Sci Int Synergy 2024, deaths from fermenting grapes",
         "volume of gas by molar masses"), danger=True),
    "entering a vat": Caution(
        "Keep your head and body out of any vat, tank or pit that holds must, or held it lately, for the gas in it "
        "fells people within breaths, and whoever follows to help: call for rescue and let air in from outside.",
        "A cellar worker who entered a fermenting tank was overcome, and the one who climbed in after him died. "
        "Another winemaker was found dead with his head in a vat. Work from outside with a long tool, and tell "
        "someone first.",
        "confined-space law and trained rescuers",
        ("J Forensic Sci 2013, doi 10.1111/1556-4029.12058", "Am J Forensic Med Pathol 2013;34:119"), danger=True),
    "lifting": Caution(
        "Big glass is heavy full [: this one some {figure} kg]; move it empty, or with a crate and a second person, "
        "and let a siphon do the lifting.",
        "Five US gallons of wine weigh about 19 kg and the glass some 5 to 7 kg more (the glass from memory). The "
        "lift that suits most people ends near 23 kg, held close, with a good grip and no twist; round wet glass has "
        "none.",
        "a doctor, for a bad back; rules on lifting at work",
        ("NIOSH lifting equation, as OSHA gives it", "weight of wine by volume and density"), again=90),
    "glass": Caution(
        "Glass cracks when heat or cold comes fast, and a neck is no handle: let liquids cool, warm or chill it "
        "slowly, carry it dry and from beneath.",
        "Large glass is the worst for sudden heat. Look it over before use, and do not keep a cracked one. A crate or "
        "a bucket takes the fall that hands cannot.",
        "the maker's limits; medical care for cuts",
        ("Texas State University, laboratory safety manual",
         "Cornell University, laboratory safety manual")),
    "sealed ferment": Caution(
        "Gas is still coming off this: shut tight, it can throw the bung or burst what holds it, so leave an airlock "
        "or a loose cover on.",
        "An airlock lets gas out and no air in; a solid stopper is for wine in which every sign of fermentation has "
        "ended. Malolactic and a warm spell push gas out too (from memory).",
        "the vessel's maker",
        ("USDA, Canning, Freezing, Storing Garden Produce, home winemaking",), danger=True),
    "blocked airlock": Caution(
        "Should a lid or airlock be blocked, keep your face away, lay a cloth over it, ease it off slowly and clean "
        "it; stir a lively ferment gently, it can gush.",
        "Foam, pulp and seeds clog narrow ways out and pressure builds behind them. More head space, or a wide hose "
        "led into water, keeps it from coming back. Sugar or nutrient thrown into a fast ferment makes it boil over.",
        "eye protection is sensible",
        (HABIT,)),
    "bottle pressure": Caution(
        "The journal does not show this wine to be finished and steady, and closed in bottles it may start again and "
        "burst them: keep it under an airlock until it is dry or stabilised and has read the same for weeks.",
        "Sparkling makers add some 24 g/L of sugar and reach 5 to 6 atmospheres, in bottles made for it; ordinary "
        "ones are not. A hydrometer cannot see a few grams of sugar. Bottles that fizz or push their corks are under "
        "pressure: keep people off, cover eyes and hands, chill them upright in a box before touching any, and ease "
        "or empty them one by one.",
        "a wine laboratory, for sugar and live yeast",
        ("Oxford Companion to Wine (2006), second fermentation",
         "Directive 92/83/EEC, Article 8: sparkling from 3 bar",
         "sugar by SG: computed"), danger=True),
    "sorbate": Caution(
        "Sorbate does not end a running ferment, it only keeps yeast from growing in numbers: it wants clear, still, "
        "sulfited wine, and none in which malolactic bacteria may work, or a geranium smell comes that stays.",
        "Lactic bacteria turn sorbic acid into a compound that smells of geranium leaves; sulfur dioxide given along "
        "with it prevents that. Codex allows up to 200 mg/kg in grape wine.",
        "the packet's dose and food law",
        ("Oxford Companion to Wine (2006), geranium", "Codex Alimentarius, GSFA 14.2.3")),
    "cleaners": Caution(
        "With strong cleaners: gloves, eyes covered, the product into the water and not the other way about, never "
        "shut in a bottle, rinsed off well, and kept in the tub it came in.",
        "Caustic burns eyes and skin: flush for at least half an hour and get care. It heats hard when it meets "
        "water, and oxygen cleaners build pressure in a closed vessel (both from memory).",
        "label and data sheet, a poison centre, local rules on drains",
        ("New Jersey Right to Know, fact sheet on sodium hydroxide",), again=30),
    "containers": Caution(
        "Wine is acid and draws metals, glaze and the wrong plastics into itself: keep it in food-grade plastic, "
        "glass, stainless steel or sound oak.",
        "The model Food Code keeps copper and brass from food below pH 6 and names wine, bars galvanised metal for "
        "acid food, and pewter with lead. Trash cans, trash bags and pails of unknown plastic are not made for food.",
        "food-contact marks and local food law",
        ("FDA model Food Code 4-101.14 and 4-101.15",
         "Michigan State University Extension, Preserving Food Safely",
         "USDA, Agriculture Information Bulletin 539"), again=30),
    "wild plants": Caution(
        "Make wine only from plants you can name for certain, from ripe fruit without stems, leaves or bark, and "
        "without crushed stones or kernels; the green parts of elder can make people ill.",
        "Eleven of 25 people fell ill within a quarter of an hour of drinking juice pressed from elder with leaves "
        "and branches on it; all got over it. In American elder, stems and unripe berries held most of what frees "
        "cyanide; the ripe fruit little. Ground apricot kernels free cyanide, and one small kernel is too many for a "
        "toddler.",
        "a botanist or extension office, for the name; a poison centre, if anyone is ill",
        ("CDC, Morbidity and Mortality Weekly Report, elderberry juice in California",
         "Molecules 2021;26:1384",
         "EFSA Journal 2016;14(4):4424"), danger=True),
    "mould": Caution(
        "Sort out mouldy and rotten fruit before crushing; mould on a must is a reason to stop and look hard, and in "
        "doubt not to drink it.",
        "Moulds on apples leave patulin, which the FDA limits in juice; fermentation is reported to destroy it. A "
        "thin white film on stored wine is more often yeast that found air (from memory).",
        "a food laboratory; the journal calls no mouldy wine fit to drink",
        ("FDA, Compliance Policy Guide 510.150", "FDA, Patulin background paper (2001)")),
    "roots": Caution(
        "Roots and other low-acid food can carry germs that make a deadly toxin: follow a tested recipe with acid in "
        "it, and read the pH before anything ferments.",
        "A brew with an old baked potato in it gave eight people botulism, and it was not the only one. The line in "
        "food safety is pH 4.6 (from memory). Blurred sight, slurred speech or weakness is for the emergency number.",
        "extension recipes; emergency care",
        ("CDC, Morbidity and Mortality Weekly Report 2012;61(39):782",
         "Emerging Infectious Diseases 2009;15:69"), danger=True),
    "allergens": Caution(
        "When wine leaves the house, tell people of its sulfite, and of egg, milk, fish or nuts that went into it.",
        "The OIV has sulfite declared from 10 mg/L, and egg and milk where they can be found. A ferment makes some "
        "sulfite by itself, so none added is not none in it (from memory). Such rules bind sellers; for a gift it is "
        "care.",
        "local label law; a doctor, for allergies",
        ("OIV labelling standard 2.3",), again=90),
    "drinking": Caution(
        "Not before driving or machines, not in pregnancy, and ask a doctor about nursing or medicines; keep it from "
        "children.",
        "Home wine often has 11 to 14 % alcohol and more (from memory), and is not measured unless somebody tests it. "
        "Public guidance in Canada reckons about two hours for one drink to leave the body.",
        "doctor, pharmacist, local law on driving and age",
        ("Canadian public information on alcohol, pregnancy and nursing",), again=365),
    "selling": Caution(
        "What may be made and passed on differs by place: home wine is as a rule for one's own household, not for "
        "sale; ask the tax and alcohol authority.",
        "In the United States federal law lets a household make 200 gallons a year untaxed with two adults or more, "
        "100 with one, for its own use and not for sale; state law comes on top (27 CFR 24.75, seen as of 2008). The "
        "United Kingdom left wine for one's own use untaxed if none was sold or exchanged (Excise Notice 163, 2024). "
        "In the European Union each state decides.",
        "the authority, or a lawyer",
        ("27 CFR 24.75 (2008)", "HMRC Excise Notice 163 (2024)", "Directive 92/83/EEC"), again=30),
    "distilling": Caution(
        "Distilling, freezing for strength included, takes a licence in most countries, and the journal helps with "
        "none of it.",
        "Nobody may make spirits at home for personal use under United States federal law (27 CFR 19.51, as of 2024), "
        "and penalties are civil and criminal. Heat, vapour and what comes off first are dangers of their own.",
        "the authority, or a lawyer",
        ("27 CFR 19.51 (2024)", "TTB, on spirits for personal use"), danger=True),
    "heating": Caution(
        "Plug heaters straight into an outlet with shock protection, lay them flat and uncovered, keep plugs off a "
        "wet floor, and read a thermometer often.",
        "Stop using a cord that is hot or damaged, never hide one under a cover, and use tested products. Heat on one "
        "spot may crack glass and overheat yeast (from memory).",
        "the maker's instructions, the electrical code, a licensed electrician",
        ("Electrical Safety Foundation International",), again=30),
    "copper and test chemicals": Caution(
        "Copper is a poison in excess, so use measured trials on small samples or a laboratory, never coins or pipe; "
        "keep test chemicals out of the wine, air the room, and pour tested samples away.",
        "Iowa State's trials for a sulfur smell run from 0.05 to 0.2 ppm copper, at most 0.5, and take the least that "
        "works. How much may stay in wine is a matter of local law.",
        "a wine laboratory",
        ("Iowa State University Extension, Treatment for Removal of H2S",), again=30),
}  # fmt: skip
