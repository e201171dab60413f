"""Every answer of a class is marked against the page of its pupil; what does not fit is refused."""

import pytest
from marking_a_class import PAGES, Rows, blank, filled, marked, roster, seed

from foldmath.lesson.roster import Pupil, told_apart
from foldmath.marking import marked_class
from foldmath.marking.asking.questions import TruthQuestion
from foldmath.marking.judging.marks import Verdict
from foldmath.marking.reading.sheet import AnswersRefused, blank_rows
from foldmath.marking.reporting.marks_file import HEADER, mark_rows
from foldmath.practice.choosing import CHOOSING
from foldmath.statements.items import Level

CORE = Level.CORE


def verdicts(tmp_path, answers, **how) -> dict[str, str]:
    """Give the verdicts on one pupil's answers, by column."""
    (pupil,) = marked(tmp_path, filled({"Ann": answers}, **how)).pupils
    return {answer.question.column: answer.mark.verdict.value for answer in pupil.answers if answer.answer}


@pytest.mark.parametrize(
    ("level", "column", "typed", "verdict"),
    [
        # 2/3 × 4/5 = 8/15 and 3/4 × 1/2 = 3/8.
        (CORE, "1", "8/15", "right"),
        (CORE, "1", "2/3 × 4/5 = 8/15", "right"),
        (CORE, "1", "16/30", "right in another form"),
        (CORE, "2", "0.375", "right in another form"),
        (CORE, "1", "8", "wrong"),
        (CORE, "1", "3/0", "wrong"),
        (CORE, "1", "-", "not done"),
        (CORE, "1", "15-Aug", "unread"),
        (CORE, "1", "<", "unread"),
        (CORE, "1", "hm", "unread"),
        # 1/5 ÷ 3; and 3/4 of 5/6 of a kilometer.
        (CORE, "4", "1/15", "right"),
        (CORE, "4", "2/30", "right in another form"),
        (CORE, "5", "5/8", "right"),
        (CORE, "5", "8/10", "wrong"),
        # A teacher judges reasons.
        (CORE, "7", "✓", "right"),
        (CORE, "7", "✗", "wrong"),
        (CORE, "7", "less of it", "unread"),
        # 3/4 × 2/3 = 72/12 is put right by a number or by a sentence.
        (CORE, "6", "6/12", "right"),
        (CORE, "6", "3/4 × 2/3 = 6/12", "right"),
        (CORE, "6", "72/12", "wrong"),
        (CORE, "3", "s c c s", "right"),
        (CORE, "3", "s c s c", "wrong"),
        (CORE, "3", "c s", "unread"),
        (CORE, "F3 panels", "8 panels", "right"),
        (CORE, "F3 of", "one eighth", "right"),
        (Level.STRETCH, "6", ">", "right"),
        (Level.STRETCH, "6", "smaller", "wrong"),
        # Panels of 1/6 and 1/3, two of each.
        (Level.STRETCH, "7", "fold at 1/3 moving left; fold top edge to bottom edge", "right"),
        (Level.STRETCH, "7", "fold at 2/3 moving right; fold bottom edge to top edge", "right"),
        (Level.STRETCH, "7", "fold left edge to right edge; fold top edge to bottom edge", "wrong"),
        (Level.STRETCH, "7", "fold it twice somehow", "unread"),
    ],
)
def test_an_answer_is_marked(tmp_path, level, column, typed, verdict):
    assert verdicts(tmp_path, {column: typed}, level=level) == {column: verdict}


def test_true_or_false_is_marked_by_what_the_sentence_is(tmp_path):
    (truth,) = (one for one in PAGES.of_class(CORE).questions if isinstance(one, TruthQuestion))
    right, wrong = ("true", "f") if truth.true else ("f", "true")
    assert [verdicts(tmp_path, {truth.column: typed})[truth.column] for typed in (right, wrong, "8/15")] == [
        "right",
        "wrong",
        "unread",
    ]


