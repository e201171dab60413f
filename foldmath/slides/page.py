"""The slides as one page for the browser: all of it inside, and a policy that lets nothing in."""

from base64 import b64encode
from hashlib import sha256
from importlib.resources import files

from markupsafe import Markup

from foldmath.lesson.proving import ProvedLesson
from foldmath.measured import as_float
from foldmath.pages.templating import render
from foldmath.slides.minutes import slide_minutes
from foldmath.slides.motion import marks
from foldmath.slides.slides import slides
from foldmath.worksheets.worksheet import Worksheet

SCRIPTS = ("motion", "gathering", "places", "memory", "timer", "drawing", "notes", "keys", "start")
"""The parts of the page's script, in the order in which they are joined; the first two know of paper only."""


def slides_html(proved: ProvedLesson, sheet: Worksheet) -> str:
    """Give the slides of a lesson as one HTML file that needs no other.

    Args:
        proved: the lesson.
        sheet: its core worksheet.

    Source:
        Content Security Policy Level 3 (W3C): hash sources for inline style and script.
    """
    css, js = _text("templates", "slides.css") + marks.line_styles(), _script()
    lesson, shown = proved.lesson, slides(proved, sheet)
    return render(
        "slides/slides.html",
        lesson.language,
        lesson=lesson,
        sheet=sheet,
        slides=shown,
        slide_minutes=[f"{minutes:g}" for minutes in slide_minutes(shown)],
        sheet_ratio=as_float(lesson.sheet.width / lesson.sheet.height),
        css=Markup(css),
        js=Markup(js),
        policy=_policy(css, js),
        points=marks.points,
        path=marks.path,
        stroke_path=marks.stroke_path,
        loops=marks.loops,
        peeping=marks.peeping,
        peep_mm=marks.PEEP_MM,
        corners_of_moments=marks.corners_of_moments,
        star_points=marks.star_points,
        star_at=marks.star_at,
        mm=marks.mm,
    )


def _script() -> str:
    """Join the script's parts into one, since the policy lets in no other files."""
    return "\n".join(['"use strict";', *(_text("scripts", f"{name}.js") for name in SCRIPTS)])


def _text(folder: str, name: str) -> str:
    return files(__package__).joinpath(folder, name).read_text(encoding="utf-8")


def _policy(css: str, js: str) -> str:
    """Allow the page's own style and script by their hashes, and nothing else."""
    return (
        f"default-src 'none'; style-src '{_hashed(css)}'; script-src '{_hashed(js)}'; "
        "base-uri 'none'; form-action 'none'"
    )


def _hashed(text: str) -> str:
    return f"sha256-{b64encode(sha256(text.encode()).digest()).decode()}"
