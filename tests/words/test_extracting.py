"""What is said is found for the catalogues: phrases in the code, word lists, and templates."""

import ast
from collections.abc import Iterator
from pathlib import Path

from pseudo_language import texts_found

import foldmath


def test_phrases_word_lists_standards_and_templates_are_extracted():
    texts = texts_found()
    assert "here: {words}" in texts
    assert "the worst panel is about {worst} off" in texts
    assert "List" in texts
    assert "Divide fractions by fractions." in texts
    assert "National curriculum in England" not in texts
    assert len(texts) > 150


def phrases_of(tree: ast.AST) -> Iterator[str]:
    calls = (node for node in ast.walk(tree) if isinstance(node, ast.Call))
    said = (call.args[0] for call in calls if isinstance(call.func, ast.Name) and call.func.id == "phrase")
    yield from (str(text.value) for text in said if isinstance(text, ast.Constant))


def test_every_phrase_that_the_code_writes_out_is_found_wherever_it_stands():
    """The extractor sees no code inside an f-string, and takes ``counted[0]`` for a call of ``counted``."""
    said = {
        text
        for module in Path(foldmath.__file__).parent.rglob("*.py")
        for text in phrases_of(ast.parse(module.read_text(encoding="utf-8")))
    }
    assert said - set(texts_found()) == set()
