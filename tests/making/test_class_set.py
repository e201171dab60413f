"""A class set: every pupil's own numbers, in the order of the roster, the same whatever else is asked."""

import html
import re
import subprocess
import sys
from itertools import pairwise
from pathlib import Path

import pdfplumber
import pikepdf
import pytest
from conftest import LESSONS, in_silence
from page_reading import MM, pages_of, text_of
from trial_classes import chooser_of, class_set

from foldmath.booklets.papers import booklet_papers
from foldmath.errors import CannotWrite, SurroundingsFailed
from foldmath.lesson.roster import Pupil, told_apart
from foldmath.making import Access, Order, proved_lesson
from foldmath.making.classes import ClassLesson, Classroom, make_class, making, own_crew
from foldmath.making.classes import class_set as making_class_set
from foldmath.making.classes.class_set import BATCH, SCHOOL, SCHOOL_BATCH, batches
from foldmath.making.classes.handouts import Handouts
from foldmath.making.classes.making import CLASSES_AHEAD
from foldmath.making.classes.pressing import EMPTY_SIDE, leaves
from foldmath.making.order import ClassOrder
from foldmath.making.parts import guides
from foldmath.making.sets.manifest import MANIFEST
from foldmath.pages.lettering.faces import glyph_font
from foldmath.pages.pdf.flowables import CutAcross
from foldmath.pages.pdf.paginating import PAGE_WORDS, Copy, PageMaster
from foldmath.pages.pdf.setting import PageStart
from foldmath.pages.pdf.styles import PageShape
from foldmath.pages.templating import render
from foldmath.practice.own_numbers import pupil_seed
from foldmath.statements.items import Level
from foldmath.worksheets.class_key import ClassKey
from foldmath.worksheets.exit_ticket import exit_ticket
from foldmath.worksheets.folding_part import folding_part
from foldmath.worksheets.picture_book import SIZES
from foldmath.worksheets.worksheet import with_items

FRACTION_PT, ANSWERS_PT = 17.4, 11
"""How high a fraction of the key is, from the top of its upper figure to the foot of its lower one; and how
large its answers are, beside which fractions of smaller lines are as much lower."""

LEVELS = tuple(Level)
NAMES = ("Åsa Lind", "Bo", "Cem", "Dana", "Eli", "Fay", "Gus")


@pytest.fixture(scope="module")
def proved():
    return proved_lesson(LESSONS / "seed-trays.toml")[0]


def pupils(*names: str) -> tuple[Pupil, ...]:
    return tuple(Pupil(name, LEVELS[number % 3]) for number, name in enumerate(names))


@pytest.fixture(scope="module")
def made(proved, crew, picture_process):
    return class_set(chooser_of(proved, picture_process), pupils(*NAMES), crew, in_silence)


@pytest.fixture(scope="module")
def folder(made, tmp_path_factory) -> Path:
    folder = tmp_path_factory.mktemp("class")
    (folder / "worksheets.pdf").write_bytes(made.worksheets)
    (folder / "key.pdf").write_bytes(made.key)
    return folder


def test_the_titles_of_the_files_tell_worksheets_from_their_key(folder):
    titles = {}
    for name in ("worksheets", "key"):
        with pdfplumber.open(folder / f"{name}.pdf") as document:
            titles[name] = document.metadata["Title"]
    assert titles == {"worksheets": "Seed trays: worksheet", "key": "Seed trays: answer key"}


def sheet_of(proved, pupil):
    return with_items(
        folding_part(proved),
        proved,
        pupil.level,
        SIZES["regular"].models,
        seed=pupil_seed(proved.lesson, pupil),
        pupil=pupil.label,
    )


def first_pages(path: Path) -> list[str]:
    return [text for text in text_of(path) if "Predict." in text]


def test_names_stand_on_the_worksheets_in_the_order_of_the_roster(folder):
    pages = first_pages(folder / "worksheets.pdf")
    assert len(pages) == len(NAMES)
    assert all(name in page for name, page in zip(NAMES, pages, strict=True))


