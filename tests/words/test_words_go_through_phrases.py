"""English that people read goes through the catalogues: a phrase in code, ``{% trans %}`` in templates."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from jinja2 import Environment

import foldmath

HOUSE = Path(foldmath.__file__).parent
MODULES = {path.relative_to(HOUSE).as_posix(): path for path in sorted(HOUSE.rglob("*.py"))}
TEMPLATES = {path.relative_to(HOUSE).as_posix(): path for path in sorted(HOUSE.rglob("*.html"))}

PHRASES = {"phrase": 1, "counted": 2}
"""How many arguments of each are words in American English."""

FOR_PROGRAMMERS = {"AssertionError", "KeyError", "NoSuchItem", "OSError", "RuntimeError", "TypeError"}
FOR_PROGRAMMERS |= {"UnicodeError", "UnsupportedOperation", "ValueError"}
"""What these say, nobody reads but who mends the program."""

NO_WORDS = re.compile(
    r"""^(?:
        (?:foldmath|pip|sudo)\ .* | --[\w-]+(?:\ [^:;]*)?       # a command line to type, an option
      | \w+\ =\ .* | \[.* | ".*" | '.*'            # a line of a lesson file, something quoted
      | .*</?[\w:-]+.* | .*[;{}<>=]:?\s*$ | .*;.*-src.* | text/plain;.*   # markup, style sheets, headers
      | \w+\[.*\].*                                # a type
    )$""",
    re.VERBOSE | re.DOTALL,
)
WORDS = re.compile(r"[A-Za-z…{][\w…{}'’/]*[,;:.?!]? +[A-Za-z…{(]")
"""Two words, or a word and a figure, one after the other."""

A_WORD = re.compile(r"[A-Za-z]{3,}")


def literals(tree: ast.AST) -> Iterator[ast.Constant | ast.JoinedStr]:
    """Give the texts of a module that are no documentation, no words of a phrase and no message of a bug."""
    nodes = list(ast.walk(tree))
    passed_over = {id(inner) for node in nodes for part in not_for_people(node) for inner in ast.walk(part)}
    whole = [node for node in nodes if isinstance(node, ast.JoinedStr) and id(node) not in passed_over]
    yield from whole
    passed_over |= {id(inner) for node in whole for inner in node.values}
    for node in nodes:
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in passed_over:
            yield node


def not_for_people(node: ast.AST) -> Iterator[ast.AST]:
    """Give the parts of a node that nobody reads, or that the catalogues know."""
    if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
        yield node
    elif isinstance(node, ast.Call):
        name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
        yield from [node] if name in FOR_PROGRAMMERS else node.args[: PHRASES.get(name, 0)]
    elif isinstance(node, ast.ClassDef) and "Enum" in {getattr(base, "id", "") for base in node.bases}:
        # The names of a choice; what people read for them stands elsewhere.
        yield node
    elif isinstance(node, ast.AnnAssign):
        yield node.annotation


def text_of(node: ast.Constant | ast.JoinedStr) -> str:
    if isinstance(node, ast.Constant):
        return str(node.value)
    return "".join(part.value if isinstance(part, ast.Constant) else "…" for part in node.values)


def plain_english(source: str) -> list[str]:
    """Give the texts of a module that read like English, and are no phrase."""
    texts = map(text_of, literals(ast.parse(source)))
    return [text for text in texts if WORDS.search(text) and A_WORD.search(text) and not NO_WORDS.match(text)]


KEPT = {
    "cli/arguments.py": "the program's name, before its words",
    "errors.py": "how a slip is laid out for programmers",
    "guides/pieces/setting.py": "told to who mends the program",
    "statements/items/count_or_size.py": "names of items, by which they are chosen",
    "statements/items/explain.py": "names of items, by which they are chosen",
    "statements/items/mend.py": "names of items, by which they are chosen",
    "statements/items/which_fold.py": "names of items, by which they are chosen",
    "booklets/fitting.py": "told to who mends the program",
    "cli/terminal/signs.py": "plain letters for signs that a terminal lacks",
    "desk/starting.py": "files that a system starts, and their names",
    "drawing/rendering/files.py": "a font's name",
    "drawing/rendering/fonts.py": "told to who mends the program",
    "drawing/rendering/picture_process.py": "stands for the system's own words",
    "drawing/rendering/svg.py": "classes of a style sheet",
    "fold_format/folded_frames.py": "a remark in a file, for programs' authors",
    "fold_format/refolding/lesson_writing.py": "a lesson file in English, as its language says",
    "desk/marking/classes.py": "what a form sends",
    "desk/practice/changes.py": "what a form sends",
    "lesson/files/wanted.py": "a step, as an example of one",
    "lesson/files/toml_reading.py": "what tomllib says, to be said in plain words",
    "lesson/grammar/suggestions.py": "steps, offered in the language of steps",
    "lesson/kinds.py": "a word of lesson files",
    "pages/editable/inline.py": "a font's name",
    "pages/lettering/embedding.py": "words of a font's table",
    "pages/pdf/binding.py": "a name, and words of a file's structure",
    "pages/tags/kinds.py": "words of a file's structure",
    "pages/tags/marking.py": "an operator of a page",
    "pages/markup/reading.py": "told to who mends the program",
    "paper/measures.py": "names of papers, as lesson files have them",
    "tolerance/assumed/stock_said.py": "names of stocks, as lesson files have them",
    "pages/lettering/signs.py": "names of Unicode",
    "planning/parts/equal_parts.py": "told to who mends the program",
    "statements/explaining/labels.py": "labels of data",
    "statements/ratios.py": "told to who mends the program",
    "values.py": "told to who mends the program",
    "teachers_plan/plan_steps.py": "names of slips, which templates word",
    "tolerance/assumed/stock.py": "names of papers, and where a figure is from",
}
"""Modules with texts that look like English and are none that the catalogues say, each with its reason."""


def test_english_that_people_read_is_a_phrase_but_where_an_exception_is_needed():
    found = {name: plain_english(path.read_text("utf-8")) for name, path in MODULES.items()}
    assert {name: texts for name, texts in found.items() if texts and name not in KEPT} == {}
    assert [name for name in KEPT if not found[name]] == []


@pytest.mark.parametrize(
    "source",
    [
        'raise Unreadable("there is no such step")',
        'raise Unreadable(f"--step {step}: the lesson has steps 1 to {last}")',
        'print(f"wrote {path} for you")',
        'HINTS = {"open": "leave this step out"}',
        'phrase("{why}", why="the sheet is folded")',
        'message = "nothing is folded" if flat else ""',
    ],
)
def test_the_reader_finds_plain_english(source):
    assert plain_english(source)


@pytest.mark.parametrize(
    "source",
    [
        'raise Unreadable(phrase("there is no such step"), "--step 4")',
        'tell(counted("{count} panel there", "{count} panels there", number))',
        '"""What a module says of itself."""',
        'raise ValueError("not an orientation at all")',
        'hint = "steps = [1, 2, 3]"',
        'given: "Callable[[int], str] | None" = None',
        'class Doing(Enum):\n    OPEN = "an edge to the dot"',
    ],
)
def test_the_reader_passes_over_phrases_bugs_names_and_commands(source):
    assert plain_english(source) == []


def test_a_phrase_is_written_out_and_not_joined_from_pieces():
    """The catalogues find words only where they stand whole in the code, their values by name."""
    joined = [
        (name, node.lineno)
        for name, path in MODULES.items()
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)
        for given in node.args[: PHRASES.get(node.func.id, 0)]
        if isinstance(given, ast.JoinedStr | ast.BinOp)
    ]
    assert joined == []


def words_outside_catalogues(source: str) -> list[str]:
    """Give the words of a template that stand in no ``{% trans %}`` and no ``_("…")``."""
    tokens = [token for token in LEXER.lex(source) if token[1] != "whitespace"]
    found, within, code = [], False, ""
    for place, (_, kind, text) in enumerate(tokens):
        if kind == "name" and tokens[place - 1][1] == "block_begin":
            within = text != "endtrans" and (within or text == "trans")
        elif kind == "data" and not within:
            code += text
        elif kind == "string" and [token[2] for token in tokens[place - 2 : place]] != ["_", "("]:
            found += [text[1:-1]] if SPOKEN_IN_CODE.search(text[1:-1]) else []
        code += " " if kind in ("variable_begin", "block_begin") else ""
    return [*found, *(piece.strip() for piece in pieces_of(code) if SPOKEN.search(piece.strip()))]


LEXER = Environment()
SPOKEN = re.compile(r"""^(?!.*="|\s*(?:selected|checked)\s*$).*[A-Za-z]{2}""")
"""Letters, and not an attribute of a tag that stands elsewhere."""

SPOKEN_IN_CODE = re.compile(r"[A-Z][a-z]+ [a-z]+|[a-z]{2,}[,.:?] [a-z]|[a-z]+[.?!]$|(?:[A-Za-z]{2,} ){4,}")
"""A capital letter, a stop, or five words: names of slips and pictures have neither."""


def pieces_of(html: str) -> list[str]:
    """Give the texts of a piece of HTML, and those of its attributes that are read aloud."""
    html = re.sub(r"<(style|script)\b.*?</\1>", "", html, flags=re.DOTALL)
    spoken = re.findall(r'(?:aria-label|title|alt)="([^"]+)"', html)
    return [*re.sub(r"<[^>]*>|&#?\w+;", "\n", html, flags=re.DOTALL).splitlines(), *spoken]


def test_the_words_of_a_template_stand_inside_trans():
    found = {name: words_outside_catalogues(path.read_text("utf-8")) for name, path in TEMPLATES.items()}
    assert {name: words for name, words in found.items() if words} == {}
