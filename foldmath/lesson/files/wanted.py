"""What each key of a lesson file wants, in plain words, with an example that works; and how much of it."""

from collections.abc import Mapping

from foldmath.paper.steps import FEWEST_PLEATS, MOST_PLEATS
from foldmath.phrases import Said, phrase
from foldmath.words.languages import languages

FIRST_GRADE, LAST_GRADE = 3, 6
LEVELS = ("guided", "core", "stretch")
MOST_STEPS = 200
MOST_PRODUCTS = 24
MOST_WORDS = 40
MOST_ITEMS = 24
MOST_WITHOUT = 120
LARGEST_SEED = 999_999_999
LONGEST_LINE = 80
LONGEST_NOTE = 600
LONGEST_SENTENCE = 1000
LONGEST_TAG = 35
"""RFC 5646 (4.4.1) counts on 35 characters at most."""
MOST_TRANSLATED = 120
"""Texts in one other language: title, notes, items, words, and the pages of a booklet."""
MOST_OWN_ITEMS = 12
LONGEST_ITEM = 400
"""Characters of a teacher's own words: more of them fill half a column."""
LONGEST_UNIT = 40
LONGEST_WORD = 30
"""Of an item: a column of the page holds no longer one."""
MOST_NAMES = 60
LONGEST_NAME = 40

WANTED: Mapping[tuple[str, ...], tuple[Said, Said]] = {
    ("title",): (
        phrase("the title must be one line of words in quotes, at most 80 characters"),
        'title = "Seed trays"',
    ),
    ("grade",): (
        phrase(
            "the grade must be a whole number from {first} to {last}",
            first=FIRST_GRADE,
            last=LAST_GRADE,
        ),
        "grade = 5",
    ),
    ("paper",): (phrase("the paper must be a name in quotes, or a width and a height"), 'paper = "letter"'),
    ("paper", "width"): (phrase("the width must be a number and its unit in quotes"), 'width = "24 in"'),
    ("paper", "height"): (phrase("the height must be a number and its unit in quotes"), 'height = "32 in"'),
    ("stock",): (phrase("the stock must be a kind of paper in quotes"), 'stock = "copy 20 lb"'),
    ("orientation",): (phrase("the orientation must be landscape or portrait"), 'orientation = "landscape"'),
    ("earlier",): (
        phrase("the earlier lessons must be a list of files in quotes"),
        'earlier = ["seed-trays.toml"]',
    ),
    ("steps",): (
        phrase("the steps must be a list of 1 to {most} sentences in quotes", most=MOST_STEPS),
        'steps = ["fold left edge to right edge"]',
    ),
    ("practice",): (
        phrase(
            "the practice must be a list of at most {most} products in quotes, or rules in braces",
            most=MOST_PRODUCTS,
        ),
        'practice = ["2/3 × 4/5"]',
    ),
    ("practice", "denominators"): (
        phrase(
            "the denominators must be a list of whole numbers from {fewest} to {most}",
            fewest=FEWEST_PLEATS,
            most=MOST_PLEATS,
        ),
        "denominators = [2, 3, 4]",
    ),
    ("practice", "count"): (
        phrase("the count must be a whole number from 1 to {most}", most=MOST_ITEMS),
        "count = 7",
    ),
    ("practice", "seed"): (
        phrase("the seed must be a whole number from 0 to {largest}", largest=LARGEST_SEED),
        "seed = 7",
    ),
    ("practice", "kinds"): (
        phrase("the kinds must be a list of kinds of item in quotes"),
        'kinds = ["missing-factor", "same-size"]',
    ),
    ("practice", "products"): (
        phrase(
            "the products must be a list of at most {most} products in quotes",
            most=MOST_PRODUCTS,
        ),
        'products = ["2/3 × 4/5"]',
    ),
    ("practice", "without"): (
        phrase("the items to be left out must be a list of at most {most} in quotes", most=MOST_WITHOUT),
        'without = ["3/4 × 1/2 = "]',
    ),
    ("practice", "keep"): (
        phrase("the items to be kept must be a table of levels, each with a list"),
        'keep = { core = ["3/4 × 1/2 = "] }',
    ),
    **{
        ("practice", "keep", level): (
            phrase("the items to be kept must be a list of at most {most} in quotes", most=MOST_ITEMS),
            f'{level} = ["3/4 × 1/2 = "]',
        )
        for level in LEVELS
    },
    ("vocabulary",): (
        phrase("the vocabulary must be a list of at most {most} words in quotes", most=MOST_WORDS),
        'vocabulary = ["panel"]',
    ),
    ("notes",): (
        phrase("the notes must be words in quotes, or a list of them"),
        'notes = "Fold once before the lesson."',
    ),
    ("words",): (
        phrase(
            "the words must be a table of at most {most} words, each with its home word in quotes",
            most=MOST_WORDS,
        ),
        'words = { panel = "Feld" }',
    ),
    ("home_language",): (
        phrase("the home language must be its short name in quotes, as browsers know it"),
        'home_language = "uk"',
    ),
    ("booklet",): (phrase("the booklet must be a table with its form and its pages"), "[booklet]"),
    ("items",): (
        phrase(
            "the items must be at most {most} tables, each under its own [[items]] with a text and a sum",
            most=MOST_OWN_ITEMS,
        ),
        "[[items]]",
    ),
    ("items", "text"): (
        phrase(
            "the text of an item must be your own words in quotes, at most {most} characters",
            most=LONGEST_ITEM,
        ),
        'text = "A bed is 3/4 planted, 1/2 of that with beans. How much is beans?"',
    ),
    ("items", "sum"): (
        phrase("the sum behind an item must be in quotes, at most 80 characters"),
        'sum = "1/2 × 3/4"',
    ),
    ("items", "unit"): (
        phrase("the unit of an item must be words in quotes, at most {most} characters", most=LONGEST_UNIT),
        'unit = "of the bed"',
    ),
    ("items", "levels"): (
        phrase("the levels of an item must be a list of levels in quotes"),
        'levels = ["guided", "core", "stretch"]',
    ),
    ("names",): (
        phrase("the names must be a list of at most {most} names in quotes", most=MOST_NAMES),
        'names = ["Ines", "Olu"]',
    ),
    ("translated",): (
        phrase(
            "what is said in other languages must be a table for each, with at most {most} texts in quotes",
            most=MOST_TRANSLATED,
        ),
        "[translated.es]",
    ),
    ("standards",): (phrase("the standards must be ccss, england or none"), 'standards = "none"'),
    ("language",): (
        phrase("the language must be one of {languages}", languages=", ".join(languages())),
        'language = "en-US"',
    ),
}
"""What each key wants, and an example that works."""