def test_two_pupils_of_one_name_have_different_numbers_and_codes(proved):
    twins = told_apart([Pupil("Ana", Level.CORE)] * 2)
    first, second = (sheet_of(proved, twin) for twin in twins)
    assert first.code != second.code
    assert [placed.item for placed in first.items] != [placed.item for placed in second.items]


def test_letters_that_only_the_workers_met_have_their_font_in_the_file(tmp_path):
    (tmp_path / "r.csv").write_text("name,level,language\nBo,guided,es\nCem,core,en-US\n", encoding="utf-8")
    asked = ["make", str(LESSONS / "seed-trays.toml"), "--class", "r.csv", "--out", "made"]
    # In this process every font may be known by now.
    subprocess.run([sys.executable, "-m", "foldmath", *asked], cwd=tmp_path, check=True, capture_output=True)
    (pages,) = tmp_path.glob("made/*/*/class-worksheets.pdf")
    with pdfplumber.open(pages) as spanish:
        signs = [sign for page in spanish.pages[:2] for sign in page.chars]
    assert {sign["text"] for sign in signs if "DejaVu" in sign["fontname"]} == {"✓"}
    assert "Nombre" in "".join(sign["text"] for sign in signs)


def test_a_font_that_is_not_on_this_machine_is_asked_for_by_name():
    with pytest.raises(SurroundingsFailed, match="the font Nowhere, which is not here"):
        glyph_font("Nowhere")


def test_nobodys_numbers_change_when_another_pupil_joins_the_class(proved):
    before = told_apart(Pupil(name, Level.CORE) for name in ("Ana", "Bo", "Ana"))
    after = told_apart(Pupil(name, Level.CORE) for name in ("Ana", "Al", "Bo", "Ana"))
    seeds = [
        {(one.label, one.namesake): pupil_seed(proved.lesson, one) for one in them}
        for them in (before, after)
    ]
    assert seeds[0].items() <= seeds[1].items()
    assert len(set(seeds[1].values())) == len(after)


def test_every_page_carries_the_code_that_the_key_tells_for_its_pupil(proved, folder):
    pages = first_pages(folder / "worksheets.pdf")
    key = " ".join(text_of(folder / "key.pdf"))
    for pupil, page in zip(pupils(*NAMES), pages, strict=True):
        code = sheet_of(proved, pupil).code
        assert code in page
        assert f"{pupil.label} {code}" in key


def test_the_key_tells_every_answer_of_every_pupil_in_the_order_of_the_roster(proved, folder):
    key = " ".join(text_of(folder / "key.pdf"))
    places = [key.index(name) for name in NAMES]
    assert places == sorted(places)
    for pupil, start, end in zip(pupils(*NAMES), places, [*places[1:], len(key)], strict=True):
        row = key[start:end]
        sheet = sheet_of(proved, pupil)
        for placed in sheet.items:
            if placed.item.kind.value in ("shade", "missing-factor", "same-size"):
                assert str(placed.item.answer) in row


def test_the_key_tells_the_answers_of_the_ticket_once_above_all_others(folder):
    (first, *others) = text_of(folder / "key.pdf")
    assert "Exit ticket. 1: 8 panels; one panel is 1/8 of the sheet. 2: " in " ".join(first.split())
    assert first.index("Exit ticket.") < first.index("Student")
    assert not any("Exit ticket." in page for page in others)


def test_in_the_key_no_line_begins_with_a_blank_and_why_keeps_to_its_reason(proved):
    sheets = [sheet_of(proved, pupil) for pupil in pupils(*NAMES)]
    key = ClassKey((), (), (), exit_ticket(folding_part(proved), sheets[:3]))
    rows = html.unescape(render("worksheets/class_key_rows.html", "en-US", sheets=sheets, key=key))
    assert rows.count("why:") == rows.count("why:\u00a0") > 0
    assert not re.search(r"[ \n]\u00a0", rows)


