"""Class lists as spreadsheets write them, quirks and all; what cannot be used is named with its line."""

import unicodedata

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from foldmath.errors import MOST_SHOWN, FoldmathError, Problem
from foldmath.lesson.files.spreadsheet import LARGEST_FILE, LONGEST_LINE, cell_name
from foldmath.lesson.roster import (
    LONGEST_LABEL,
    MOST_PUPILS,
    Pupil,
    RosterRefused,
    read_roster,
)
from foldmath.statements.items import Level
from foldmath.words.authored import table
from foldmath.words.languages import kin, languages
from foldmath.words.saying import say_error

GUIDED, CORE, STRETCH = Level.GUIDED, Level.CORE, Level.STRETCH
THREE = [("Ann", GUIDED), ("Zoë", CORE), ("Łuk", STRETCH)]
LIST = "name,level\nAnn,guided\nZoë,core\nŁuk,stretch\n"


def roster(tmp_path, content) -> list[tuple[str, Level]]:
    """Read a class list from a text or from bytes."""
    path = tmp_path / "class.csv"
    path.write_bytes(content if isinstance(content, bytes) else content.encode())
    return [(pupil.label, pupil.level) for pupil in read_roster(path)]


def problems(tmp_path, content) -> list[Problem]:
    """Give what is wrong with a class list."""
    with pytest.raises(RosterRefused) as caught:
        roster(tmp_path, content)
    assert caught.value.problems
    assert isinstance(caught.value, FoldmathError)
    assert str(caught.value) == "\n".join(str(problem) for problem in caught.value.problems)
    assert all(problem.file.endswith("class.csv") for problem in caught.value.problems)
    return caught.value.problems


def test_a_pupil_has_a_label_and_a_level_and_is_told_apart(tmp_path):
    path = tmp_path / "class.csv"
    path.write_text(LIST, encoding="utf-8")
    assert read_roster(path) == (
        Pupil("Ann", GUIDED, 1),
        Pupil("Zoë", CORE, 1),
        Pupil("Łuk", STRETCH, 1),
    )


def test_a_pupil_may_have_a_language_and_without_one_has_the_lessons(tmp_path):
    path = tmp_path / "class.csv"
    path.write_text("name,level,language\nAnn,core,es\nBo,core,\nCem,core,en-gb\nDia,core,es_MX\n")
    pupils = read_roster(path)
    assert [pupil.language for pupil in pupils] == ["es", "", "en-GB", "es"]


def test_a_language_may_be_called_by_its_name_in_any_of_our_languages(tmp_path):
    path = tmp_path / "class.csv"
    names = ["Spanish", "español", "English", "INGLÉS", "English (UK)", "en"]
    path.write_text("name,language\n" + "".join(f"Ann,{name}\n" for name in names), encoding="utf-8")
    assert [pupil.language for pupil in read_roster(path)] == ["es", "es", "en", "en", "en-GB", "en"]


@pytest.mark.parametrize("separator", [",", ";"])
def test_a_list_in_spanish_is_read_as_the_same_list_in_english(tmp_path, separator):
    text = (
        "nivel,nombre,idioma\nCon apoyo,Ana,\nBÁSICO,Beto,es\nbásica,Cira,\ncon  reto,Darío,en-US\n,Elsa,\n"
    )
    path = tmp_path / "clase.csv"
    path.write_text(text.replace(",", separator), encoding="utf-8")
    read = [(pupil.label, pupil.level, pupil.language) for pupil in read_roster(path)]
    assert read == [
        ("Ana", GUIDED, ""),
        ("Beto", CORE, "es"),
        ("Cira", CORE, ""),
        ("Darío", STRETCH, "en-US"),
        ("Elsa", CORE, ""),
    ]


def test_words_of_two_languages_may_stand_in_one_list(tmp_path):
    assert roster(tmp_path, "nombre,level\nAna,con apoyo\nBo,stretch\n") == [("Ana", GUIDED), ("Bo", STRETCH)]


