"""A class is typed a pupil a line, as teachers write lists; what cannot be read is told where it stands."""

import re
from html import unescape

import pytest

from foldmath.desk.classes.class_lists import as_list
from foldmath.desk.classes.typed_lists import typed_pupils
from foldmath.lesson.roster import RosterRefused, roster_in
from foldmath.statements.items import Level

GUIDED, CORE, STRETCH = Level.GUIDED, Level.CORE, Level.STRETCH


def of_one(line):
    (pupil,) = typed_pupils(line, "4b")
    return pupil.label, pupil.level


@pytest.mark.parametrize(
    ("line", "label", "level"),
    [
        ("Ann", "Ann", CORE),
        (" Ann Oak , guided ", "Ann Oak", GUIDED),
        ("Ann,STRETCH", "Ann", STRETCH),
        ("Ann,", "Ann", CORE),
        ("Ann; guided", "Ann", GUIDED),
        ("Ann\tguided", "Ann", GUIDED),
        ("García, Ana", "García, Ana", CORE),
        ("García López, Ana María, guided", "García López, Ana María", GUIDED),
        ("García, Ana; guided", "García, Ana", GUIDED),
        ("Oak, Corey", "Oak, Corey", CORE),
        ("Oak, Guido", "Oak, Guido", CORE),
        ("王, 芳", "王, 芳", CORE),
        ('"Oak, ann"', "Oak, ann", CORE),
        ('"Oak, ann", stretch', "Oak, ann", STRETCH),
        ('Ann "Nan" Oak', 'Ann "Nan" Oak', CORE),
        ("García, Ana, Con apoyo", "García, Ana", GUIDED),
        ("Ana; básico", "Ana", CORE),
        ("Ana, con reto", "Ana", STRETCH),
    ],
)
def test_a_line_is_a_name_and_a_level_or_none(line, label, level):
    assert of_one(line) == (label, level)


@pytest.mark.parametrize(
    ("line", "label", "level", "language"),
    [
        ("Inés, guided, Spanish", "Inés", GUIDED, "es"),
        ("Inés, español, con apoyo", "Inés", GUIDED, "es"),
        ("Inés, es", "Inés", CORE, "es"),
        ("García, Inés; stretch; Español", "García, Inés", STRETCH, "es"),
        ("Ann, core, English", "Ann", CORE, "en"),
        ("Ann, British English", "Ann", CORE, "en-GB"),
        ("English, Ann", "English, Ann", CORE, ""),
        ('"Inés, Spanish"', "Inés, Spanish", CORE, ""),
    ],
)
def test_a_language_may_stand_behind_the_name_too(line, label, level, language):
    (pupil,) = typed_pupils(line, "4b")
    assert (pupil.label, pupil.level, pupil.language) == (label, level, language)


@pytest.mark.parametrize(
    "text",
    [
        "Name\tLevel\tLanguage\nAnn\tguided\t\nInés\t\tSpanish",
        "name,level,language\nAnn,guided,\nInés,,es",
        "\nNombre;Nivel;Idioma\nAnn;con apoyo;\n\nInés;;español\n",
        "level,born,name,language\nguided,2016,Ann,\n,2015,Inés,es",
    ],
)
def test_a_list_copied_with_its_heads_is_read_as_the_spreadsheet_means_it(text):
    ann, ines = typed_pupils(text, "4b")
    assert (ann.label, ann.level, ann.language) == ("Ann", GUIDED, "")
    assert (ines.label, ines.level, ines.language) == ("Inés", CORE, "es")


def test_heads_alone_make_no_pupil_and_a_slip_below_them_is_told_by_its_line():
    with pytest.raises(RosterRefused) as refused:
        typed_pupils("name,level\nAnn,gided", "4b")
    (problem,) = refused.value.problems
    assert (problem.line, problem.cell, str(problem.hint)) == (2, "", "guided")
    with pytest.raises(RosterRefused):
        typed_pupils("name,level\n", "4b")


@pytest.mark.parametrize(("line", "hint"), [("Inés, core, Spansh", "spanish"), ("Inés, core, French", "es")])
def test_behind_a_level_stands_a_language_and_no_name(line, hint):
    with pytest.raises(RosterRefused) as refused:
        typed_pupils(f"Bo\n{line}", "4b")
    (problem,) = refused.value.problems
    assert (problem.line, "this language is none of" in str(problem.message)) == (2, True)
    assert str(problem.hint).endswith(hint)


