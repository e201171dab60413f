"""A wrong-answer rule in words: what it tells a teacher about a pupil's thinking, and what to try next."""

from foldmath.statements.rules import Rule
from foldmath.words.authored import table
from foldmath.words.languages import DEFAULT

RULES = "rules.toml"


def what_it_tells(rule: Rule, language: str = DEFAULT) -> str:
    """Give the sentence that tells a teacher what an answer by this rule says about a pupil's thinking."""
    return _words(rule, language)["tells"]


def what_to_try(rule: Rule, language: str = DEFAULT) -> str:
    """Give the sentence that tells a teacher what to try next with a pupil who follows this rule."""
    return _words(rule, language)["try"]


def what_went_wrong(rule: Rule, language: str = DEFAULT) -> str:
    """Give what a pupil may say of such an answer; what it tells where a language has no words for pupils."""
    words = _words(rule, language)
    return words.get("wrong", words["tells"])


def short_name(rule: Rule, language: str = DEFAULT) -> str:
    """Give one word for a rule, for a narrow column; the rule's code where a language has none."""
    return _words(rule, language).get("short", rule.code)


def _words(rule: Rule, language: str) -> dict[str, str]:
    words: dict[str, str] = table(language, RULES)[rule.name]
    return words
