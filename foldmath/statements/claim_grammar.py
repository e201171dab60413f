"""Reading a sentence of arithmetic: takes text, gives a ``Claim``, or says what stands in the way."""

import re
import unicodedata
from functools import cache
from importlib.resources import files
from typing import NoReturn

from lark import Lark, Token, Transformer, UnexpectedCharacters, UnexpectedToken, v_args
from lark.exceptions import VisitError

from foldmath.grammars import compiled
from foldmath.phrases import Phrase, phrase
from foldmath.plane.numbers import ZERO
from foldmath.statements.composing import equation
from foldmath.statements.expressions import (
    Claim,
    Comparison,
    Expression,
    Negative,
    Operation,
    Power,
    Sign,
    value,
)
from foldmath.statements.nearest_sentence import Reading, nearest_sentence
from foldmath.statements.ratios import Ratio, decimal, fraction, mixed_number, whole_number
from foldmath.statements.refusals import SentenceRefused
from foldmath.statements.single_signs import SINGLE_SIGNS

MOST_SIGNS = 300
"""No sentence that a class can read aloud is longer, in letters, figures and signs."""

MOST_DIGITS = 12
"""No number in a sentence has more digits than this, above the bar or below it."""

MOST_NUMBERS = 24
"""No sentence has more numbers than this."""

LARGEST_POWER = 12
"""No exponent is larger: paper is not folded in half more often than this."""

MOST_DEPTH = 12
"""No bracket stands inside more brackets than this."""

EXAMPLE = "4 × 2 = 8"
"""What to try where nothing nearer is found."""

_SIGNS = {sign.name: sign for sign in Sign}
_COMPARISONS = {comparison.value: comparison for comparison in Comparison} | {
    "<=": Comparison.AT_MOST,
    ">=": Comparison.AT_LEAST,
    "!=": Comparison.UNEQUAL,
}
_NUMBERS = ("WHOLE", "FRACTION", "MIXED", "DECIMAL")
_ENDS_WITH_NUMBER = re.compile(rf"[0-9){''.join(SINGLE_SIGNS)}]$")


def with_nearest(
    refusal: SentenceRefused, text: str, read: Reading, example: str = EXAMPLE
) -> SentenceRefused:
    """Give a refusal its hint, if it has none: the nearest text that ``read`` can read, or an example."""
    if refusal.hint:
        return refusal
    return refusal.with_hint(nearest_sentence(text, refusal.column - 1, read) or example)


def parse_comparison(text: str) -> Claim:
    """Read several sides with comparisons between them, as ``parse``.

    Raises:
        SentenceRefused: likewise; or nothing is compared.
    """
    claim = parse(text)
    if claim.comparisons:
        return claim
    side = claim.sides[0]
    hint = EXAMPLE if isinstance(side, Ratio) else str(equation(side, value(side)))
    end = len(text.rstrip())
    raise SentenceRefused(
        end + 1, phrase("the sentence compares nothing: it has no =, < or >"), text.strip(), hint
    )


def parse(text: str) -> Claim:
    """Read one side, or several sides with comparisons between them.

    Raises:
        SentenceRefused: it cannot be read; without a hint where a near sentence may be found.
    """
    _guard(text)
    try:
        claim: Claim = _Reader().transform(_parser().parse(text))
    except UnexpectedCharacters as error:
        _refuse_sign(text, error.pos_in_stream or 0)
    except UnexpectedToken as error:
        _refuse_token(text, error.token)
    except VisitError as error:
        raise error.orig_exc from None
    return claim


@cache
def _parser() -> Lark:
    grammar = files(__package__).joinpath("claim.lark").read_text(encoding="utf-8")
    return compiled("claims", grammar)


def _guard(text: str) -> None:
    """Refuse what is empty or out of all measure before it is parsed."""
    if not text.strip():
        raise SentenceRefused(1, phrase("there is no sentence here"))
    depth = 0
    for index, sign in enumerate(text):
        depth += (sign == "(") - (sign == ")")
        if depth > MOST_DEPTH:
            raise SentenceRefused(
                index + 1,
                phrase("parentheses are nested more than {most} deep", most=MOST_DEPTH),
                text[index:],
                phrase("fewer parentheses"),
            )
    for found in re.finditer(r"[0-9]+", text):
        if len(found[0]) > MOST_DIGITS:
            message = phrase(
                "a number here has at most {most} digits, and this one has {count}",
                most=MOST_DIGITS,
                count=len(found[0]),
            )
            raise SentenceRefused(found.start() + 1, message, found[0], phrase("a smaller number"))
    if len(text) > MOST_SIGNS:
        message = phrase(
            "a sentence has at most {most} characters, and this one has {count}",
            most=MOST_SIGNS,
            count=len(text),
        )
        raise SentenceRefused(MOST_SIGNS + 1, message, text[MOST_SIGNS:], phrase("two shorter sentences"))