def test_a_refusal_tells_the_words_of_the_readers_language(tmp_path):
    path = tmp_path / "clase.csv"
    path.write_text("nombre,nivel\nAna,3\n", encoding="utf-8")
    with pytest.raises(RosterRefused) as refused:
        read_roster(path)
    assert "con apoyo, básico, con reto" in say_error(refused.value, "es")
    assert "pruebe: con apoyo, básico o con reto" in say_error(refused.value, "es")


def test_no_word_of_a_class_list_means_two_things_in_two_languages():
    for kind in ("columns", "levels", "languages"):
        tables = [table(language, "typed.toml")[kind] for language in languages() if not kin(language)]
        words = [word for named in tables for ways in named.values() for word in ways]
        assert len(set(words)) == len(words)
        assert all(word == word.casefold() for word in words)


@pytest.mark.parametrize(
    ("list_", "line", "hint"),
    [
        ("name,language\nAnn,en-UK\n", 2, "en-US"),
        ("name,language\nAnn,Klingon\n", 2, "en-US, en-GB, es"),
        ("name,language\nAnn,Spansh\n", 2, "spanish"),
        ("name,langauge\nAnn,es\n", 1, "name,language"),
        ("name,language,language\nAnn,es,es\n", 1, "give one of them another name"),
    ],
)
def test_a_language_without_pages_is_refused_and_the_nearest_is_offered(tmp_path, list_, line, hint):
    (problem,) = problems(tmp_path, list_)
    assert (problem.line, str(problem.hint)) == (line, hint)


@pytest.mark.parametrize(
    "encoding", ["utf-8", "utf-8-sig", "utf-16", pytest.param("utf-16-be", id="utf-16-be with its mark")]
)
@pytest.mark.parametrize("separator", [",", ";", "\t"], ids=["comma", "semicolon", "tab"])
@pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r"], ids=["LF", "CRLF", "CR"])
def test_every_encoding_separator_and_line_end_reads_alike(tmp_path, encoding, separator, line_end):
    text = LIST.replace(",", separator).replace("\n", line_end)
    mark = "\ufeff" if encoding == "utf-16-be" else ""
    assert roster(tmp_path, (mark + text).encode(encoding)) == THREE


@pytest.mark.parametrize(
    "text",
    [
        pytest.param(LIST.rstrip("\n"), id="no end to the last line"),
        pytest.param("sep=,\n" + LIST, id="the separator said outright"),
        pytest.param("\n\n" + LIST, id="blank lines before the header"),
        pytest.param(LIST.replace("\n", "\n\n") + "\n\n", id="blank lines between rows"),
        pytest.param(LIST + ",\n  ,  \n,,,,\n", id="blank rows of separators at the end"),
        pytest.param(LIST.replace("name,level", " NAME , Level "), id="capitals and spaces in the header"),
        pytest.param(LIST.replace("name", "Label"), id="a label for a name"),
        pytest.param(LIST.replace("name", "\ufeffname"), id="a mark before the first word"),
        pytest.param(LIST.replace("core", ""), id="an empty level"),
        pytest.param(LIST.replace(",core", ""), id="a row without its last field"),
        pytest.param(LIST.replace("guided", " Guided "), id="a level in capitals and spaces"),
        pytest.param(
            '"name","level"\n"Ann","guided"\n"Zoë","core"\n"Łuk","stretch"\n', id="quotes everywhere"
        ),
        pytest.param(LIST.replace("Ann,", "Ann, "), id="a space after the comma"),
        pytest.param('name, level\n"Ann", "guided"\nZoë, core\nŁuk, stretch', id="quotes after a space"),
        pytest.param(
            "level;x;name\nguided;1;Ann\ncore;2,5;Zoë\nstretch;;Łuk\n", id="other columns and order"
        ),
        pytest.param(LIST.replace("level\n", "level,,\n"), id="columns without a name"),
        pytest.param(LIST.replace("Zoë", "Zoe\u0308"), id="letters and marks apart"),
        pytest.param(LIST.replace("Ann", "\u00a0Ann "), id="spaces that do not break"),
    ],
)
def test_quirks_of_spreadsheets_make_no_difference(tmp_path, text):
    assert roster(tmp_path, text) == THREE


