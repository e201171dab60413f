"""Questions that need no lesson: is a sentence true, and how are equal parts folded without a ruler?"""

from flask import Blueprint, Response, request
from flask.typing import ResponseReturnValue
from markupsafe import Markup

from foldmath.desk.visits.as_printed import as_printed
from foldmath.desk.visits.desk import Desk
from foldmath.desk.visits.guards import OWN_POLICY
from foldmath.desk.visits.refusals import refusals_of, status_of
from foldmath.desk.visits.showing import desk_language, show
from foldmath.errors import FoldmathError
from foldmath.guides.parts_page import PartsPage, parts_page
from foldmath.pages.page_fit import usual_page
from foldmath.pages.printing import printed
from foldmath.paper.lengths import read_length
from foldmath.paper.sizes import ORIENTATIONS, paper_named, papers_to_choose_from, sheet
from foldmath.paper.steps import Axis
from foldmath.planning.parts.equal_parts import FEWEST_PARTS, MOST_PARTS, Way, ways
from foldmath.statements.checking.claims import check_claim

ACCURACY = "1 mm"
"""How far off a crease may be where a way is not exact."""

USUAL = {"parts": 5, "paper": "letter", "along": Axis.WIDTH.value}


def asking(desk: Desk) -> Blueprint:
    """Give the pages on which is asked."""
    pages = Blueprint("asking", __name__)

    @pages.get("/check")
    def check() -> ResponseReturnValue:
        claim = request.args.get("claim", "").strip()
        try:
            verdict = check_claim(claim) if claim else None
        except FoldmathError as error:
            refused = {"claim": claim, "verdict": None, "slips": refusals_of(error)}
            return show(desk, "check.html", **refused), status_of(error)
        return show(desk, "check.html", claim=claim, verdict=verdict, slips=[])

    @pages.get("/parts")
    def parts() -> str:
        asked = "parts" in request.args
        return show(
            desk,
            "parts.html",
            counts=range(FEWEST_PARTS, MOST_PARTS + 1),
            papers=[paper.name for paper in papers_to_choose_from()],
            sides=[axis.value for axis in Axis],
            asked={**USUAL, **request.args},
            printed=_as_printed(desk_language(desk)) if asked else "",
            query=request.query_string.decode(),
        )

    @pages.get("/parts.pdf")
    def parts_printed() -> ResponseReturnValue:
        page = _page(desk_language(desk))
        drawn = desk.pictures.recordings(list(page.pictures.values())).result()
        pictures = dict(zip(page.pictures, drawn, strict=True))
        pdf = printed([page.document], pictures, page.title, desk_language(desk), page.look)
        answer = Response(pdf, mimetype="application/pdf")
        answer.headers["Content-Security-Policy"] = OWN_POLICY
        return answer

    return pages


def _ways() -> tuple[Way, ...]:
    """Find the ways to fold the parts that are asked for.

    Raises:
        FoldmathError: no paper of this name, or no such number of parts.
    """
    asked = {**USUAL, **request.args}
    lying = sheet(paper_named(str(asked["paper"])), ORIENTATIONS[0])
    along = next((axis for axis in Axis if axis.value == asked["along"]), Axis.WIDTH)
    return ways(lying, request.args.get("parts", 0, int), along, read_length(ACCURACY).in_millimetres)


def _page(language: str) -> PartsPage:
    found = _ways()
    return parts_page(found, request.args.get("paper", ""), usual_page(found[0].sheet), language)


def _as_printed(language: str) -> Markup:
    page = _page(language)
    return as_printed(page.document.html, page.pictures, language, answers=True)
