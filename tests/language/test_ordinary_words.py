"""Ordinary words and people's names are nobody's misspelling: none is mended into a word of the trade."""

import datetime

import pytest

from journalbot.language.names import Names
from journalbot.language.text import understand
from journalbot.model import Batch, Settings


def listed(words: str) -> list[str]:
    """The words of a text, each once."""
    return list(dict.fromkeys(words.split()))


# Words of four letters and more of Basic English (C. K. Ogden, 1930), written down from memory.
BASIC = listed("""
come give keep make seem take have send about across after against among before between down from over through under
with forward here near there then when where again ever still tomorrow yesterday north south east west very quite well
almost enough even little much only together account addition adjustment advertisement agreement amount amusement
animal answer apparatus approval argument attack attempt attention attraction authority back balance base behaviour
belief birth blood blow body brass bread breath brother building burn burst business butter canvas care cause chalk
chance change cloth coal colour comfort committee company comparison competition condition connection control cook
copper copy cork cotton cough country cover crack credit crime crush current curve damage danger daughter death debt
decision degree design desire destruction detail development digestion direction discovery discussion disease disgust
distance distribution division doubt drink driving dust earth edge education effect error event example exchange
existence expansion experience expert fact fall family father fear feeling fiction field fight fire flame flight
flower fold food force form friend front fruit glass gold government grain grass grip group growth guide harbour
harmony hate hearing heat help history hole hope hour humour idea impulse increase industry insect instrument
insurance interest invention iron jelly join journey judge jump kick kiss knowledge land language laugh lead learning
leather letter level lift light limit linen liquid list look loss love machine manager mark market mass meal measure
meat meeting memory metal middle milk mind mine minute mist money month morning mother motion mountain move music name
nation need news night noise note number observation offer operation opinion order organization ornament owner page
pain paint paper part paste payment peace person place plant play pleasure point poison polish porter position powder
power price print process produce profit property prose protest pull punishment purpose push quality question rain
range rate reaction reading reason record regret relation religion representative request respect rest reward rhythm
rice river road roll room rule salt sand scale science seat secretary selection self sense servant shade shake shame
shock side sign silk silver sister size slip slope smash smell smile smoke sneeze snow soap society song sort sound
soup space stage start statement steam steel step stitch stone stop story stretch structure substance sugar suggestion
summer support surprise swim system talk taste teaching tendency test theory thing thought thunder time tooth touch
trade transport trick trouble turn twist unit value verse vessel view voice walk wash waste water wave weather week
weight wind wine winter woman wood wool word work wound writing year angle apple arch army baby ball band basin basket
bath bell berry bird blade board boat bone book boot bottle brain brake branch brick bridge brush bucket bulb button
cake camera card carriage cart chain cheese chest chin church circle clock cloud coat collar comb cord curtain cushion
door drain drawer dress drop engine face farm feather finger fish flag floor foot fork fowl frame garden girl glove
goat hair hammer hand head heart hook horn horse hospital house island jewel kettle knee knife knot leaf library line
lock match monkey moon mouth muscle nail neck needle nerve nose office orange oven parcel pencil picture pipe plane
plate plough pocket potato prison pump rail receipt ring rod root sail school scissors screw seed sheep shelf ship
shirt shoe skin skirt snake sock spade sponge spoon spring square stamp star station stem stick stocking stomach store
street tail thread throat thumb ticket town train tray tree trousers umbrella wall watch wheel whip whistle window
wing wire worm able acid angry automatic beautiful black boiling bright broken brown cheap chemical chief clean clear
common complex conscious deep dependent early elastic electric equal fertile first fixed flat free frequent full
general good great grey hanging happy hard healthy high hollow important kind like living long male married material
medical military natural necessary normal open parallel past physical political poor possible present private probable
quick quiet ready regular responsible right round same second separate serious sharp smooth sticky stiff straight
strong sudden sweet tall thick tight tired true violent waiting warm wide wise yellow young awake bent bitter blue
certain cold complete cruel dark dead dear delicate different dirty false feeble female foolish future green last late
left loose loud mixed narrow opposite public rough safe secret short shut simple slow small soft solid special strange
thin white wrong fore plump winds wines pears whine grape hedge
""")

THINGS = BASIC[BASIC.index("account") : BASIC.index("able")]  # those that can stand in the plural

# Given names that have been common in English-speaking countries, written down from memory.
GIVEN = listed("""
james mary robert patricia john jennifer michael linda david elizabeth william barbara richard susan joseph jessica
thomas sarah charles karen christopher lisa daniel nancy matthew betty anthony sandra mark margaret donald ashley
steven kimberly andrew emily paul donna joshua michelle kenneth carol kevin amanda brian melissa george deborah
timothy stephanie ronald rebecca jason sharon edward laura jeffrey cynthia ryan dorothy jacob kathleen gary shirley
nicholas angela eric anna jonathan brenda stephen pamela larry emma justin nicole scott helen brandon samantha
benjamin katherine samuel christine gregory debra alexander rachel patrick carolyn frank janet raymond catherine jack
maria dennis heather jerry diane tyler ruth aaron julie jose olivia adam joyce nathan virginia henry victoria douglas
kelly zachary lauren peter christina kyle joan noah evelyn ethan judith jeremy megan walter andrea keith cheryl roger
hannah terry jacqueline harry martha sean gloria albert teresa austin frances gerald kathryn carl sara harold janice
dylan jean lawrence alice jordan madison jesse julia bryan grace billy judy bruce theresa gabriel beverly logan denise
alan marilyn juan amber elijah danielle randy rose philip brittany howard diana vincent abigail bobby jane johnny lori
shawn tammy nigel trevor gareth angus fiona hamish morag ewan callum rhys sian niamh siobhan oisin pauline maureen
hilda edna mavis doris enid
""")

# What a home winemaker may write that is no word of the tables: invented yeasts, wines and places.
INVENTED = listed("quillback zestral maribou torvane skerrimore bellweather narvik drumlin kestrelle oxbow thistledown")
NAMES = Names()
NAMES.update_batches([Batch(1, started="2025-09-20", colour="red", fruit=("merlot grapes",), name="Night Shift")])
for person in ("Maren", "Baz"):
    NAMES.learn("person", person)


@pytest.mark.parametrize(
    "words", [BASIC, [f"{w}s" for w in THINGS], GIVEN, INVENTED], ids=["basic", "plurals", "names", "invented"]
)
def test_is_as_typed(words: list[str]) -> None:
    changed = {
        word: meant
        for word in words
        for meant in understand(word, NAMES, datetime.date(2025, 10, 4), Settings()).words
        if meant not in (word, word.removesuffix("s"))
    }
    assert changed == {}


def test_the_list_is_long_enough() -> None:
    assert len(set(BASIC)) > 700
