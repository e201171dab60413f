"""``plan`` lists plans for people, and writes one of them as a lesson that works."""

import tomllib

import pytest

from foldmath.cli import main
from foldmath.cli.doors.planning import tell_plans
from foldmath.errors import CannotWrite, FoldmathError
from foldmath.lesson.files.wanted import FIRST_GRADE, LAST_GRADE
from foldmath.lesson.proving import prove
from foldmath.lesson.reading import read_lesson
from foldmath.planning.plan_lesson import GRADES


def test_each_plan_tells_its_figures_why_it_ranks_there_and_its_sentences(capsys):
    assert tell_plans("1/2 × 3/4", grade=6) == 0
    out = capsys.readouterr().out
    assert out.startswith("1/2 × 3/4: letter, landscape, grade 6, ")
    assert (
        "  1.  3 folds; 4 layers at most; smallest panel 2 3/4 × 4 1/4 in (70 × 108 mm); the worst panel"
        in out
    )
    assert "      why: fewest folds" in out
    assert "        1  fold the left edge to the right edge\n" in out
    assert out.endswith("No plan with fewer folds was left out.\n")


def test_only_as_many_plans_are_listed_as_asked_for(capsys):
    tell_plans("1/2 × 3/4", best=1)
    out = capsys.readouterr().out
    assert "  1.  " in out
    assert "  2.  " not in out


def test_the_figures_behind_a_plan_are_told_to_those_who_ask(capsys):
    tell_plans(None, panels=2, best=1)
    short = capsys.readouterr().out
    tell_plans(None, panels=2, best=1, with_details=True)
    long = capsys.readouterr().out
    assert "standard deviation" in long
    assert "standard deviation" not in short


def test_what_is_hard_for_hands_is_told_beside_the_plan(capsys):
    tell_plans(None, panels=2, stock="2 mm", best=1)
    assert "      careful at step 1: " in capsys.readouterr().out


@pytest.mark.parametrize(("choose", "grade", "paper"), [(1, 5, "letter"), (2, 4, "A4")])
def test_a_written_plan_is_a_lesson_that_can_be_proved(tmp_path, capsys, choose, grade, paper):
    file = tmp_path / "planned.toml"
    assert tell_plans("2/3 × 1/2", write=str(file), choose=choose, grade=grade, paper=paper) == 0
    assert f"wrote {file}" in capsys.readouterr().out
    lesson = read_lesson(file)
    assert (lesson.title, lesson.grade, lesson.paper) == ("Fold 2/3 × 1/2", grade, paper)
    assert [product.text for product in lesson.practice] == ["2/3 × 1/2"]
    panels = prove(lesson).states[-1].panels
    assert (len(panels), sum(panel.shaded == 2 for panel in panels)) == (6, 2)


@pytest.mark.parametrize(("language", "paper"), [("en-US", "letter"), ("en-GB", "A4"), ("es", "letter")])
def test_the_sheet_of_a_plan_is_the_usual_one_where_the_terminals_language_is_spoken(
    monkeypatch, tmp_path, language, paper
):
    monkeypatch.setenv("FOLDMATH_LANGUAGE", language)
    monkeypatch.chdir(tmp_path)
    assert main(["plan", "1/2 × 1/2", "--write", "half.toml"]) == 0
    assert read_lesson("half.toml").paper == paper


@pytest.mark.parametrize(("stock", "kept"), [("110-lb index", "110 lb index"), (None, None)])
def test_a_plan_is_written_for_the_paper_that_it_was_tried_on(tmp_path, stock, kept):
    file = tmp_path / "stiff.toml"
    tell_plans("1/2 × 1/2", write=str(file), stock=stock)
    assert tomllib.loads(file.read_text(encoding="utf-8")).get("stock") == kept


def test_plans_are_for_the_grades_that_lessons_are_for():
    assert (GRADES[0], GRADES[-1]) == (FIRST_GRADE, LAST_GRADE)


