"""What is said is found for the catalogues: phrases in the code, word lists, and templates."""

import tomllib
from pathlib import Path

from babel.messages.extract import extract_from_dir

import foldmath

ROOT = Path(foldmath.__file__).parents[1]


def found() -> set[str]:
    """Extract as the command of the developers' page does."""
    mappings = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["tool"]["babel"][
        "mappings"
    ]
    methods = [(mapping["pattern"], mapping["method"]) for mapping in mappings]
    options = {
        mapping["pattern"]: {
            name: value for name, value in mapping.items() if name not in ("pattern", "method")
        }
        for mapping in mappings
    }
    keywords = {"phrase": None, "counted": (1, 2), "_": None, "gettext": None, "ngettext": (1, 2)}
    messages = extract_from_dir(ROOT / "foldmath", methods, options, keywords)
    return {text for _, _, text, _, _ in messages for text in ([text] if isinstance(text, str) else text)}


def test_phrases_word_lists_and_templates_are_extracted():
    texts = found()
    assert "here: {words}" in texts
    assert "the worst panel is about {worst} mm off" in texts
    assert "List" in texts
    assert len(texts) > 150
