"""One lesson in several languages: the same numbers, pictures and codes, each page marked as spoken so."""

from dataclasses import replace

import pikepdf
import pytest
from conftest import LESSONS, in_silence
from lessons_in_words import EIGHTHS, proved, sheet_at
from own_words import own
from page_reading import text_of
from tag_reading import heard
from trial_classes import chooser_of, class_set

from foldmath.errors import Unreadable
from foldmath.lesson.lesson import WrittenItem
from foldmath.lesson.roster import Pupil
from foldmath.making import Order, Part, languages_named, make, one_language, proved_lesson, said_in
from foldmath.making.languages import editions, told_of_own_words
from foldmath.making.papers import papers
from foldmath.making.sets.manifest import read_manifest
from foldmath.pages.markup.blocks import Box, Picture
from foldmath.pages.markup.reading import blocks_of
from foldmath.practice.choosing import choose
from foldmath.statements.items import Level
from foldmath.statements.standards import Followed
from foldmath.worksheets.rendering import html

SEED_TRAYS = LESSONS / "seed-trays.toml"


def test_languages_are_named_in_any_spelling_and_each_once():
    assert languages_named("es, EN-us,ES,en_US") == ("es", "en-US")


def test_two_names_of_the_same_pages_are_refused_since_there_would_be_one_folder():
    with pytest.raises(Unreadable, match="es,es_MX: both mean the same pages, es") as caught:
        languages_named("es, EN-us,es_MX")
    assert str(caught.value.hint) == "--language es,en-US"


@pytest.mark.parametrize(("words", "hint"), [("en-UK", "en-US"), ("ess", "es"), (" , ", "en-US")])
def test_a_language_without_pages_is_refused_and_the_nearest_is_offered(words, hint):
    with pytest.raises(Unreadable) as caught:
        languages_named(words)
    assert str(caught.value.hint) == f"--language {hint}"


def test_a_class_has_its_keys_in_one_language():
    assert (one_language(()), one_language(("es",))) == (None, "es")
    with pytest.raises(Unreadable, match="several languages"):
        one_language(("es", "en-US"))


def test_one_language_needs_no_folder_and_of_several_each_has_its_own():
    lesson = proved(*EIGHTHS)
    assert editions(lesson, ()) == {"": lesson}
    assert {name: made.lesson.language for name, made in editions(lesson, ("es",)).items()} == {"": "es"}
    assert {name: made.lesson.language for name, made in editions(lesson, ("es", "en-US")).items()} == {
        "es/": "es",
        "en-US/": "en-US",
    }


def found_in(blocks, kind):
    """Give all boxes, or all pictures, wherever they stand."""
    found = []

    def look(part):
        if isinstance(part, kind):
            found.append(part)
        elif isinstance(part, tuple):
            for inner in part:
                look(inner)
        elif hasattr(part, "__dataclass_fields__"):
            for name in part.__dataclass_fields__:
                look(getattr(part, name))

    look(blocks)
    return found


@pytest.mark.parametrize("other", ["es", "en-GB"])
@pytest.mark.parametrize("name", ["worksheet-guided.pdf", "worksheet.pdf", "answer-key-stretch.pdf"])
def test_every_language_has_the_same_numbers_pictures_and_codes(other, name):
    lesson = proved_lesson(SEED_TRAYS)[0]
    one, two = (papers(made, "letter", "regular") for made in (lesson, said_in(lesson, other)))
    assert one.documents[name].code == two.documents[name].code
    assert one.pictures == two.pictures
    pages = [blocks_of(made.documents[name].html) for made in (one, two)]
    for kind in (Box, Picture):
        told = [
            [part for part in found_in(page, kind) if getattr(part, "style", "") != "name-line"]
            for page in pages
        ]
        assert told[0] == told[1]
        assert len(told[0]) > 5