def test_a_plan_for_panels_is_written_without_shading(tmp_path, capsys):
    file = tmp_path / "panels.toml"
    tell_plans(None, panels=6, write=str(file))
    assert "shade" not in file.read_text(encoding="utf-8")
    assert len(prove(read_lesson(file)).states[-1].panels) == 6
    assert capsys.readouterr().err == ""


def test_where_creases_will_fall_is_drawn_for_those_who_ask(tmp_path, capsys):
    file = tmp_path / "creases.svg"
    tell_plans(None, panels=4, picture=str(file))
    assert f"\nwrote {file}" in capsys.readouterr().out
    assert b"<svg" in file.read_bytes()


def test_a_file_that_is_there_already_is_left_as_it_is(tmp_path, capsys):
    file = tmp_path / "mine.toml"
    file.write_text("mine", encoding="utf-8")
    with pytest.raises(CannotWrite, match="there already"):
        tell_plans("1/2 × 1/2", write=str(file))
    assert file.read_text(encoding="utf-8") == "mine"
    assert capsys.readouterr().out == ""


def test_the_lesson_and_the_picture_cannot_be_one_file(tmp_path, capsys):
    one, same = tmp_path / "plan.toml", tmp_path / "." / "plan.toml"
    with pytest.raises(CannotWrite, match="two files cannot have one name"):
        tell_plans("1/2 × 1/2", write=str(one), picture=str(same))
    assert not one.exists()
    assert capsys.readouterr().out == ""


@pytest.mark.parametrize(
    ("product", "options", "message"),
    [
        (None, {}, "say what to fold"),
        ("1/2 × 1/2", {"panels": 4}, "name one thing only"),
        (None, {"panels": 4, "sizes": "1/2, 1/2"}, "name one thing only"),
        ("24", {}, "--panels 24"),
        ("1/2 × 1/2", {"write": "plan.pdf"}, "--write plan.toml"),
        ("1/2 × 1/2", {"write": "two words"}, "--write 'two words.toml'"),
        ("1/2 × 1/2", {"picture": "bands.png"}, "--picture bands.svg"),
        ("1/2 × 1/2", {"grade": 7}, "--grade must be from 3 to 6"),
        ("1/2 × 1/2", {"max_layers": 1}, "at least 2 layers"),
        ("1/2 × 1/2", {"folds": 0}, "--folds must be 1 or more"),
        ("1/2 × 1/2", {"best": 0}, "--best must be from 1"),
        ("1/2 × 1/2", {"choose": 99}, "--choose must be from 1"),
        ("1/2 × 1/2", {"choose": 19, "write": "unwritten.toml"}, "--choose 19: the plans are 1 to"),
        ("1/2 × 1/2", {"orientation": "slanted"}, "choose landscape or portrait"),
        ("1/2 × 1/2", {"size_at_least": "large"}, "is not a panel size"),
        # Time that grows with the square of these blanks would be hours.
        ("1/2 × 1/2", {"size_at_least": f"1{' ' * 200_000}x"}, "not a unit of length"),
        ("1/2 × 1/2", {"size_at_least": "1 x " + "1 " * 100_000}, "is not a panel size"),
        ("1/2 × 1/2", {"size_at_least": "40x40 furlongs"}, "not a unit of length"),
        ("1/2 × 1/2", {"size_at_least": "400x400mm"}, "no folding of 1/2 × 1/2 keeps panels"),
        ("1/2 × 1/2", {"paper": "lettr"}, "there is no paper called 'lettr'"),
    ],
)
def test_what_cannot_be_planned_is_refused_with_a_remedy(product, options, message):
    with pytest.raises(FoldmathError, match=message):
        tell_plans(product, **options)


@pytest.mark.parametrize("size", ["40x40mm", "40 mm", "4x4cm", "1 1/2 × 1.5 in"])
def test_the_least_size_of_panels_may_be_written_in_several_ways(capsys, size):
    assert tell_plans("1/2 × 1/2", size_at_least=size, best=1) == 0
    assert "smallest panel 5 1/2 × 4 1/4 in" in capsys.readouterr().out
