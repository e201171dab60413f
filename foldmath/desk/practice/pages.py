"""The items of a lesson as they will print, and what is changed of them."""

from flask import Blueprint, redirect, request
from flask.typing import ResponseReturnValue
from markupsafe import Markup

from foldmath.desk.practice.changes import changed
from foldmath.desk.practice.own_words import NOWHERE, Values, as_written, made_hers, place_of
from foldmath.desk.practice.refusing import FORMS, Refused, refused
from foldmath.desk.printing.kept_previews import KeptPreviews, Wishes
from foldmath.desk.shelf.open_lesson import ChangedOutside, OpenLesson, open_lesson, save
from foldmath.desk.visits.as_printed import part_as_printed
from foldmath.desk.visits.desk import Desk
from foldmath.desk.visits.refusals import status_of
from foldmath.desk.visits.showing import lesson_page, show
from foldmath.errors import FoldmathError
from foldmath.lesson.files.wanted import MOST_ITEMS
from foldmath.lesson.kinds import kinds_for
from foldmath.lesson.proving import prove
from foldmath.lesson.reading import lesson_in
from foldmath.making.papers import SUFFIXES
from foldmath.making.parts import class_worksheet
from foldmath.making.products import told_of_items
from foldmath.pages.looks import REGULAR
from foldmath.pages.page_pictures import page_count
from foldmath.pages.printable import refuse_unprintable
from foldmath.paper.sizes import papers_to_choose_from
from foldmath.paper.steps import FEWEST_PLEATS, MOST_PLEATS
from foldmath.planning.plan_lesson import GRADES
from foldmath.statements.items import Item, Level
from foldmath.worksheets.picture_book import item_pictures
from foldmath.worksheets.rendering import items_html
from foldmath.worksheets.worksheet import Worksheet

USUAL_LEVEL = Level.CORE


def practice(desk: Desk) -> Blueprint:
    """Give the pages on which practice is chosen."""
    pages = Blueprint("practice", __name__)
    previews = KeptPreviews(desk.pictures)

    def shown(opened: OpenLesson, refused: Refused | None = None) -> str:
        count = page_count(previews.of(opened, Wishes()).pdf(_worksheet()))
        return _shown(desk, opened, count, refused)

    @pages.get("/lesson/<name>/practice")
    def items(name: str) -> str:
        return shown(open_lesson(desk.shelf, name))

    @pages.post("/lesson/<name>/practice")
    def change(name: str) -> ResponseReturnValue:
        opened = open_lesson(desk.shelf, name)
        text = opened.text
        try:
            opened.require(request.form.get("digest", ""))
            text = changed(opened, request.form)
            # What could not be read or printed is refused here, and what is there stays.
            refuse_unprintable(prove(lesson_in(text, str(opened.path))).lesson, text)
            save(opened, text)
        except FoldmathError as error:
            if not _has_a_form(error):
                raise
            return shown(opened, _refused(opened, text, error)), status_of(error)
        return redirect(f"{lesson_page(name, 'practice')}?{_looked_at()}", 303)

    return pages


def _level() -> Level:
    asked = request.values.get("level")
    return next((level for level in Level if level.value == asked), USUAL_LEVEL)


def _printed(sheet: Worksheet, *, answers: bool) -> list[Markup]:
    """Give every item as it will print."""
    scenes = item_pictures(sheet, REGULAR)
    language = sheet.lesson.language
    return [part_as_printed(html, scenes, language, answers=answers) for html in items_html(sheet)]


def _looked_at() -> str:
    """Say in an address how the items are looked at."""
    answers = "&answers=1" if request.values.get("answers") else ""
    return f"level={_level().value}{answers}"


def _worksheet() -> str:
    """Name the worksheet of the level."""
    return f"worksheet{SUFFIXES[_level()]}.pdf"


def _has_a_form(error: FoldmathError) -> bool:
    """Tell whether what was typed can stand again in its form; items may have other places by now."""
    change = request.form.get("change")
    return change in FORMS and not (change == "rewrite" and isinstance(error, ChangedOutside))


def _refused(opened: OpenLesson, text: str, error: FoldmathError) -> Refused:
    place = place_of(request.form)
    if place == NOWHERE:
        place = len(opened.read().items)
    return refused(request.form, text, place, error)


def _begun(items: list[Item], language: str) -> Values | None:
    """Give what an item of hers begins with, where one of the page's is to become hers."""
    asked = next((item for item in items if item.asks == request.args.get("mine")), None)
    return made_hers(asked, language) if asked else None


def _shown(desk: Desk, opened: OpenLesson, count: int, refused: Refused | None = None) -> str:
    proved, level = prove(opened.read()), _level()
    lesson, answers = proved.lesson, bool(request.values.get("answers"))
    sheet = class_worksheet(proved, level)
    items = [placed.item for placed in sheet.items]
    return show(
        desk,
        "practice.html",
        opened=opened,
        place="practice",
        lesson=lesson,
        level=level,
        levels=list(Level),
        worksheet=_worksheet(),
        count=count,
        answers=answers,
        items=list(zip(items, _printed(sheet, answers=answers), strict=True)),
        own={written.text for written in lesson.practice},
        hers=as_written(opened, lesson, level),
        mine={item.asks for item in items if made_hers(item, lesson.language)},
        begun=_begun(items, lesson.language),
        refused=refused,
        nowhere=NOWHERE,
        notes=list(told_of_items(lesson)),
        kept={kept.asks for kept in lesson.rules.keep if kept.level is level},
        most_items=MOST_ITEMS,
        kinds=kinds_for(lesson.grade, lesson.followed),
        denominators=range(FEWEST_PLEATS, MOST_PLEATS + 1),
        grades=GRADES,
        papers=[paper.name for paper in papers_to_choose_from()],
        taught=[
            (word, lesson.words.get(word, "")) for word in dict.fromkeys((*lesson.vocabulary, *lesson.words))
        ],
    )