def test_the_set_of_several_languages_holds_each_in_a_folder_and_its_diagrams_once(tmp_path, picture_process):
    parts = frozenset((Part.TICKET, Part.DIAGRAMS))
    order = Order(out=tmp_path, paper="letter", parts=parts, languages=("es", "en-US"))
    made = make(SEED_TRAYS, order, picture_process, in_silence)
    folder = tmp_path / "seed-trays"
    tickets = [path.relative_to(folder).as_posix() for path in made.files if path.suffix == ".pdf"]
    assert sorted(tickets) == ["en-US/exit-ticket.pdf", "es/exit-ticket.pdf"]
    assert {path.parent for path in made.files if path.suffix == ".svg"} == {folder / "diagrams"}
    assert read_manifest(folder).origin.options["languages"] == "es,en-US"
    for language in ("es", "en-US"):
        with pikepdf.open(folder / language / "exit-ticket.pdf") as ticket:
            assert str(ticket.Root.Lang) == language


def spoken_on(path) -> set[str]:
    """Give the languages, other than the file's, in which pupils' pages of a file are marked to be read."""
    return {section.language for section in heard(path).all("Sect")}


@pytest.mark.parametrize("name", ["seed-trays", "sail-cloth"])
def test_a_pupil_reads_a_language_of_his_own_and_the_key_is_the_teachers(
    name, tmp_path, crew, picture_process
):
    """Sail cloth has an item in the teacher's own words, with a unit."""
    lesson = proved_lesson(LESSONS / f"{name}.toml")[0]
    ann = Pupil("Ann", Level.CORE)
    made = {}
    for language in ("", "es"):
        pupils = (replace(ann, language=language),)
        made[language] = class_set(chooser_of(lesson, picture_process), pupils, crew, in_silence)
        (tmp_path / f"{language}.pdf").write_bytes(made[language].worksheets)
    assert made[""].key == made["es"].key
    assert spoken_on(tmp_path / ".pdf") == {""}
    assert spoken_on(tmp_path / "es.pdf") == {"es"}
    codes = [text_of(tmp_path / f"{language}.pdf")[0].split()[-1] for language in ("", "es")]
    assert codes[0] == codes[1]


def test_the_authors_own_words_are_marked_where_the_pages_speak_another_language():
    lesson = proved(*EIGHTHS, title="Seed trays", notes=("Fold once.",))
    said = papers(said_in(lesson, "es"), "letter", "regular").documents
    title = '<span lang="en-US">Seed trays</span>'
    for name in ("worksheet.pdf", "answer-key.pdf", "exit-ticket.pdf", "teacher-plan.pdf"):
        assert title in said[name].html
    assert '<span lang="en-US">Fold once.</span>' in said["teacher-plan.pdf"].html
    assert said_in(lesson, "en-US") == said_in(lesson, None) == lesson


def test_standards_are_told_in_the_plans_language_and_their_names_and_notices_are_marked_as_english():
    lesson = proved(*EIGHTHS, "open", practice=("2/3 × 4/5",))
    plans = {
        language: papers(said_in(lesson, language), "letter", "regular").documents["teacher-plan.pdf"].html
        for language in ("es", "en-GB")
    }
    assert "Multiplicar una fracción por una fracción, como tomar una parte de una parte." in plans["es"]
    assert '<span lang="en">Common Core State Standards</span>' in plans["es"]
    assert "National curriculum in England" in plans["en-GB"]
    assert 'lang="en"' not in plans["en-GB"]


def plan_in(pages_language, **told):
    """Give the plan of a lesson of grade 5 that was written in American English, or as ``told``."""
    lesson = proved(*EIGHTHS, "open", practice=("2/3 × 4/5",), **{"grade": 5, **told})
    return papers(said_in(lesson, pages_language), "letter", "regular").documents["teacher-plan.pdf"].html


def test_a_british_plan_names_englands_curriculum_and_the_year_of_the_same_age():
    """Grade 5 is Year 6, the year that multiplies pairs of fractions, on American paper too."""
    british = plan_in("en-GB")
    assert "Year 6." in british
    assert "Open Government Licence" in british
    assert "Multiply simple pairs of proper fractions" in british
    assert "Common Core" not in british
    american = plan_in("en-US", language="en-GB", grade=6)
    assert "Grade 5." in american
    assert "5.NF.B.4" in american


@pytest.mark.parametrize(
    ("standards", "named"), [("ccss", "5.NF.B.4"), ("england", "Open Government Licence")]
)
def test_standards_that_the_lesson_names_are_named_in_every_language(standards, named):
    grade = 6 if standards == "england" else 5
    for language in ("en-US", "en-GB", "es"):
        plan = plan_in(language, standards=Followed(standards), grade=grade)
        assert named in plan
        assert f" {grade}." in plan


