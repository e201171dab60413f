"""Inline runs in a Word file: words, boxes to write in, and fractions as equations that can be changed."""

from dataclasses import replace
from typing import Any, TypeAlias
from xml.sax.saxutils import escape

from docx.oxml.ns import nsdecls
from docx.oxml.parser import parse_xml
from docx.shared import Pt
from docx.text.paragraph import Paragraph as WordParagraph

from foldmath.pages.markup.blocks import Box, LineBreak, Run, Stack, Text
from foldmath.pages.pdf.clusters import SMALL_FIGURES
from foldmath.pages.pdf.styles import BoxStyle, StyleSheet, points
from foldmath.values import frozen

EQUATION_FONT = "Cambria Math"
"""Equations of Word files are set in this font by every program that writes them."""

NO_BREAK_SPACE = "\u00a0"
SPACE_EM = 0.352
"""The width of a space in Verdana; so many of them make a box as wide as it is wanted."""

BORDER_EM = 1.215
"""A border round letters of Verdana is so many times as high as they are."""

LARGEST_IN_BOX_PT = 22.0
"""Letters that make a box as high as its style says would look too large with an answer in them."""

BLANK = "\u25a1"
"""Stands in a fraction for a box to write in: an equation has none whose size could be set."""

BLANK_PT = 28.0
"""So high a blank leaves a child 8 mm to write in."""

FULL_SIZE = str.maketrans(SMALL_FIGURES, "0123456789")
"""Figures of a power: an equation makes them small by itself."""


@frozen
class Setting:
    """What inline runs are set in: the size of the letters in points, whether answers show, the styles."""

    size: float
    answers: bool
    sheet: StyleSheet

    def shown(self, box: Box) -> str:
        """Give what stands in a box; empty where pupils are to write."""
        return box.answer if self.answers or box.given else ""


@frozen
class Embraced:
    """A fraction between brackets, and the small figures behind them."""

    stack: Stack
    power: str


Part: TypeAlias = "Run | Embraced"


def write_runs(paragraph: WordParagraph, runs: tuple[Run, ...], setting: Setting) -> None:
    """Write inline runs at the end of a paragraph."""
    for run in _embraced(runs):
        match run:
            case LineBreak():
                paragraph.add_run().add_break()
            case Text():
                words = paragraph.add_run(run.text.replace("\n", " ").replace("\t", " "))
                words.bold = run.bold or None
                if run.language:
                    marked = f'<w:lang {nsdecls("w")} w:val="{run.language}"/>'
                    words._r.get_or_add_rPr().append(parse_xml(marked))
            case Box():
                _write_box(paragraph, run, setting)
            case Stack():
                paragraph._p.append(_equation(_fraction(run, setting)))
            case Embraced():
                paragraph._p.append(_equation(_bracketed(run, setting)))


def _embraced(runs: tuple[Run, ...]) -> list[Part]:
    """Have brackets that touch a fraction on both sides embrace it: letters would stand low beside it."""
    parts: list[Part] = list(runs)
    for place in range(1, len(parts) - 1):
        match parts[place - 1 : place + 2]:
            case [Text() as left, Stack() as stack, Text() as right] if left.text.endswith(
                "("
            ) and right.text.startswith(")"):
                rest = right.text[1:].lstrip(SMALL_FIGURES)
                power = right.text[1 : len(right.text) - len(rest)]
                parts[place - 1 : place + 2] = [
                    replace(left, text=left.text[:-1]),
                    Embraced(stack, power),
                    replace(right, text=rest),
                ]
    return parts


def _write_box(paragraph: WordParagraph, box: Box, setting: Setting) -> None:
    style, answer = setting.sheet.boxes[box.style], setting.shown(box)
    size = setting.size if style.rule_only else min(points(style.height_mm) / BORDER_EM, LARGEST_IN_BOX_PT)
    run = paragraph.add_run(_filled(answer, style, size))
    run.font.size = Pt(round(size))
    run.bold = bool(answer) or None
    if style.rule_only:
        run.underline = True
    else:
        border = f'<w:bdr {nsdecls("w")} w:val="single" w:sz="6" w:space="0" w:color="000000"/>'
        run._r.get_or_add_rPr().append(parse_xml(border))


def _filled(answer: str, style: BoxStyle, size: float) -> str:
    """Put an answer in the middle of as many spaces as the box is wide; a figure is about two of them."""
    wide = round(points(style.width_mm) / (size * SPACE_EM))
    free = max(wide - 2 * len(answer), 2)
    return (
        NO_BREAK_SPACE * (free // 2)
        + answer.replace(" ", NO_BREAK_SPACE)
        + NO_BREAK_SPACE * (free - free // 2)
    )


def _equation(inside: str) -> Any:
    return parse_xml(f"<m:oMath {nsdecls('m', 'w')}>{inside}</m:oMath>")


def _bracketed(embraced: Embraced, setting: Setting) -> str:
    """Make brackets as high as their fraction, raised to a power (ECMA-376, part 1, 22.1.2: d and sSup)."""
    inside = f"<m:d><m:e>{_fraction(embraced.stack, setting)}</m:e></m:d>"
    if not embraced.power:
        return inside
    power = _figures(Text(embraced.power.translate(FULL_SIZE)), setting)
    return f"<m:sSup><m:e>{inside}</m:e><m:sup>{power}</m:sup></m:sSup>"


def _fraction(stack: Stack, setting: Setting) -> str:
    """Make a fraction (ECMA-376, part 1, 22.1.2.36)."""
    above, below = (
        "".join(_figures(run, setting) for run in level if isinstance(run, Text | Box))
        for level in (stack.above, stack.below)
    )
    return f"<m:f><m:num>{above}</m:num><m:den>{below}</m:den></m:f>"


def _figures(run: Text | Box, setting: Setting) -> str:
    """Make upright figures of an equation, or a blank; answers are bold."""
    if isinstance(run, Text):
        text, style, size = run.text, "b" if run.bold else "p", setting.size
    elif setting.shown(run):
        text, style, size = setting.shown(run), "b", setting.size
    else:
        text, style, size = BLANK, "p", BLANK_PT
    fonts = f'<w:rFonts w:ascii="{EQUATION_FONT}" w:hAnsi="{EQUATION_FONT}"/>'
    return (
        f'<m:r><m:rPr><m:sty m:val="{style}"/></m:rPr>'
        f'<w:rPr>{fonts}<w:sz w:val="{round(2 * size)}"/></w:rPr>'
        f'<m:t xml:space="preserve">{escape(text)}</m:t></m:r>'
    )
