"""A desk with a folder of its own: asked as a browser asks, or served to a real one."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from flask.testing import FlaskClient

from foldmath.desk.app import desk_app
from foldmath.desk.shelf.open_lesson import open_lesson
from foldmath.desk.shelf.shelf import Shelf
from foldmath.desk.visits.desk import Desk
from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.lesson.files.built_in import built_in_lessons

PORT = 5000
SITE = f"http://127.0.0.1:{PORT}"


class Visitor(FlaskClient):
    """Asks as the teacher's browser does: under the right name, and with Origin on every change."""

    def open(self, *args, **kwargs):
        kwargs.setdefault("base_url", SITE)
        kwargs.setdefault("buffered", True)
        if kwargs.get("method") == "POST":
            kwargs["headers"] = {"Origin": SITE, **kwargs.get("headers", {})}
        return super().open(*args, **kwargs)


@pytest.fixture(scope="session", autouse=True)
def _state_apart(tmp_path_factory) -> Iterator[None]:
    """Keep what can be undone out of the home of whoever runs the tests, where the next run would find it."""
    with pytest.MonkeyPatch.context() as state:
        state.setenv("XDG_STATE_HOME", str(tmp_path_factory.mktemp("state")))
        yield


@pytest.fixture(scope="session")
def pictures() -> Iterator[PictureProcess]:
    with PictureProcess() as process:
        yield process


@pytest.fixture
def desk(tmp_path: Path, pictures) -> Desk:
    return Desk(shelf=Shelf(tmp_path.resolve()), port=PORT, language="en-US", pictures=pictures)


@pytest.fixture
def app(desk):
    app = desk_app(desk, lambda: None)
    app.test_client_class = Visitor
    return app


@pytest.fixture
def stranger(app) -> Visitor:
    """Give a browser that has not been let in."""
    return app.test_client()


@pytest.fixture
def visitor(app, desk) -> Visitor:
    client = app.test_client()
    client.get(f"/open/{desk.entry}")
    return client


@pytest.fixture
def seed_trays(desk) -> Path:
    """Lay a built-in lesson into the teacher's folder."""
    return Path(shutil.copy(built_in_lessons()["seed-trays"], desk.folder))


@pytest.fixture
def opened(desk, seed_trays):
    """Give a function that opens the lesson of seed trays as it is now."""
    return lambda: open_lesson(desk.shelf, "seed-trays")


@pytest.fixture
def change(visitor, desk, opened):
    """Give a function that sends a form of its practice."""

    def done(name, **values):
        form = {"token": desk.form, "digest": opened().digest, "level": "core", "change": name, **values}
        return visitor.post("/lesson/seed-trays/practice", data=form)

    return done