def test_a_set_in_another_tongue_says_once_which_texts_stay_as_they_were_written(tmp_path, picture_process):
    order = Order(out=tmp_path, paper="letter", parts=frozenset((Part.TICKET,)), languages=("es", "en-GB"))
    lesson = tmp_path / "sails.toml"
    text = (LESSONS / "sail-cloth.toml").read_text(encoding="utf-8")
    lesson.write_text(text.partition("# The same words")[0], encoding="utf-8")
    (told,) = make(lesson, order, picture_process, in_silence).notes
    assert str(told) == (
        "the title, the notes and your own items stay in the lesson file's own language (en-US); to change "
        "them, write them in the file under [translated.es], beside the words there are"
    )


@pytest.mark.parametrize("path", sorted(LESSONS.glob("*.toml")), ids=lambda path: path.stem)
def test_our_lessons_say_all_that_a_teacher_reads_in_spanish_with_the_same_codes_and_numbers(path):
    lesson = proved_lesson(path)[0]
    spanish = said_in(lesson, "es")
    assert told_of_own_words(spanish.lesson) == ()
    assert spanish.lesson.vocabulary == ()
    for level in Level:
        one, other = (sheet_at(level, made) for made in (lesson, spanish))
        assert one.code == other.code
        for seed in (None, 3):
            one, other = (choose(made, level, seed=seed) for made in (lesson, spanish))
            assert [str(item.answer) for item in one] == [str(item.answer) for item in other]


SPANISH = {
    "Seed  trays": "Bandejas",
    "Fold once.": "Doblar una vez.",
    "seam": "costura",
    "A bed is 1/2 planted. How much of 3/4 is that?": "Un cantero tiene 1/2 sembrado. ¿Cuánto de 3/4 es?",
}


def in_two_languages(**told):
    """Give a lesson whose file has its words in Spanish too."""
    item = WrittenItem(
        own("A bed is 1/2 planted. How much of 3/4 is that?", "1/2 × 3/4", "of it"), tuple(Level)
    )
    words = {"notes": ("Fold once.", "Fold twice."), "vocabulary": ("seam",), "items": (item,)}
    return proved(*EIGHTHS, "open", **{**words, "translated": {"es": SPANISH}, **told})


def test_an_authors_words_are_said_as_her_file_has_them_and_others_are_marked_as_her_own():
    lesson = said_in(in_two_languages(), "es").lesson
    assert (lesson.title, lesson.notes) == ("Bandejas", ("Doblar una vez.", "Fold twice."))
    assert (lesson.trade_words, lesson.vocabulary) == (("costura",), ())
    (item,) = lesson.items_of(Level.CORE)
    assert (str(item.text), str(item.unit)) == (
        SPANISH["A bed is 1/2 planted. How much of 3/4 is that?"],
        "of it",
    )
    plan = papers(said_in(in_two_languages(), "es"), "letter", "regular").documents["teacher-plan.pdf"].html
    assert '<span lang="en-US">Fold twice.</span>' in plan
    assert "<span" not in plan.partition("Fold twice")[0].rpartition("Doblar una vez.")[0][-200:]
    (told,) = told_of_own_words(lesson)
    assert str(told).startswith("the notes stay in")


def test_in_her_own_language_they_are_as_she_wrote_them_after_whatever_other():
    first = in_two_languages()
    again = said_in(said_in(first, "es"), "en-US").lesson
    assert (again.title, again.notes, again.items) == (
        first.lesson.title,
        first.lesson.notes,
        first.lesson.items,
    )
    assert not again.written_in


def test_a_file_that_has_its_words_in_the_language_of_its_pages_is_said_in_them_without_being_asked():
    english = in_two_languages()
    spanish = replace(english, lesson=replace(english.lesson, language="es"))
    said = said_in(spanish, None).lesson
    assert (said.title, said.trade_words) == ("Bandejas", ("costura",))
    assert said.notes == ("Doblar una vez.", "Fold twice.")
    assert next(str(note) for note in told_of_own_words(said)).startswith("the notes stay in")
    again = said_in(said_in(spanish, None), "en-US").lesson
    assert (again.title, again.notes, again.written_in) == (english.lesson.title, english.lesson.notes, "")
    codes = {sheet_at(Level.CORE, made).code for made in (spanish, said_in(spanish, None))}
    assert len(codes) == 1


