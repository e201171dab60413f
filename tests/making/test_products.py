"""What a teacher is told of her own products: which the grade cannot do yet, and where they stand."""

from dataclasses import replace

import pytest
from lessons_in_words import EIGHTHS, proved
from own_words import BED, SOIL, having, own

from foldmath.lesson.lesson import WrittenProduct
from foldmath.making.products import told_of_products
from foldmath.statements.items import Level
from foldmath.statements.products import parse_product


def told(*products: str, grade: int = 5) -> list[str]:
    made = proved(*EIGHTHS)
    practice = tuple(WrittenProduct(text, parse_product(text), 1, 1) for text in products)
    notes = told_of_products(replace(made, lesson=replace(made.lesson, practice=practice, grade=grade)))
    return [str(note) for note in notes]


@pytest.mark.parametrize(
    ("grade", "product", "beyond"),
    [
        (5, "2/3 × 4/5", False),
        (4, "2/3 × 4/5", True),
        (4, "3 × 2/5", False),
        (4, "2/5 of 3", False),
        (3, "3 × 2/5", True),
        (3, "3 × 2", False),
    ],
)
def test_a_product_beyond_the_grade_is_told(grade, product, beyond):
    notes = told(product, grade=grade)
    assert [f"grade {grade} does not multiply" in note and product in note for note in notes] == [
        True
    ] * beyond


def told_of(*items, levels=tuple(Level), grade=5):
    made = having(proved(*EIGHTHS), *items, levels=levels)
    return [str(note) for note in told_of_products(replace(made, lesson=replace(made.lesson, grade=grade)))]


def test_a_sum_beyond_the_grade_is_told_and_one_whose_numbers_do_not_stand_in_its_words():
    assert told_of(BED, SOIL) == []
    (note,) = told_of(BED, SOIL, grade=4)
    assert note.startswith("grade 4 does not multiply such numbers yet")
    assert note.endswith(": 2/3 × 3/4")
    (note,) = told_of(own("How much of the bed?", "2/3 × 3/4"))
    assert note.startswith("no number of 2/3 × 3/4 stands in the words")


def test_items_that_make_a_page_longer_are_told_by_level():
    many = [own(f"Take {number} halves.", f"{number} × 1/2") for number in range(2, 9)]
    guided, core, stretch = told_of(*many)
    assert guided.endswith("of the guided page and make it 3 items longer")
    assert core.endswith("of the core page and make it 1 item longer")
    assert stretch.endswith("of the stretch page and make it 1 item longer")
    assert told_of(*many[1:], levels=(Level.CORE,)) == []


def test_from_the_fourth_on_products_stand_on_the_core_page_only_which_is_told():
    own = [f"1/{below} × 2/3" for below in (2, 3, 4, 5, 6)]
    assert told(*own[:3]) == []
    (note,) = told(*own)
    assert note.startswith("1/5 × 2/3; 1/6 × 2/3 stand on the core page only")
    (note,) = told(*own[:4])
    assert note.startswith("1/5 × 2/3 stands on the core page only")