def test_two_lines_of_a_row_of_the_key_stand_clear_and_its_pages_are_numbered(folder):
    (page,) = pages_of(folder / "key.pdf")
    (head,) = (word for word in page["words"] if word["text"] == "Answers" and word["size"] < 11)
    inside = [word for word in page["words"] if word["x0"] > head["x0"] - 1 and word["top"] > head["bottom"]]
    numbers = [word for word in inside if re.fullmatch(r"\d\.", word["text"])]
    lines = sorted({(round(word["top"] + word["bottom"], 1) / 2, round(word["size"])) for word in numbers})
    assert {size for _, size in lines} == {10, ANSWERS_PT}
    for (above, larger), (below, smaller) in pairwise(lines):
        assert below - above > FRACTION_PT * (larger + smaller) / (2 * ANSWERS_PT) + MM
    assert "page 1 of 1" in text_of(folder / "key.pdf")[0]


def test_the_key_warns_of_mistakes_by_the_codes_of_the_plan_once_of_what_all_are_asked(folder):
    key = " ".join(" ".join(text_of(folder / "key.pdf")).split())
    assert "✗ 2: 36/12 same bottom, 13/12 add, 4/7 added both." in key
    of_all = "On every page: ✗ 1. 120/15 same bottom, 22/15 add, 6/8 added both. 2. 6/4 same bottom,"
    assert of_all in key
    rows = key.partition("Answers")[2]
    assert re.search(r"✗ 4. \d+/\d+ same bottom", rows)
    assert not re.search(r"✗ [12]. ", rows.partition("Answers")[2])


def test_the_key_of_a_class_is_one_table_and_a_longer_one_says_in_each_whom_it_has_and_counts_on(
    proved, crew, picture_process, tmp_path, monkeypatch
):
    many = pupils(*(f"Pupil {number}." for number in range(5)))
    monkeypatch.setattr(making_class_set, "BATCH", 2)
    monkeypatch.setattr(making_class_set, "SCHOOL_BATCH", 2)
    for school, parts in ((5, []), (4, [("1 to 4 of 5", "0", "3"), ("5 to 5 of 5", "4", "4")])):
        monkeypatch.setattr(making_class_set, "SCHOOL", school)
        made = class_set(chooser_of(proved, picture_process, "A4"), many, crew, in_silence)
        path = tmp_path / f"key-{school}.pdf"
        path.write_bytes(made.key)
        pages = text_of(path)
        text = " ".join(" ".join(pages).split())
        assert [pupil.label for pupil in many if pupil.label in text] == [pupil.label for pupil in many]
        assert text.count("class key") == max(len(parts), 1)
        assert re.findall(r"Students (.*?): Pupil (\d)\. – Pupil (\d)\. Student", text) == parts
        numbers = [f"page {number} of {len(pages)}" for number in range(1, len(pages) + 1)]
        assert re.findall(r"page \d of \d", text) == numbers


def test_the_key_tells_of_the_sentence_that_is_judged_by_its_number_whether_it_is_true(proved, folder):
    rest = " ".join(text_of(folder / "key.pdf"))
    sheets = [sheet_of(proved, pupil) for pupil in pupils(*NAMES)]
    assert any(sheet.judged for sheet in sheets)
    for sheet in reversed(sheets):
        rest, _, row = rest.partition(sheet.code)
        if sheet.judged:
            answer = "true" if sheet.judged.true else f"false: {sheet.judged.count}"
            assert f"{len(sheet.items) + 1}. {answer}" in row


def test_no_two_pupils_of_one_level_have_the_same_numbers(proved):
    asked = [
        tuple(placed.item.asks for placed in sheet_of(proved, Pupil(name, Level.CORE)).items)
        for name in NAMES
    ]
    assert len(set(asked)) == len(NAMES)