@pytest.mark.parametrize(
    ("line", "word", "offered"),
    [
        ("Ann, gided", "gided", "guided after"),
        ("Ann, Gided", "Gided", "guided after"),
        ("Ann, expert", "expert", "guided, core or stretch after"),
        ("Oak, ann", "ann", '"Oak, ann"'),
        ("Ann, 3", "3", "guided, core or stretch after"),
        ("Ana, con apollo", "con apollo", "con apoyo after"),
        ("Ann; Bo", "Bo", '"Ann; Bo"'),
        ("García, Ana; Bea", "Bea", "guided, core or stretch after"),
        ("Ana, expert, Spanish", "expert", "guided, core or stretch after"),
        ("Ana, Spansh", "Spansh", "guided, core or stretch after"),
    ],
)
def test_what_may_be_a_level_misspelt_is_told_with_its_line_and_how_to_write_it(line, word, offered):
    with pytest.raises(RosterRefused) as refused:
        typed_pupils(f"Bo\n\n{line}\nCem", "4b")
    (problem,) = refused.value.problems
    assert (problem.line, problem.words, problem.cell) == (3, line, "")
    assert (str(problem.message), offered in str(problem.hint)) == (f'"{word}" is no level', True)


def test_all_lines_that_cannot_be_read_are_told_at_once():
    with pytest.raises(RosterRefused) as refused:
        typed_pupils("Ann, gided\nBo\n\x1b[31m\n, core", "4b")
    assert [problem.line for problem in refused.value.problems] == [1, 3, 4]


def test_a_kept_class_is_read_again_as_it_was_typed():
    pupils = typed_pupils('García, Ana\nAnn "Nan" Oak; guided\nBo\nBo, stretch, es', "4b")
    assert roster_in(as_list(pupils), "4b.csv") == pupils


TYPED = {"class": "4 b", "pupils": "Ada Reed\nBo Marsh, expert", "keep": "1"}


def in_the_form(page):
    """Give what stands in the form of a class."""
    (pupils,) = re.findall(r'<textarea name="pupils"[^>]*>\n(.*?)</textarea>', page, re.DOTALL)
    (called,) = re.findall(r'<input name="class"[^>]* value="([^"]*)"', page)
    kept = re.search(r'name="keep" value="1" checked', page)
    return {"class": called, "pupils": unescape(pupils), "keep": "1" if kept else ""}


@pytest.mark.parametrize("place", ["class", "mark"])
def test_one_line_that_is_refused_leaves_all_that_was_typed_in_its_form(visitor, desk, seed_trays, place):
    answer = visitor.post(f"/lesson/seed-trays/{place}", data={"token": desk.form, **TYPED})
    assert answer.status_code == 422
    assert in_the_form(answer.text) == TYPED
    assert "line 2" in answer.text
    assert "Bo Marsh, expert" in re.search(r'role="alert".*?</ul>', answer.text, re.DOTALL)[0]
    assert [path.name for path in desk.folder.iterdir()] == ["seed-trays.toml"]


@pytest.mark.parametrize(("count", "status"), [("2", 200), ("3", 422), ("", 200)])
def test_a_number_beside_names_must_be_theirs(visitor, desk, seed_trays, count, status):
    form = {"token": desk.form, "pupils": "Ada Reed\nBo Marsh", "count": count}
    answer = visitor.post("/lesson/seed-trays/mark", data=form)
    assert answer.status_code == status
    assert (
        f'name="count" type="number" min="1" max="60" inputmode="numeric" value="{count}"' in answer.text
    ) == (status == 422)


def test_a_kept_class_and_names_beside_it_are_not_taken_for_each_other(visitor, desk, seed_trays):
    form = {"token": desk.form, "class": "4b", "pupils": "Ada Reed", "keep": "1"}
    assert visitor.post("/lesson/seed-trays/mark", data=form).status_code == 200
    twice = visitor.post("/lesson/seed-trays/mark", data={**form, "kept": "4b", "pupils": "Bo Marsh"})
    assert (twice.status_code, "twice" in twice.text, "<option selected>4b" in twice.text) == (
        422,
        True,
        True,
    )
