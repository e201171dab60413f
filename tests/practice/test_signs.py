"""A sign may be the answer again only while the other signs are answered as often."""

import pytest

from foldmath.practice.page_of_items import SIGNS, Page

LESS, MORE, _ = SIGNS


def page_with(*answers):
    page = Page((), ())
    page.answers.update(answers)
    return page


@pytest.mark.parametrize(
    ("before", "may"),
    [
        ((), True),
        ((MORE,), False),
        ((MORE, LESS), True),
        ((MORE, MORE, LESS), False),
        ((MORE, LESS, LESS), True),
        ((LESS,), True),
    ],
)
def test_a_sign_is_answered_no_more_often_than_the_others_together(before, may):
    assert page_with(*before)._may_be_answered(MORE) is may