def test_a_pupil_has_the_same_page_whoever_else_is_in_the_class(
    proved, crew, picture_process, folder, tmp_path
):
    alone = class_set(chooser_of(proved, picture_process), pupils(*NAMES)[4:5], crew, in_silence)
    path = tmp_path / "alone.pdf"
    path.write_bytes(alone.worksheets)
    together = text_of(folder / "worksheets.pdf")
    start = next(number for number, page in enumerate(together) if NAMES[4] in page)
    pages = text_of(path)
    assert pages == together[start : start + len(pages)]


def test_first_pages_of_a_level_have_their_ink_in_common_but_for_name_and_code(folder):
    with pikepdf.open(folder / "worksheets.pdf") as document:
        inks = [{ink.objgen for ink in page.Contents} for page in document.pages]
        shared = inks[0] & inks[2 * len(LEVELS)]
        assert len(shared) == 1
        assert all(shared.isdisjoint(others) for others in inks[1 : 2 * len(LEVELS)])
        (common,) = (ink.read_bytes() for ink in document.pages[0].Contents if ink.objgen in shared)
        assert len(common) > sum(len(ink.read_bytes()) for ink in document.pages[0].Contents) / 2


def test_the_files_are_the_same_whatever_the_number_of_processes(proved, picture_process):
    many = pupils(*(f"Pupil {number}" for number in range(BATCH + 3)))
    made = []
    for processes in (1, 2):
        with own_crew(processes) as crew:
            made.append(class_set(chooser_of(proved, picture_process, "A4"), many, crew, in_silence))
    assert made[0] == made[1]


def test_joined_batches_keep_every_page_and_their_order(proved, crew, picture_process, tmp_path):
    many = pupils(*(f"Pupil {number}." for number in range(BATCH + 3)))
    told: list[int] = []
    made = class_set(chooser_of(proved, picture_process, "A4"), many, crew, told.append)
    path = tmp_path / "worksheets.pdf"
    path.write_bytes(made.worksheets)
    pages = first_pages(path)
    assert len(pages) == len(many)
    assert all(pupil.label in page for pupil, page in zip(many, pages, strict=True))
    assert told == [BATCH, BATCH + 3]


def test_nothing_lies_outside_the_page(folder):
    for page in pages_of(folder / "worksheets.pdf"):
        assert all(char["x0"] >= 0 and char["x1"] <= page["width"] for char in page["chars"])
        assert all(char["top"] >= 0 and char["bottom"] <= page["height"] for char in page["chars"])


@pytest.fixture
def class_made(tmp_path, crew, picture_process):
    def made(names=NAMES, lesson="seed-trays", **order):
        room = Classroom("4b", pupils(*names), Access.OWNER)
        path, wanted = LESSONS / f"{lesson}.toml", Order(out=tmp_path, **order)
        return make_class(path, wanted, room, crew, picture_process, in_silence)

    return made


def test_a_class_with_own_numbers_gets_all_that_its_plan_speaks_of_and_no_master_is_named(
    tmp_path, class_made
):
    made = class_made(lesson="tile-race")
    folder = tmp_path / "tile-race" / "class-4b"
    papers = {"class-worksheets.pdf", "class-key.pdf", "exit-ticket.pdf", "teacher-plan.pdf"}
    slides = {"slides.html", "slides.pdf", "slides-reveals.pdf"}
    folded = {"templates.pdf", "booklet.pdf", "booklet-key.pdf", "booklet-folding.pdf"}
    names = papers | slides | folded
    assert {path.name for path in folder.iterdir()} == {*names, MANIFEST}
    assert {path.name for path in made.files} == names
    read = ("teacher-plan", "exit-ticket", "slides")
    plan, ticket, slides_in_print = (" ".join(text_of(folder / f"{name}.pdf")) for name in read)
    pages = len(pages_of(folder / "class-worksheets.pdf"))
    assert f"Print, two-sided: class-worksheets.pdf, {pages} pages (2 core, 3 guided, 2 stretch)" in plan
    assert "4 × exit-ticket.pdf, two tickets to a page; class-key.pdf." in plan
    masters = [
        with_items(folding_part(made.proved), made.proved, level, SIZES["regular"].models) for level in Level
    ]
    assert not [master.code for master in masters if master.code in plan + ticket + slides_in_print]
    assert "key of each level" not in plan