WANTED_ITEM = {
    "steps": (phrase("a step must be a sentence in quotes"), "fold left edge to right edge"),
    "practice": (phrase("a product must be written in quotes"), '"2/3 × 4/5"'),
    "products": (phrase("a product must be written in quotes"), '"2/3 × 4/5"'),
    "denominators": (
        phrase(
            "a denominator here must be a whole number from {fewest} to {most}",
            fewest=FEWEST_PLEATS,
            most=MOST_PLEATS,
        ),
        "4",
    ),
    "without": (phrase("an item to be left out must be in quotes"), '"3/4 × 1/2 = "'),
    **dict.fromkeys(
        LEVELS,
        (phrase("an item to be kept must be in quotes"), '"3/4 × 1/2 = "'),
    ),
    "kinds": (phrase("a kind of item must be a name in quotes"), '"missing-factor"'),
    "items": (phrase("an item must be a table with a text and a sum"), "[[items]]"),
    "levels": (phrase("a level must be guided, core or stretch, in quotes"), '"core"'),
    "names": (
        phrase("a name must be in quotes, at most {most} characters", most=LONGEST_NAME),
        '"Ines"',
    ),
    "earlier": (
        phrase("an earlier lesson must be a file in quotes, at most {most} characters", most=LONGEST_LINE),
        '"seed-trays.toml"',
    ),
    "vocabulary": (phrase("a word must be in quotes, at most 80 characters"), '"panel"'),
    "translated": (
        phrase("a text and what it is in this language must be words in quotes, at most 600 characters each"),
        '"Seed trays" = "Bandejas de siembra"',
    ),
    "words": (phrase("a home word must be in quotes, at most 80 characters"), 'panel = "Feld"'),
    "notes": (
        phrase("a note must be words in quotes, at most 600 characters"),
        '"Fold once before the lesson."',
    ),
}
"""What each thing in a list must be, and an example that works."""

NEAR_KEYS = {
    "name": "title",
    "size": "paper",
    "sheet": "paper",
    "thickness": "stock",
    "grammage": "stock",
    "year": "grade",
    "level": "grade",
    "folds": "steps",
    "products": "practice",
    "exercises": "practice",
    "terms": "vocabulary",
    "translations": "translated",
    "translation": "translated",
    "comment": "notes",
    "locale": "language",
    "curriculum": "standards",
    "book": "booklet",
    "parts": "denominators",
    "fractions": "denominators",
    "number": "count",
    "items": "count",
    "problems": "items",
    "questions": "items",
    "own": "items",
    "length": "count",
    "random": "seed",
    "types": "kinds",
    "include": "kinds",
    "question": "text",
    "story": "text",
    "expression": "sum",
    "product": "sum",
    "pupils": "names",
    "students": "names",
    "children": "names",
}
"""Keys that people might choose, and that are spelt unlike the right ones."""