def test_a_quoted_comma_belongs_to_the_name(tmp_path):
    assert roster(tmp_path, 'name,level\n"Oak, Ann",core\n') == [("Oak, Ann", CORE)]


def test_a_doubled_quote_inside_quotes_is_one(tmp_path):
    assert roster(tmp_path, 'name\n"Ann ""Nan"" Oak"\n') == [('Ann "Nan" Oak', CORE)]


def test_a_list_of_names_alone_is_all_core(tmp_path):
    assert roster(tmp_path, "name\nAnn Oak\nBen Elm\n") == [("Ann Oak", CORE), ("Ben Elm", CORE)]


def test_a_label_is_printed_for_a_name_where_both_are_there(tmp_path):
    assert roster(tmp_path, "name,label,level\nAnn Oak,A7,guided\n") == [("A7", GUIDED)]


def test_pupils_may_share_a_name(tmp_path):
    assert roster(tmp_path, "name\nAnn\nAnn\n") == [("Ann", CORE)] * 2


def test_lines_are_counted_as_an_editor_counts_them(tmp_path):
    path = tmp_path / "class.csv"
    path.write_bytes(b"sep=;\r\n\r\nname;level\r\n\r\nAnn;cor\r\n;;\r\nBen;cor\r\n")
    with pytest.raises(RosterRefused) as caught:
        read_roster(path)
    assert [problem.line for problem in caught.value.problems] == [5, 7]


def test_pupils_of_one_name_are_told_apart_by_their_order(tmp_path):
    path = tmp_path / "class.csv"
    path.write_text("name\nAna\nBo\nAna\nAna\n", encoding="utf-8")
    assert [pupil.namesake for pupil in read_roster(path)] == [1, 1, 2, 3]


