"""The slides as one page for the browser: all of it inside, and a policy that lets nothing in."""

import re
from base64 import b64encode
from hashlib import sha256
from importlib.resources import files

from markupsafe import Markup

from foldmath.measured import as_float
from foldmath.pages.templating import render
from foldmath.slides.minutes import slide_minutes
from foldmath.slides.motion import marks, paths
from foldmath.slides.sharing import shared_creases
from foldmath.slides.slides import SlideShow
from foldmath.typeface.for_screens import faces

SCRIPTS = ("motion", "gathering", "places", "memory", "timer", "drawing", "notes", "keys", "start")
"""The parts of the page's script, in the order in which they are joined; the first two know of paper only."""

REMARKS = re.compile(r"/\*.*?\*/|^[ \t]*//[^\n]*\n|^\s+", re.DOTALL | re.MULTILINE)
"""A remark of a style sheet, one of a script on a line of its own, and an indent."""

ROOMY = re.compile(r" ?([{};]) ?")
"""Spaces that a rule of a style sheet has for those who write it."""


def slides_html(show: SlideShow) -> str:
    """Give the slides of a lesson as one HTML file that needs no other.

    Source:
        Content Security Policy Level 3 (W3C): hash sources for inline style and script.
    """
    css = faces() + ROOMY.sub(r"\1", _without_remarks(_text("templates", "slides.css"))) + marks.line_styles()
    js = _script()
    lesson, shown = show.proved.lesson, show.slides
    return render(
        "slides/slides.html",
        lesson.language,
        lesson=lesson,
        sheet=show.sheet,
        slides=shown,
        slide_minutes=[f"{minutes:g}" for minutes in slide_minutes(shown)],
        sheet_ratio=as_float(lesson.sheet.width / lesson.sheet.height),
        shared=shared_creases(shown),
        css=Markup(css),
        js=Markup(js),
        policy=_policy(css, js),
        points=paths.points,
        path=paths.path,
        stroke_path=paths.stroke_path,
        loops=paths.loops,
        peeping=marks.peeping,
        peep_mm=marks.PEEP_MM,
        corners_of_moments=marks.corners_of_moments,
        star_points=marks.star_points,
        star_at=marks.star_at,
        mm=paths.mm,
    )


def _script() -> str:
    """Join the script's parts into one, since the policy lets in no other files."""
    parts = (_without_remarks(_text("scripts", f"{name}.js")) for name in SCRIPTS)
    return "\n".join(['"use strict";', *parts])


def _text(folder: str, name: str) -> str:
    return files(__package__).joinpath(folder, name).read_text(encoding="utf-8")


def _without_remarks(text: str) -> str:
    """Leave out indents and lines that are remarks: a twentieth of the page, which nobody reads there."""
    return REMARKS.sub("", text)


def _policy(css: str, js: str) -> str:
    """Allow the page's own style and script by their hashes, letters inside of it, and nothing else."""
    return (
        f"default-src 'none'; style-src '{_hashed(css)}'; script-src '{_hashed(js)}'; font-src data:; "
        "base-uri 'none'; form-action 'none'"
    )


def _hashed(text: str) -> str:
    return f"sha256-{b64encode(sha256(text.encode()).digest()).decode()}"