def test_a_sheet_of_before_without_a_column_for_true_or_false_is_marked_without_it(tmp_path):
    (truth,) = (one for one in PAGES.of_class(CORE).questions if isinstance(one, TruthQuestion))
    rows = filled({"Ann": {"1": "8"}})
    place = rows[1].index(truth.column)
    before = [row if len(row) == 2 else [*row[:place], *row[place + 1 :]] for row in rows]
    for asked, sheet in ((True, rows), (False, before)):
        (pupil,) = marked(tmp_path, sheet).pupils
        assert (truth in {one.question for one in pupil.answers}) == asked


def test_an_empty_cell_means_what_line_one_says(tmp_path):
    rows = filled({"Ann": {}})
    assert {answer.mark.verdict for answer in marked(tmp_path, rows).pupils[0].answers} == {Verdict.RIGHT}
    rows[0][1] = "not done"
    assert {answer.mark.verdict for answer in marked(tmp_path, rows).pupils[0].answers} == {Verdict.NOT_DONE}


def test_a_column_that_was_taken_out_is_not_done(tmp_path):
    rows = [["empty", "right"], ["pupil", "2"], ["Ann", ""]]
    (pupil,) = marked(tmp_path, rows).pupils
    done = {answer.question.column for answer in pupil.answers if answer.mark.verdict.good}
    assert done == {"2"}


def test_each_pupil_is_marked_against_the_page_of_his_or_her_level(tmp_path):
    levels = {"Ann": Level.GUIDED, "Bo": Level.STRETCH}
    pupils = marked(tmp_path, blank(levels), roster(levels)).pupils
    assert [pupil.page for pupil in pupils] == [PAGES.of_class(level) for level in levels.values()]


def test_own_numbers_are_found_again_from_the_name_and_the_code(tmp_path):
    pupils = roster({"Ann": CORE, "Bo": CORE})
    rows = blank({"Ann": CORE, "Bo": CORE}, own=True)
    found = marked(tmp_path, rows, pupils).pupils
    assert [one.page for one in found] == [PAGES.own(CORE, seed(pupil)) for pupil in pupils]
    assert found[0].page != found[1].page
    without = [rows[0], *(row[:-1] for row in rows[1:] if row[0] != "asks")]
    assert marked(tmp_path, without, pupils, own=True).pupils[0].page == found[0].page


def test_a_page_of_another_level_is_known_by_its_code(tmp_path):
    rows = blank({"Ann": Level.STRETCH})
    (ann,) = marked(tmp_path, rows, roster({"Ann": CORE})).pupils
    assert ann.page.level is Level.STRETCH


def test_an_absent_pupil_has_no_marks(tmp_path):
    rows = filled({"Ann": {"1": "absent"}, "Bo": {"1": "8/12"}})
    found = marked(tmp_path, rows, roster({"Ann": CORE, "Bo": CORE, "Cem": CORE}))
    assert [pupil.absent for pupil in found.pupils] == [True, False, True]
    assert [str(note) for note in found.notes] == ["No row, so taken as absent: Cem"]
    assert {row[0] for row in mark_rows(found, "en-US")} == {"pupil", "Bo"}


def test_a_row_with_nothing_typed_is_noted(tmp_path):
    found = marked(tmp_path, filled({"Ann": {}, "Bo": {"1": "8/12"}}))
    assert [str(note) for note in found.notes] == ["Nothing typed, so marked as all right: Ann"]


def test_two_pupils_of_one_name_have_their_rows_in_the_order_of_the_roster(tmp_path):
    twins = (Pupil("Ann", CORE), Pupil("Ann", CORE))
    rows = filled({"Ann": {"1": "8/12"}})
    again = [*rows, ["Ann", "10/15", *[""] * (len(rows[-1]) - 2)]]
    found = marked(tmp_path, again, twins).pupils
    assert [pupil.answers[0].answer for pupil in found] == ["8/12", "10/15"]
    with pytest.raises(AnswersRefused, match="2 students have this name"):
        marked(tmp_path, rows, twins)