@pytest.mark.parametrize(
    ("content", "line", "message", "hint"),
    [
        ("", 0, "this file is empty", "name,level"),
        (" \n\n", 0, "this file is empty", "name,level"),
        (";;\n;;\n", 0, "this list is empty", "name,level"),
        ("name,level\n", 0, "this list has no students", "one student on each line"),
        ("Ann,core\nBen,core\n", 1, "no column called name or label", "name,level"),
        ("nmae,level\nAnn,core\n", 1, "no column called name or label", "name,level"),
        ("\nnames,level\nAnn,core\n", 2, "no column called name or label", "name,level"),
        ("name,levels\nAnn,core\n", 1, "no column is called level, and one is called levels", "name,level"),
        ("name,name\nAnn,Oak\n", 1, "two columns are called name", "another name"),
        ("name,level,Level\nAnn,core,core\n", 1, "two columns are called level", "another name"),
        ("name,level\nAnn,gided\n", 2, "none of guided, core, stretch", "guided"),
        ("name,level\nAnn,strech\n", 2, "none of guided, core, stretch", "stretch"),
        ("name,level\nAnn,3\n", 2, "none of guided, core, stretch", "guided, core or stretch"),
        ("name,level\nAnn,expert\n", 2, "none of guided, core, stretch", "guided, core or stretch"),
        ("name,nombre\nAnn,Ann\n", 1, "the columns name and nombre mean the same", "another name"),
        ("nombre,Nivel,level\nAnn,,\n", 1, "the columns nivel and level mean the same", "another name"),
        ("nombre,nibel\nAnn,\n", 1, "no column is called nivel, and one is called nibel", "nombre,nivel"),
        ("nonbre,nivel\nAnn,\n", 1, "no column called name or label", "nombre,nivel"),
        ("nombre,nivel\nAnn,con apollo\n", 2, "none of guided, core, stretch", "con apoyo"),
        ("nombre,nivel\nAnn,rreto\n", 2, "none of guided, core, stretch", "reto"),
        ("name,level\n,core\n", 2, "this row has no name", "take the row out"),
        ("label,name\n,Ann\n", 2, "this row has no name", "take the row out"),
        ("name,level\nOak, Ann,core\n", 2, "more fields than the header", '"Oak, Ann"'),
        ("name\nOak, Ann\n", 2, "more fields than the header", '"Oak, Ann"'),
        ('name,level\n"Ann\nOak",core\n', 2, "a quoted field runs on over 2 lines", "on one line"),
        ('name,level\n"Ann,core\nBen,core\n', 2, "a quote is not closed", "close the quote"),
        ('name,level\n"Ann" Oak,core\n', 2, "a quote stands in the middle", '""Nan""'),
        ('"name\nlevel"\nAnn\n', 1, "a quoted field runs on over 2 lines", "on one line"),
        (
            f"name\n{'n' * (LONGEST_LABEL + 1)}\n",
            2,
            f"this name has {LONGEST_LABEL + 1} characters",
            "shorter",
        ),
        (b"name,level\nAnn,core\nZo\xeb,core\n", 3, "this name is not UTF-8 text", "CSV UTF-8"),
        (b"PK\x03\x04 and so on", 0, "this is a workbook", "CSV UTF-8"),
        (b"\xd0\xcf\x11\xe0 and so on", 0, "this is a workbook", "CSV UTF-8"),
        ("name,level\nAnn,core\n".encode("utf-16-le"), 0, "bytes of zero", "CSV UTF-8"),
        (b"\xff\xfen\0a", 0, "this file is not whole UTF-16 text", "CSV UTF-8"),
        (b"name\n" + b"Ann\n" * (LARGEST_FILE // 4 + 1), 0, "larger than 1 MB", "shorter list"),
        ("name\n" + "n" * 140_000 + "\n", 2, f"more than {LONGEST_LINE:,} characters", "on one line"),
        ('name\n"' + "n" * 140_000 + "\n", 2, f"more than {LONGEST_LINE:,} characters", "on one line"),
        ("name\n" + "Ann\n" * (MOST_PUPILS + 1), 0, f"at most {MOST_PUPILS} students", "shorter list"),
    ],
    ids=lambda value: repr(value)[:30],
)
def test_what_cannot_be_used_is_named_with_its_line_and_a_remedy(tmp_path, content, line, message, hint):
    (problem,) = problems(tmp_path, content)
    assert problem.line == line
    assert message in str(problem.message)
    assert hint in str(problem.hint)


@pytest.mark.parametrize(
    ("content", "cell", "column"),
    [
        ("name,level\nAnn,gided\n", "B2", 5),
        ("level;name\ncore;\n", "B2", 6),
        ('town\t"name"\tlevel\n"Bay\tCity"\t Ann\tgided\n', "C2", 17),
        ("a,b,c\nlevel,name\n", "", 0),
        ("name,level\n\n\nOak, Ann, core\n", "C4", 11),
        (",".join(f"c{number}" for number in range(30)) + ",name\n" + "," * 29 + "x,\n", "AE2", 32),
    ],
)
def test_a_slip_is_placed_by_its_cell_and_its_column(tmp_path, content, cell, column):
    (problem,) = problems(tmp_path, content)
    assert (problem.cell, problem.column) == (cell, column)
    assert (f":{problem.line}:{column}, cell {cell}: " in str(problem)) is bool(cell)


def test_columns_are_named_as_spreadsheets_name_them():
    assert [cell_name(field, 7) for field in (0, 25, 26, 51, 52, 701, 702)] == [
        "A7",
        "Z7",
        "AA7",
        "AZ7",
        "BA7",
        "ZZ7",
        "AAA7",
    ]


def test_twenty_slips_are_shown_and_the_others_counted(tmp_path):
    path = tmp_path / "roster.csv"
    for count, ending in (
        (MOST_SHOWN, "try:  guided"),
        (MOST_SHOWN + 1, "and 1 more mistake"),
        (9_000, "mistakes"),
    ):
        path.write_text("name,level\n" + "Ann,gided\n" * count, encoding="utf-8")
        with pytest.raises(RosterRefused) as refused:
            read_roster(path)
        assert len(refused.value.problems) == count
        for shown in (str(refused.value), say_error(refused.value, "en-US")):
            assert shown.count("this level is none of") == min(count, MOST_SHOWN)
            assert shown.endswith(ending)
            assert len(shown) < 5_000


@pytest.mark.parametrize("sign", ["\x1b", "\u202e", "\u200b", "\ue000", "\ufdd0"])
def test_a_name_with_signs_that_have_no_shape_is_refused_with_its_line(tmp_path, sign):
    (problem,) = problems(tmp_path, f"name\nann\nB{sign}N\ncleo\n")
    assert problem.line == 3
    assert "no shape" in str(problem.message)


def test_names_are_composed_without_outer_spaces_and_without_marks_of_direction(tmp_path):
    text = "name\n  Zoe\u0308   Oak \n\u200fשרה\u200f\nخوش\u200cآمد\n"
    assert [label for label, _ in roster(tmp_path, text)] == ["Zoë Oak", "שרה", "خوش\u200cآمد"]


def test_all_slips_are_told_at_once_in_the_order_of_the_file(tmp_path):
    text = 'name,level\nAnn,gided\n"Ben,core\n,core\nCleo,core\nOak, Dan,core\nE\u202eLI,core\n'
    found = problems(tmp_path, text)
    assert [problem.line for problem in found] == [2, 3, 4, 6, 7]


def test_bytes_that_are_no_text_do_no_harm_in_columns_that_are_passed_over(tmp_path):
    assert roster(tmp_path, b"name,town\nAnn,K\xf6ln\n") == [("Ann", CORE)]


def test_words_shown_steer_no_terminal(tmp_path):
    (problem,) = problems(tmp_path, "name\nAnn\x1b[31m\u202e\n")
    assert "\x1b" not in str(problem)
    assert "\u202e" not in str(problem)


def test_a_missing_file_and_a_folder_are_told_apart(tmp_path):
    for path, message in [(tmp_path / "none.csv", "no such file"), (tmp_path, "a folder")]:
        with pytest.raises(RosterRefused, match=message):
            read_roster(path)


@given(st.binary(max_size=200))
@settings(max_examples=150)
def test_any_bytes_are_read_or_refused_in_plain_words(tmp_path_factory, content):
    path = tmp_path_factory.getbasetemp() / "any.csv"
    path.write_bytes(b"name,level\n" + content)
    found, pupils = [], ()
    try:
        pupils = read_roster(path)
    except RosterRefused as refusal:
        found = refusal.problems
    assert bool(found) != bool(pupils)
    assert all(problem.message and problem.hint for problem in found)
    assert all(pupil.label for pupil in pupils)


NAMES = st.text(st.characters(codec="utf-8", exclude_categories=["C", "Z", "M"]), min_size=1, max_size=20)


@given(names=st.lists(NAMES, min_size=1, max_size=5), separator=st.sampled_from(",;\t"))
@settings(max_examples=60)
def test_any_name_in_quotes_comes_back_as_it_was(tmp_path_factory, names, separator):
    path = tmp_path_factory.getbasetemp() / "names.csv"
    rows = ['"' + name.replace('"', '""') + '"' for name in names]
    path.write_text("\n".join([f"name{separator}level", *(f"{row}{separator}core" for row in rows)]), "utf-8")
    wanted = [unicodedata.normalize("NFC", name) for name in names]
    assert [pupil.label for pupil in read_roster(path)] == wanted
