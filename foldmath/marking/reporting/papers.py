"""The papers after a lesson: takes what the marks show, gives the report and the notes, ready to print."""

from collections.abc import Mapping
from typing import TypeAlias

from markupsafe import Markup

from foldmath.drawing.scenes import Scene
from foldmath.marking.asking.lesson_pages import LessonPages
from foldmath.marking.asking.questions import NumberQuestion
from foldmath.marking.evidence import FEW_PUPILS, ClassEvidence, ClassThought, Pile
from foldmath.marking.judging.explanations import Explanation, Way
from foldmath.marking.judging.marks import Verdict
from foldmath.marking.marked_class import MarkedAnswer, MarkedPupil
from foldmath.marking.reading.answers import Number
from foldmath.marking.reading.cells import read_cell
from foldmath.marking.reporting.notes import Note, Notes
from foldmath.marking.reporting.says import says
from foldmath.pages.page_shapes import upright
from foldmath.pages.pdf.paginating import PAGE_WORDS, PageMaster
from foldmath.pages.printing import Document
from foldmath.pages.templating import render
from foldmath.phrases import phrase
from foldmath.statements.products import Product
from foldmath.statements.rules.problems import PanelsMade
from foldmath.values import frozen
from foldmath.words.languages import of_one_tongue, read_beside
from foldmath.words.rules import short_name, what_it_tells, what_to_try
from foldmath.words.saying import say

LOOK = "marks"
"""The name of the style sheet."""

REPORT, NOTES = "class-report.pdf", "notes-to-pupils.pdf"

MOST_THOUGHTS = 5
"""The rarest do not help to plan a lesson, and the report's first page is one page."""

SIGNS = {Verdict.WRONG: "✗", Verdict.NOT_DONE: "–", Verdict.UNREAD: "?"}
MORE = "+"
"""Behind a code where something else explains the answer as well."""


@frozen
class MarkPapers:
    """What is printed after a lesson: by the names of the files, and the pictures placed there."""

    documents: Mapping[str, Document]
    pictures: Mapping[str, Scene]


def mark_papers(evidence: ClassEvidence, pages: LessonPages, notes: Notes, paper: str) -> MarkPapers:
    """Write the report to the teacher and the notes to pupils.

    Args:
        evidence: of the class.
        pages: of the lesson.
        notes: to pupils.
        paper: to print on, ``letter`` or ``A4``.
    """
    lesson = pages.proved.lesson
    language = lesson.language
    report = render(
        "marking/report.html",
        language,
        lesson=lesson,
        evidence=evidence,
        columns=_columns(evidence),
        code=lambda pupil, column: _code(pupil, column, language),
        few=FEW_PUPILS,
        most=MOST_THOUGHTS,
        piles=Pile.__members__,
        doing=_doing(evidence, language),
        claim=_claim(evidence),
        by_thought=_by_thought(evidence, language),
        unexplained=_unexplained(evidence),
        thought_said=lambda thought: _thought_said(thought, language),
    )
    written = [_strip(note, read_beside(note.language, language), language, paper) for note in notes.notes]
    strips = render("marking/notes.html", language, lesson=lesson, strips=written)
    master = PageMaster(upright(paper), lesson.title, "", PAGE_WORDS)
    documents = {
        REPORT: Document(report, master, answers=True),
        NOTES: Document(strips, PageMaster(upright(paper), lesson.title, "", ""), answers=False),
    }
    return MarkPapers(documents, notes.pictures)


def _strip(note: Note, language: str, first: str, paper: str) -> Markup:
    """Write a pupil's strip in the language that the pupil reads; the page's own words are in the first."""
    right = _right(note.right, language) if note.right else ""
    return Markup(
        render(
            "marking/strip.html",
            language,
            note=note,
            language=language,
            foreign=not of_one_tongue(language, first),
            right_said=right,
            paper=paper,
        )
    )