def test_without_words_in_its_own_language_a_lesson_is_said_as_it_is_written():
    lesson = in_two_languages()
    assert said_in(lesson, None) is said_in(lesson, "en-US") is lesson


def test_a_spanish_lesson_is_said_in_english_as_its_file_has_it_and_so_in_british_where_that_has_no_words():
    words = {"Bandejas": "Trays", "Doblar una vez.": "Fold once."}
    told = {"title": "Bandejas", "notes": ("Doblar una vez.",), "items": (), "vocabulary": ("parte",)}
    british = {"Bandejas": "Seed trays"}
    for tables, titles in (
        ({"en-US": words}, ["Trays", "Trays"]),
        ({"en-US": words, "en-GB": british}, ["Trays", "Seed trays"]),
    ):
        lesson = in_two_languages(**{**told, "language": "es", "translated": tables})
        said = [said_in(lesson, language).lesson for language in ("en-US", "en-GB")]
        assert [one.title for one in said] == titles
        assert [one.written_in for one in said] == ["es", "es"]
        assert said[0].notes == ("Fold once.",)
        assert said[0].trade_words == ("panel",)
        assert said_in(lesson, None) is lesson


def test_pages_are_chosen_and_known_by_the_words_of_the_file_in_every_language():
    plain, translated = (in_two_languages(**told) for told in ({"translated": {}}, {}))
    for level in Level:
        codes = {sheet_at(level, made).code for made in (plain, translated, said_in(translated, "es"))}
        assert len(codes) == 1


def test_words_of_a_language_that_the_lesson_has_no_longer_are_told_of():
    astray = in_two_languages(title="Seed beds")
    told = [str(note) for note in told_of_own_words(said_in(astray, "es").lesson)]
    assert told[0].startswith("the title and the notes stay")
    assert told[1:] == ["under [translated.es] stands what this lesson says nowhere: Seed trays"]


@pytest.mark.parametrize(
    ("told", "texts"),
    [({}, "the title stays"), ({"notes": ("Fold once.",)}, "the title and the notes stay")],
)
def test_only_texts_that_the_lesson_has_are_said_to_stay(told, texts):
    (note,) = told_of_own_words(said_in(proved(*EIGHTHS, **told), "es").lesson)
    assert texts in str(note)


def test_a_lesson_said_anew_in_another_language_keeps_no_trace_of_the_first():
    lesson = proved(*EIGHTHS, "open", grade=5)
    british, spanish = (said_in(lesson, language) for language in ("en-GB", "es"))
    assert said_in(spanish, "en-GB").lesson.named_standards is Followed.ENGLAND
    assert said_in(british, "es").lesson.named_standards is Followed.CCSS


def test_words_of_the_trade_are_said_in_the_pages_language_and_the_authors_own_stay():
    told = {"panel": "частина", "eighth": "восьма", "seam": "шов"}
    lesson = proved(*EIGHTHS, vocabulary=["panel", "eighth", "fourth", "seam"], words=told)
    spanish, british = (said_in(lesson, language).lesson for language in ("es", "en-GB"))
    assert spanish.trade_words == ("parte", "octavo", "cuarto")
    assert spanish.vocabulary == ("seam",)
    assert spanish.words == {"panel": "частина", "octavo": "восьма", "seam": "шов"}
    assert british.trade_words == ("panel", "eighth", "quarter")
    again = said_in(said_in(lesson, "es"), "en-GB").lesson
    assert (again.trade_words, again.vocabulary) == (british.trade_words, british.vocabulary)


def test_home_words_are_marked_with_the_language_that_the_lesson_names():
    told = {"words": {"panel": "частина"}}
    marked = html(sheet_at(Level.GUIDED, proved(*EIGHTHS, home_language="uk", **told)), "regular", key=False)
    plain = html(sheet_at(Level.GUIDED, proved(*EIGHTHS, **told)), "regular", key=False)
    assert '<span lang="uk" dir="auto">частина</span>' in marked
    assert "частина" in plain
    assert "<span lang" not in plain
