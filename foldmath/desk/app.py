"""The desk put together: takes one run's desk, gives the application that answers the browser."""

from collections.abc import Callable

from flask import Flask

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


def desk_app(desk: Desk, end: Callable[[], None]) -> Flask:
    """Give the application of one run; ``end`` ends it."""
    app = Flask("foldmath.desk", static_folder="static", template_folder=None)
    guard(app, desk)
    tell_failures(app, desk)
    for part in PARTS:
        app.register_blueprint(part(desk))

    @app.post("/end")
    def ended() -> str:
        end()
        return show(desk, "ended.html")

    return app
