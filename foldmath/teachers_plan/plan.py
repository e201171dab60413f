"""The teacher's plan: takes a proved lesson and its worksheet, gives all that the plan's template lays out.

Nothing here is worded for a reader; figures and sentences come from the model, words from the template.
"""

from foldmath.drawing.scenes import Scene
from foldmath.drawing.sheets.crease_patterns import crease_pattern
from foldmath.drawing.sheets.folded_sheets import folded_sheet
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.templating import render
from foldmath.teachers_plan.after import After, after_lesson
from foldmath.teachers_plan.before import Before, before_lesson
from foldmath.teachers_plan.copies import OwnPages
from foldmath.teachers_plan.during import During, during_lesson
from foldmath.teachers_plan.plan_steps import step_rows
from foldmath.values import frozen
from foldmath.worksheets.folding_part import Talk
from foldmath.worksheets.worksheet import Worksheet

SHOW_MM = (22.0, 18.0)
"""The most width and height of the picture of the sheet after a step: its column holds no wider one."""


@frozen(kw_only=True)
class Plan:
    """Everything that a teacher's plan says.

    Args:
        sheet: the worksheet that it is for.
        talk: the sentence that the class talks about; None without.
        before, during, after: its three parts.
    """

    sheet: Worksheet
    talk: Talk | None
    before: Before
    during: During
    after: After


def plan(proved: ProvedLesson, sheet: Worksheet, own: OwnPages | None) -> Plan:
    """Gather what the plan of a lesson says.

    Args:
        proved: the lesson.
        sheet: its core worksheet.
        own: the pages of a class with numbers of its own; None where 28 share the masters.
    """
    rows = step_rows(proved, sheet)
    before = before_lesson(proved, sheet, rows, own)
    during = during_lesson(proved, rows, before.hour.steps)
    labels = own.labels if own else ()
    return Plan(
        sheet=sheet,
        talk=sheet.folding.talk if own else sheet.talk,
        before=before,
        during=during,
        after=after_lesson(sheet, rows, before.copies.pupils, labels),
    )


def plan_html(plan: Plan) -> str:
    """Give the plan as HTML."""
    return render("teachers_plan/plan.html", plan.sheet.lesson.language, plan=plan, sheet=plan.sheet)


def plan_pictures(proved: ProvedLesson, plan: Plan) -> dict[str, Scene]:
    """Give the scenes that the plan places: the sheet after each step, as pupils hold it up."""
    after = {row: proved.moments[row.moment].after for row in plan.during.rows}
    return {
        row.picture: crease_pattern(state, *SHOW_MM) if row.shaded else folded_sheet(state, None, *SHOW_MM)
        for row, state in after.items()
    }
