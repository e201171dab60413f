"""The desk put together: takes one run's desk, gives the application that answers the browser."""

from collections.abc import Callable
from http import HTTPStatus
from pathlib import Path

from flask import Flask
from flask.typing import ResponseReturnValue
from markupsafe import Markup

from foldmath.desk.asking.pages import asking
from foldmath.desk.choosing.beginning import beginning
from foldmath.desk.choosing.pages import choosing
from foldmath.desk.folding.pages import folding
from foldmath.desk.marking.pages import marking
from foldmath.desk.mending.pages import mending
from foldmath.desk.practice.pages import practice
from foldmath.desk.printing.made_files import made_files
from foldmath.desk.printing.pages import printing
from foldmath.desk.projecting.pages import projecting
from foldmath.desk.visits.desk import Desk
from foldmath.desk.visits.failing import tell_failures
from foldmath.desk.visits.guards import guard
from foldmath.desk.visits.showing import show

PARTS = (choosing, beginning, folding, practice, printing, made_files, projecting, marking, mending, asking)
"""What gives the pages of each place, in the order of the job."""

ALONE = (
    "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; frame-ancestors 'none'"
)
"""The policy of the last page, which brings its style along."""


def desk_app(desk: Desk, end: Callable[[], None]) -> Flask:
    """Give the application of one run; ``end`` ends it."""
    app = Flask("foldmath.desk", static_folder="static", template_folder=None)
    guard(app, desk)
    tell_failures(app, desk)
    for part in PARTS:
        app.register_blueprint(part(desk))

    @app.post("/end")
    def ended() -> ResponseReturnValue:
        end()
        # Nobody answers when the browser comes for the style of this page.
        style = Path(app.root_path, "static", "desk.css").read_text("utf-8")
        return (
            show(desk, "ended.html", style=Markup(style)),
            HTTPStatus.OK,
            {"Content-Security-Policy": ALONE},
        )

    return app