def _refuse_sign(text: str, position: int) -> NoReturn:
    """Refuse a sign or a word that no sentence of arithmetic has."""
    word = re.compile(r"[^\W\d]+|[.,]?[0-9]+|.", re.DOTALL).match(text, position)
    words = word[0] if word else text[position]
    raise SentenceRefused(position + 1, phrase("this is not arithmetic I can read"), words)


def _refuse_token(text: str, token: Token) -> NoReturn:
    """Refuse a number, sign or bracket in a place where it cannot stand."""
    position = len(text.rstrip()) if token.type == "$END" else token.start_pos or 0
    before = text[:position].rstrip()
    ends_with_number = bool(_ENDS_WITH_NUMBER.search(before))
    opened = before.count("(") > before.count(")")
    if token.type in _NUMBERS or token.type == "LPAR":
        message = phrase("a sign is missing before this, such as ×")
    elif token.type == "BAR" and ends_with_number:
        message = phrase("a second bar makes it unclear what is divided; use ÷ or parentheses")
    elif ends_with_number and opened:
        raise SentenceRefused(
            before.rindex("(") + 1, phrase("this parenthesis is not closed"), before[before.rindex("(") :]
        )
    elif token.type == "POWER" and ends_with_number:
        message = phrase("a power stands after a whole number or parentheses")
    elif token.type == "RPAR" and ends_with_number:
        message = phrase("this parenthesis was never opened")
    elif token.type == "$END":
        message = phrase("the sentence stops where a number should stand")
    else:
        message = phrase("a number is missing before this")
    raise SentenceRefused(position + 1, message, str(token))


@v_args(inline=True)
class _Reader(Transformer[Token, Claim]):
    """Builds the claim from the parse tree, bottom up, and refuses zero below a bar or after ÷."""

    def __init__(self) -> None:
        super().__init__()
        self.numbers = 0

    def start(self, *parts: Expression | Token) -> Claim:
        sides = tuple(part for part in parts if not isinstance(part, Token))
        return Claim(sides, tuple(_COMPARISONS[part] for part in parts if isinstance(part, Token)))

    def negative(self, _sign: Token, inner: Expression) -> Expression:
        return Negative(inner)

    def operation(self, left: Expression, token: Token, right: Expression) -> Expression:
        sign = _SIGNS[token.type]
        if sign in (Sign.DIVIDE, Sign.BAR) and value(right) == ZERO:
            zero = phrase("{right} is 0, and nothing can be divided by 0", right=right)
            _refuse_zero(token, phrase("nothing can be divided by 0") if isinstance(right, Ratio) else zero)
        bare = [side.numerator for side in (left, right) if isinstance(side, Ratio) and side.whole]
        if sign is Sign.BAR and len(bare) == 2:
            return fraction(*bare)
        return Operation(sign, left, right)

    def power(self, base: Expression, token: Token) -> Expression:
        exponent = int(unicodedata.normalize("NFKC", token.lstrip("^")))
        if exponent > LARGEST_POWER:
            message = phrase("an exponent here is at most {largest}", largest=LARGEST_POWER)
            raise SentenceRefused((token.start_pos or 0) + 1, message, token, phrase("a smaller exponent"))
        if not exponent and value(base) == ZERO:
            message = phrase("0 multiplied by itself no times has no value")
            raise SentenceRefused((token.start_pos or 0) + 1, message, token, phrase("a larger exponent"))
        if isinstance(base, Power):
            message = phrase("a power of a power is not read; multiply the two small numbers")
            raise SentenceRefused((token.start_pos or 0) + 1, message, token, "(1/2)⁶")
        return Power(base, exponent)

    def whole(self, token: Token) -> Expression:
        return self._counted(token, whole_number(int(token)))

    def decimal(self, token: Token) -> Expression:
        return self._counted(token, decimal(str(token)))

    def fraction(self, token: Token) -> Expression:
        above, below = SINGLE_SIGNS.get(token) or map(int, re.split(r"[/⁄]", token))
        if not below:
            _refuse_zero(token, phrase("a denominator counts equal parts, so it cannot be 0"))
        return self._counted(token, fraction(above, below))

    def mixed(self, token: Token) -> Expression:
        if token[-1] in SINGLE_SIGNS:
            wholes, (above, below) = token[:-1], SINGLE_SIGNS[token[-1]]
        else:
            wholes, part = token.split(maxsplit=1)
            above, below = map(int, re.split(r"[/⁄]", part))
        if not below:
            _refuse_zero(token, phrase("a denominator counts equal parts, so it cannot be 0"))
        return self._counted(token, mixed_number(int(wholes), above, below))

    def _counted(self, token: Token, number: Ratio) -> Ratio:
        self.numbers += 1
        if self.numbers > MOST_NUMBERS:
            message = phrase("a sentence has at most {most} numbers", most=MOST_NUMBERS)
            raise SentenceRefused((token.start_pos or 0) + 1, message, token, phrase("two shorter sentences"))
        return number


def _refuse_zero(token: Token, message: Phrase) -> NoReturn:
    raise SentenceRefused(
        (token.start_pos or 0) + 1, message, token, phrase("a number that is not 0, such as 1/2 or 2")
    )
