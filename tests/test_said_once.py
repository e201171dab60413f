"""What is said stays a value until it is shown: nothing that was said is cut up or read again."""

import ast
import re

import pytest
from test_house import HOUSE, MODULES, faults, imports, room, tree

TEMPLATES = sorted(HOUSE.rglob("*.html"))

READERS = {
    "parse": {"statements.products", "statements.sums", "marking.reading.cells"},
    "read_claim": set[str](),
    "check_claim": {"cli.doors.trace_and_check", "desk.asking.pages"},
    "parse_sum": {"lesson.own_items"},
    "parse_product": {"planning.wanted", "lesson.reading", "lesson.booklet.records"},
}
"""Who reads sentences: only where people's own words come in, from a file, a list or the command line."""

READING_SIGNS = {
    "cli.terminal.signs",
    "marking.reading.cells",
    "pages.templating",
    "paper.lengths",
    "paper.sizes",
    "statements.claim_grammar",
    "statements.items.story",
    "statements.nearest_sentence",
    "statements.products",
    "tolerance.accuracy_in_words",
}
"""Who looks for signs in a text, beside the room that reads lessons: readers of what people wrote, of a data
file and of names of files, and two writers who put one sign for another.
"""

CUTS = re.compile(r"\.(r?split|r?partition|startswith|endswith|removeprefix|removesuffix|r?index|r?find)\(")
SIGNS = set("=×÷+−□○<>≤≥≠/")
METHODS = {"split", "rsplit", "partition", "rpartition", "removeprefix", "removesuffix"}
METHODS |= {"startswith", "endswith", "replace", "index", "find", "count"}


def test_no_template_cuts_or_searches_what_it_is_given():
    assert faults(lambda path: CUTS.findall(path.read_text("utf-8")), TEMPLATES) == {}


def test_no_template_writes_a_sentence_of_figures_as_text_to_be_read_again():
    """Such as ``first ~ " × " ~ second | stacked``."""

    def joined(path):
        texts = re.findall(r'~ *"([^"]*)" *~', path.read_text("utf-8"))
        return (text for text in texts if set(text) & SIGNS)

    assert faults(joined, TEMPLATES) == {}


def test_how_long_a_field_may_be_is_said_by_what_reads_it():
    figures = re.compile(r"max-?[lL]ength\W+\d")
    scripts = sorted(HOUSE.rglob("static/*.js"))
    assert faults(lambda path: figures.findall(path.read_text("utf-8")), [*TEMPLATES, *scripts]) == {}


@pytest.mark.parametrize("reader", READERS)
def test_sentences_are_read_only_where_people_write_them(reader):
    defined = next(
        name
        for name in MODULES
        if any(isinstance(node, ast.FunctionDef) and node.name == reader for node in tree(name).body)
    )
    found = {name for name in MODULES if f"foldmath.{defined}.{reader}" in imports(name)}
    assert found == READERS[reader]


def test_no_module_looks_for_signs_in_a_text():
    """It asks the sentence, which is a value: its sides, its signs, its numbers."""

    def looked_for(name):
        return (node.lineno for node in ast.walk(tree(name)) if looks_for_signs(node))

    others = [name for name in MODULES if room(name) != "lesson" and name not in READING_SIGNS]
    assert faults(looked_for, others) == {}


def test_no_phrase_is_made_within_a_formatted_text():
    """Python 3.11 gives such a text as one piece: what is in it is not found to be translated."""

    def within(name):
        texts = (node for node in ast.walk(tree(name)) if isinstance(node, ast.JoinedStr))
        calls = (node for text in texts for node in ast.walk(text) if isinstance(node, ast.Call))
        return (call.lineno for call in calls if getattr(call.func, "id", "") in ("phrase", "counted"))

    assert faults(within, MODULES) == {}


def looks_for_signs(node: ast.AST) -> bool:
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr in METHODS:
        return any(map(has_signs, node.args))
    if isinstance(node, ast.Compare) and any(isinstance(sign, ast.In | ast.NotIn) for sign in node.ops):
        return has_signs(node.left)
    return False


def has_signs(node: ast.AST) -> bool:
    return isinstance(node, ast.Constant) and isinstance(node.value, str) and bool(set(node.value) & SIGNS)
