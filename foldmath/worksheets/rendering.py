"""The worksheet as HTML: takes what it says, fills the template."""

from foldmath.pages.templating import render
from foldmath.worksheets.exit_ticket import ExitTicket
from foldmath.worksheets.marking_page import marking_page
from foldmath.worksheets.word_bank import bank
from foldmath.worksheets.worksheet import Worksheet


def html(sheet: Worksheet, look: str, *, key: bool, ticket: ExitTicket | None = None) -> str:
    """Give the worksheet, or the same worksheet with the key's own pages after it.

    Args:
        sheet: what it says.
        look: the name of its style sheet, which has its own way to set the rows of folds.
        key: whether the key's own pages follow.
        ticket: the exit ticket, whose answers the key's pages tell; None if there is none.
    """
    return render(
        "worksheets/worksheet.html",
        sheet.lesson.language,
        sheet=sheet,
        bank=bank(sheet, sheet.lesson.language) if sheet.guided else (),
        look=look,
        key=key,
        marking=marking_page(sheet, ticket) if key else None,
        ticket=ticket,
    )


def items_html(sheet: Worksheet) -> list[str]:
    """Give each item of a worksheet by itself, just as it stands on the page."""
    return [
        render("worksheets/one_item.html", sheet.lesson.language, sheet=sheet, placed=placed, number=number)
        for number, placed in enumerate(sheet.items, 1)
    ]