HERS = ("exit-ticket.pdf", "booklet.pdf", "booklet-folding.pdf")
MIXED = [Pupil("Ann", Level.CORE, language=said) for said in ("es", "", "en-GB", "es")]


def handouts_of(lesson, picture_process, look="regular", hers=HERS, told=()):
    order = ClassOrder("letter", look)
    handouts = Handouts(proved_lesson(lesson)[0], order, picture_process, hers=hers, told=told)
    handouts.begin(MIXED)
    return handouts


def test_pupils_of_another_tongue_have_ticket_and_booklet_in_it_which_are_laid_out_once(
    picture_process, tmp_path
):
    handouts = handouts_of(LESSONS / "fraction-diary.toml", picture_process)
    shared = handouts.shared_out(MIXED)
    assert [list(files.items()) for files in (shared.tickets, shared.booklets, shared.foldings)] == [
        [(f"{name}.pdf", 2), (f"{name}-es.pdf", 2)] for name in ("exit-ticket", "booklet", "booklet-folding")
    ]
    others = handouts.others(MIXED)
    assert handouts.others(MIXED[1:3]) == {}
    handouts.begin(MIXED[:1])
    assert all(again is others[name] for name, again in handouts.others(MIXED[:1]).items())
    for name, content in others.items():
        (tmp_path / name).write_bytes(content)
    told = {name: " ".join(" ".join(text_of(tmp_path / name)).split()) for name in others}
    assert told["exit-ticket-es.pdf"].count("Guarda tu hoja.") == 2
    assert "Mi diario de fracciones" in told["booklet-es.pdf"]
    assert "Dobla el borde" in told["booklet-folding-es.pdf"]
    assert "Tijeras: primero las reglas de tu escuela." in told["templates-es.pdf"]


def test_a_lesson_without_a_booklet_shares_out_tickets_alone(picture_process):
    """Its guide sheets cut nothing, and tell the teacher alone how they are printed."""
    handouts = handouts_of(LESSONS / "seed-trays.toml", picture_process, hers=HERS[:1])
    assert list(handouts.others(MIXED)) == ["exit-ticket-es.pdf"]
    shared = handouts.shared_out(MIXED)
    assert (shared.booklets, shared.foldings) == ({}, {})


def test_what_only_a_booklet_in_another_tongue_lacks_is_told_with_its_file(tmp_path, picture_process):
    """In Spanish, words of one prompt are more than a page holds."""
    lesson = tmp_path / "diary.toml"
    text = (LESSONS / "fraction-diary.toml").read_text(encoding="utf-8")
    lesson.write_text(f'{text}"I counted" = "{"Conté todas las partes. " * 22}"\n', encoding="utf-8")
    hers = proved_lesson(lesson)[0]
    told = booklet_papers(hers, hers.lesson.booklet, "letter", "regular").notes
    notes = list(map(str, handouts_of(lesson, picture_process, told=told).notes(MIXED)))
    assert [note for note in notes if "Page 8 has too much on it" in note]
    assert all(note.startswith("booklet-es.pdf: ") for note in notes)
    assert not [note for note in notes if "at 100%" in note]


@pytest.mark.parametrize(("sides", "leaves_of_two"), [(1, 1), (2, 2), (3, 4), (4, 4)])
def test_of_two_sides_pupils_share_none_and_one_side_stays_empty_for_it(sides, leaves_of_two):
    shape = PageShape(width_mm=200.0, height_mm=100.0, usable_width_mm=200.0, usable_height_mm=100.0)
    blocks = [block for _ in range(sides) for block in (PageStart(soft=False), CutAcross())]
    filled = leaves(Copy(blocks, PageMaster(shape, "", "", PAGE_WORDS)))
    assert len(filled) == leaves_of_two
    assert [bool(page.placed) for page in filled] == [True] * sides + [False] * (leaves_of_two - sides)
    assert (filled[-1].copy.master.page_words == EMPTY_SIDE) == (leaves_of_two > sides)