def test_each_of_two_pupils_of_one_name_is_marked_by_the_page_with_his_or_her_own_numbers(tmp_path):
    twins = told_apart((Pupil("Ann", CORE), Pupil("Ann", CORE)))
    pages = [PAGES.own(one.level, seed(one)) for one in twins]
    assert pages[0].code != pages[1].code
    rows = blank_rows(list(zip(["Ann", "Ann"], pages, strict=True)), "en-US")
    found = marked(tmp_path, rows, twins, own=True).pupils
    assert [pupil.page.code for pupil in found] == [page.code for page in pages]
    without_roster = marked(tmp_path, rows, own=True).pupils
    assert [pupil.page.code for pupil in without_roster] == [page.code for page in pages]


@pytest.mark.parametrize("own", [False, True])
def test_a_page_of_an_older_choosing_is_refused_by_name(tmp_path, monkeypatch, own):
    monkeypatch.setattr(marked_class, "CHOOSING", CHOOSING + 2)
    rows = filled({"Ann": {"1": "8/12"}})
    rows[-1][-1] = PAGES.code(CORE, seed(Pupil("Ann", CORE)) if own else None, version=CHOOSING + 1)
    with pytest.raises(AnswersRefused, match="made by an older foldmath"):
        marked(tmp_path, rows)


def changed(change) -> Rows:
    rows = filled({"Ann": {"1": "8/12"}})
    change(rows)
    return rows


@pytest.mark.parametrize(
    ("change", "message"),
    [
        (lambda rows: rows[3].__setitem__(0, "Anne"), "cell A4: this student is not in the roster"),
        (lambda rows: rows.append(rows[3]), "cell A5: this student already has a row"),
        (lambda rows: rows[3].__setitem__(2, "absent"), "cell B4: an absent student has an answer here"),
        (lambda rows: rows[1].__setitem__(2, "9"), "the lesson does not ask this"),
        (lambda rows: rows[2].__setitem__(1, "1/3 × 4/5"), "cell B3: the lesson does not ask this"),
        (lambda rows: rows[3].__setitem__(-1, "AAAAA5"), "no page of “Seed trays” has this code"),
        (lambda rows: rows[2].__setitem__(-1, "AAAAA5"), "no page of “Seed trays” has this code"),
    ],
    ids=[
        "unknown pupil",
        "double row",
        "absent",
        "unknown item",
        "other lesson",
        "other code",
        "other sheet",
    ],
)
def test_what_does_not_fit_is_refused_with_the_cell(tmp_path, change, message):
    with pytest.raises(AnswersRefused, match=message):
        marked(tmp_path, changed(change), roster({"Ann": CORE}))


def test_a_code_that_does_not_fit_is_refused_with_those_that_do(tmp_path):
    pupils = roster({"Ann": CORE})
    with pytest.raises(AnswersRefused) as caught:
        marked(tmp_path, changed(lambda rows: rows[3].__setitem__(-1, "AAAAA5")), pupils)
    assert PAGES.code(CORE) in str(caught.value)
    assert PAGES.code(CORE, seed(pupils[0])) in str(caught.value)


def test_marks_are_told_in_rows(tmp_path):
    rows = list(mark_rows(marked(tmp_path, filled({"Ann": {"1": "22/15", "2": "3 apr"}})), "en-US"))
    assert rows[0] == HEADER
    assert rows[1][:5] == ("Ann", "1", "22/15", "wrong", "add_instead")
    assert rows[1][5] == "Adds the numbers instead of multiplying."
    assert rows[2][:5] == ("Ann", "2", "3 apr", "unread", "")
    assert rows[2][5] == "a spreadsheet made this date of a fraction: was it 4/3 or 3/4?"
    assert rows[3] == ("Ann", "3", "", "right", "", "")


def test_a_rule_that_a_pupil_follows_makes_a_slip_with_it_likelier(tmp_path):
    # 1/3 × 3/4 by the second turned over is 4/9; in 4/33 the two threes are put beside each other.
    slipped = {"T2": "4/33"}
    (without,) = marked(tmp_path, filled({"Ann": slipped})).pupils
    assert without.answers[-1].mark.explanations == ()
    (with_it,) = marked(tmp_path, filled({"Ann": {"1": "10/12", "6": "9/8", **slipped}})).pupils
    (explanation,) = with_it.answers[-1].mark.explanations
    assert (explanation.rule.name, explanation.slip.step.text) == ("invert_second", "3 × 3")
