"""The slides as one page for the browser: all of it inside, and a policy that lets nothing in."""

from base64 import b64encode
from hashlib import sha256
from importlib.resources import files

from markupsafe import Markup

from foldmath.drawing.layout import as_float
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.templating import render
from foldmath.slides import marks
from foldmath.slides.slides import slides
from foldmath.worksheets.worksheet import Worksheet


def slides_html(proved: ProvedLesson, sheet: Worksheet) -> str:
    """Give the slides of a lesson as one HTML file that needs no other.

    Args:
        proved: the lesson.
        sheet: its core worksheet.

    Source:
        Content Security Policy Level 3 (W3C): hash sources for inline style and script.
    """
    css, js = _text("slides.css") + marks.line_styles(), _text("slides.js")
    lesson = proved.lesson
    return render(
        "slides/slides.html",
        lesson.language,
        lesson=lesson,
        sheet=sheet,
        slides=slides(proved, sheet),
        sheet_ratio=as_float(lesson.sheet.width / lesson.sheet.height),
        css=Markup(css),
        js=Markup(js),
        policy=_policy(css, js),
        points=marks.points,
        path=marks.path,
        stroke_path=marks.stroke_path,
        edges=marks.edges,
        peeping=marks.peeping,
        star_points=marks.star_points,
        star_at=marks.star_at,
        mm=marks.mm,
    )


def _text(name: str) -> str:
    return files(__package__).joinpath("templates", name).read_text(encoding="utf-8")


def _policy(css: str, js: str) -> str:
    """Allow the page's own style and script by their hashes, and nothing else."""
    return (
        f"default-src 'none'; style-src '{_hashed(css)}'; script-src '{_hashed(js)}'; "
        "base-uri 'none'; form-action 'none'"
    )


def _hashed(text: str) -> str:
    return f"sha256-{b64encode(sha256(text.encode()).digest()).decode()}"
