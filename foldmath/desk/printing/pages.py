"""The pages of a lesson as they will print, and what is done with them."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from io import BytesIO
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

from flask import Blueprint, Response, abort, redirect, request
from flask.typing import ResponseReturnValue

from foldmath.desk.classes.asked import asked_class
from foldmath.desk.classes.class_lists import kept_classes
from foldmath.desk.printing.kept_previews import KeptPreviews, Wishes
from foldmath.desk.printing.made_files import to_open
from foldmath.desk.shelf.open_lesson import OpenLesson, open_lesson
from foldmath.desk.visits.desk import Desk
from foldmath.desk.visits.guards import OWN_POLICY
from foldmath.desk.visits.refusals import Refusal, refusals_of, status_of
from foldmath.desk.visits.showing import lesson_page, show
from foldmath.errors import FoldmathError
from foldmath.making import Access, Made, Order, make, make_with_copy
from foldmath.making.classes import Classroom, make_class, own_crew
from foldmath.making.previews import Preview
from foldmath.pages.page_pictures import page_count, page_picture
from foldmath.words.languages import languages

DOTS_PER_INCH = 110
"""A page of letter paper is 935 dots wide, which is sharp at half the width of a usual screen."""

BESIDE = {
    "worksheet-guided.pdf": "answer-key-guided.pdf",
    "worksheet.pdf": "answer-key.pdf",
    "worksheet-stretch.pdf": "answer-key-stretch.pdf",
    "booklet.pdf": "booklet-key.pdf",
}
"""Which key stands beside which pages."""

CHIEF = "worksheet.pdf"
"""What is shown first: what most of the class gets."""

LONG_AGO = (1980, 1, 1, 0, 0, 0)
"""The first time that a ZIP file can say: the same documents give the same bytes."""


def printing(desk: Desk) -> Blueprint:
    """Give the pages on which a lesson is looked at, printed and saved."""
    pages = Blueprint("printing", __name__)
    previews = KeptPreviews(desk.pictures)
    _add_documents(pages, desk, previews)
    _add_making(pages, desk, previews)

    @pages.get("/lesson/<name>/print")
    @pages.post("/lesson/<name>/print")
    def look(name: str) -> str:
        opened = open_lesson(desk.shelf, name)
        return _looked_at(desk, opened, previews.of(opened, _wishes()))

    @pages.get("/lesson/<name>/make")
    @pages.get("/lesson/<name>/class")
    def before(name: str) -> ResponseReturnValue:
        return redirect(lesson_page(name, "print"))

    return pages


def _add_making(pages: Blueprint, desk: Desk, previews: KeptPreviews) -> None:
    """Add what writes sets of pages beside the lesson: its own, and that of a class."""

    @pages.post("/lesson/<name>/make")
    def whole_set(name: str) -> ResponseReturnValue:
        opened = open_lesson(desk.shelf, name)
        preview = previews.of(opened, _wishes())
        write = make_with_copy if request.form.get("editable") else make
        try:
            order = replace(_order(desk), languages=_chosen_languages())
            made = write(opened.path, order, desk.pictures, _tell_nobody)
        except FoldmathError as error:
            return _looked_at(desk, opened, preview, unmade=refusals_of(error)), status_of(error)
        return _looked_at(desk, opened, preview, made)

    @pages.post("/lesson/<name>/class")
    def of_class(name: str) -> ResponseReturnValue:
        opened = open_lesson(desk.shelf, name)
        preview = previews.of(opened, _wishes())
        try:
            asked = asked_class(desk.folder, preview.proved.lesson.language)
            classroom = Classroom(asked.name, asked.pupils, Access.OWNER)
            with own_crew() as crew:
                made = make_class(opened.path, _order(desk), classroom, crew, desk.pictures, _tell_nobody)
        except FoldmathError as error:
            return _looked_at(desk, opened, preview, slips=refusals_of(error)), status_of(error)
        return _looked_at(desk, opened, preview, made)


def _add_documents(pages: Blueprint, desk: Desk, previews: KeptPreviews) -> None:
    """Add what gives single documents of a lesson, and pictures of their pages."""

    def preview(name: str) -> Preview:
        return previews.of(open_lesson(desk.shelf, name), _wishes())

    @pages.get("/lesson/<name>/picture/<document>/<int:number>.png")
    def picture(name: str, document: str, number: int) -> ResponseReturnValue:
        try:
            png = page_picture(_pdf(preview(name), document), number, DOTS_PER_INCH)
        except IndexError:
            abort(404)
        return Response(png, mimetype="image/png")

    @pages.get("/lesson/<name>/document/<document>")
    def one(name: str, document: str) -> ResponseReturnValue:
        how = "attachment" if request.args.get("save") else "inline"
        return _file(_pdf(preview(name), document), "application/pdf", f"{name}-{document}", how)

    @pages.get("/lesson/<name>/documents.zip")
    @pages.post("/lesson/<name>/documents.zip")
    def several(name: str) -> ResponseReturnValue:
        found = preview(name)
        wanted = request.values.getlist("checked") or found.names
        content = _zipped(name, {document: _pdf(found, document) for document in wanted})
        return _file(content, "application/zip", f"{name}.zip", "attachment")


def _looked_at(
    desk: Desk,
    opened: OpenLesson,
    preview: Preview,
    made: Made | None = None,
    *,
    unmade: Sequence[Refusal] = (),
    slips: Sequence[Refusal] = (),
) -> str:
    """Show the pages, and beside its button why a set could not be made, or that of a class."""
    document = request.values.get("document", CHIEF)
    key = BESIDE.get(document)
    shown = [document] if key is None else [document, key]
    return show(
        desk,
        "print.html",
        opened=opened,
        place="print",
        preview=preview,
        wishes=_wishes(),
        document=document,
        shown={name: page_count(_pdf(preview, name)) for name in shown},
        beside=set(BESIDE.values()),
        classes=kept_classes(desk.folder),
        made=made,
        unmade=unmade,
        to_open=to_open(made.files, desk.folder / opened.name) if made else (),
        slips=slips,
        typed=request.form,
        uploaded=_uploaded(),
    )


def _wishes() -> Wishes:
    """Read how pages are to be printed, from the address or the form."""
    return Wishes(request.values.get("paper") or None, bool(request.values.get("large")))


def _uploaded() -> str:
    """Give the name of the list that came along; a page that is shown again cannot hold it."""
    uploaded = request.files.get("list")
    return uploaded.filename or "" if uploaded else ""


def _order(desk: Desk) -> Order:
    """Read how a set is to be made; a class has its key, and so its pages, in the lesson's own language."""
    wishes = _wishes()
    return Order(out=desk.folder, paper=wishes.paper, look=wishes.look)


def _chosen_languages() -> tuple[str, ...]:
    asked = request.form.getlist("languages")
    return tuple(language for language in languages() if language in asked)


def _pdf(preview: Preview, document: str) -> bytes:
    try:
        return preview.pdf(document)
    except KeyError:
        abort(404)


def _zipped(folder: str, documents: Mapping[str, bytes]) -> bytes:
    """Put documents into one ZIP file, in a folder of the lesson's name."""
    written = BytesIO()
    with ZipFile(written, "w", ZIP_DEFLATED) as archive:
        for name, content in documents.items():
            archive.writestr(ZipInfo(f"{folder}/{name}", LONG_AGO), content, ZIP_DEFLATED)
    return written.getvalue()


def _file(content: bytes, kind: str, name: str, how: str) -> Response:
    answer = Response(content, mimetype=kind)
    answer.headers.set("Content-Disposition", how, filename=name)
    if how == "inline":
        answer.headers["Content-Security-Policy"] = OWN_POLICY
    return answer


def _tell_nobody(_: object) -> None:
    """Say nothing of what is being done: the browser shows that it waits."""
