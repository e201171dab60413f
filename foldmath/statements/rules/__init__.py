"""Wrong-answer rules as values: takes a problem, gives what a pupil who follows a rule writes."""

from foldmath.statements.rules.registry import LIKELIEST_FIRST, RULES, likeliest_rules, named
from foldmath.statements.rules.rule import Act, Rule

__all__ = ["LIKELIEST_FIRST", "RULES", "Act", "Rule", "likeliest_rules", "named"]