def test_a_whole_set_of_the_same_lesson_list_and_paper_is_not_made_again(class_made):
    first = class_made()
    assert not first.made_before
    again = class_made()
    assert again.made_before
    assert set(again.files) == set(first.files)
    for changed in (class_made(names=NAMES[:-1]), class_made(names=NAMES[:-1], paper="A4")):
        assert not changed.made_before


def test_a_set_with_a_page_missing_or_changed_is_made_again(class_made):
    files = class_made(names=NAMES[:1]).files
    before = files[0].read_bytes()
    files[0].unlink()
    assert not class_made(names=NAMES[:1]).made_before
    assert files[0].read_bytes() == before
    files[0].write_bytes(b"changed")
    assert not class_made(names=NAMES[:1]).made_before
    assert files[0].read_bytes() == before


@pytest.mark.parametrize(("count", "size"), [(SCHOOL, BATCH), (SCHOOL + 1, SCHOOL_BATCH), (30, BATCH)])
def test_pages_of_a_school_are_laid_out_in_larger_batches_from_one_pupil_more_on(count, size):
    pupils = tuple(Pupil(f"Pupil {number}", Level.CORE) for number in range(count))
    made = batches(pupils)
    assert sum(made, ()) == pupils
    assert [len(batch) for batch in made[:-1]] == [size] * (len(made) - 1)
    assert 0 < len(made[-1]) <= size


def test_what_all_classes_have_alike_is_laid_out_for_the_first_of_them(
    tmp_path, crew, picture_process, monkeypatch
):
    begun = []
    monkeypatch.setattr(making, "guides", lambda *asked: begun.append(asked) or guides(*asked))
    lesson = ClassLesson(LESSONS / "seed-trays.toml", Order(out=tmp_path), crew, picture_process)
    first, second = (
        lesson.make(Classroom(name, pupils(*NAMES[:2]), Access.OWNER), in_silence) for name in ("4a", "4b")
    )
    assert len(begun) == 1
    assert [file.name for file in first.files] == [file.name for file in second.files]
    assert [file.read_bytes() for file in first.files] == [file.read_bytes() for file in second.files]


def test_while_one_class_is_finished_the_next_two_are_laid_out_already(tmp_path, crew, picture_process):
    begun = []
    lesson = ClassLesson(LESSONS / "seed-trays.toml", Order(out=tmp_path), crew, picture_process)

    def rooms():
        for name in ("4a", "4b", "4c", "4d"):
            begun.append(name)
            yield Classroom(name, pupils("Bo"), Access.OWNER), in_silence

    turns = lesson.in_turn(rooms())
    asked = [(next(turns)(), len(begun)) for _ in range(4)]
    assert [count for _, count in asked] == [CLASSES_AHEAD + 1, CLASSES_AHEAD + 2, 4, 4]
    assert [made.files[0].parent.name for made, _ in asked] == [
        "class-4a",
        "class-4b",
        "class-4c",
        "class-4d",
    ]


def test_a_class_that_cannot_be_begun_is_refused_in_its_turn(tmp_path, crew, picture_process, monkeypatch):
    lesson = ClassLesson(LESSONS / "seed-trays.toml", Order(out=tmp_path), crew, picture_process)

    def refuse(*_):
        raise CannotWrite("no room")

    rooms = [(Classroom(name, pupils("Bo"), Access.OWNER), in_silence) for name in ("4a", "4b")]
    turns = lesson.in_turn([rooms[0]])
    assert next(turns)().files
    monkeypatch.setattr(lesson, "begin", refuse)
    (refused,) = lesson.in_turn([rooms[1]])
    with pytest.raises(CannotWrite):
        refused()