def _columns(evidence: ClassEvidence) -> list[str]:
    """Give the columns that any pupil was asked, in the order of the pages."""
    questions = [question for pupil in evidence.marked.pupils for question in pupil.page.questions]
    columns = list(dict.fromkeys(question.column for question in questions))
    return sorted(columns, key=lambda column: not column.isdecimal())


def _code(pupil: MarkedPupil, column: str, language: str) -> str:
    """Give what stands in the grid for an answer: nothing for a right one, or where nothing was asked."""
    if pupil.absent:
        return SIGNS[Verdict.NOT_DONE] if column in pupil.page.by_column else ""
    answer = next((answer for answer in pupil.answers if answer.question.column == column), None)
    if answer is None or answer.mark.verdict.good:
        return ""
    if not answer.mark.explanations:
        return SIGNS[answer.mark.verdict]
    first, *others = answer.mark.explanations
    code = short_name(first.rule, language) if first.rule else first.code
    return code + (MORE if others else "")


Typed: TypeAlias = list[tuple[MarkedPupil, tuple[MarkedAnswer, ...]]]
"""Answers by pupil."""


def _by_thought(evidence: ClassEvidence, language: str) -> list[tuple[Explanation, str, Typed]]:
    """Give every thought with the answers that show it."""
    return [
        (
            thought.explanation,
            _thought_said(thought, language),
            [
                (pupil.marked, own.answers)
                for pupil in evidence.pupils
                for own in pupil.thoughts
                if own.explanation.name == thought.explanation.name
            ],
        )
        for thought in evidence.thoughts
    ]


def _unexplained(evidence: ClassEvidence) -> Typed:
    found = [
        (
            pupil.marked,
            tuple(
                answer
                for answer in pupil.marked.answers
                if answer.mark.verdict is Verdict.WRONG and not answer.mark.explanations
            ),
        )
        for pupil in evidence.pupils
    ]
    return [(pupil, answers) for pupil, answers in found if answers]


def _thought_said(thought: ClassThought, language: str) -> str:
    """Say what several pupils think; what differs from one to the next is left out."""
    explanation = thought.explanation
    if explanation.rule:
        return what_it_tells(explanation.rule, language)
    if explanation.way in GENERAL:
        return say(GENERAL[explanation.way], language)
    return says(explanation, language)


GENERAL = {
    Way.SLIP: phrase("Works it out the right way, with a slip in a times table or in adding."),
    Way.COPIED: phrase("Copies a number from the question."),
    Way.ELSEWHERE: phrase("Gives the answer to another question."),
}


def _doing(evidence: ClassEvidence, language: str) -> str:
    """Say what to do with those who multiply otherwise: what helps with the rule that most of them follow."""
    rules = [thought.explanation.rule for thought in evidence.thoughts if thought.surely]
    return next((what_to_try(rule, language) for rule in rules if rule and not rule.at_folds), "")


def _claim(evidence: ClassEvidence) -> str:
    """Write down the commonest wrong answer by a rule, for all to judge."""
    for thought in evidence.thoughts:
        question = thought.example.question
        if thought.explanation.rule and isinstance(question, NumberQuestion):
            match question.problem:
                case Product():
                    return f"{question.problem.text} = {thought.example.answer}"
                case PanelsMade(before, parts):
                    return f"{before} × {parts} = {thought.example.answer}"
    return ""


def _right(answer: MarkedAnswer, language: str) -> str:
    """Write down a right answer as a sentence."""
    question = answer.question
    if not isinstance(question, NumberQuestion):
        return say(phrase("your answer to {column}", column=question.column), language)
    typed = read_cell(answer.answer) if answer.answer else None
    number = typed.ratio if isinstance(typed, Number) else question.answer
    match question.problem:
        case Product():
            return f"{question.problem.text} = {number.text}"
        case PanelsMade(before, parts):
            return f"{before} × {parts} = {number.text}"
    given = phrase("your answer to {column}, {number}", column=question.column, number=number.text)
    return say(given, language)
