"""A sentence is checked, equal parts are found, and the slides come as the command writes them."""

import pytest

from foldmath.making import project
from foldmath.statements.claim_grammar import MOST_SIGNS


@pytest.mark.parametrize(("claim", "said"), [("4 × 1/2 = 2", "True"), ("4 × 1/2 = 8", "False")])
def test_a_sentence_is_true_or_false(visitor, claim, said):
    assert f"<b>{said}:</b>" in visitor.get("/check", query_string={"claim": claim}).text


def test_a_sentence_that_cannot_be_read_is_refused_with_its_remedy(visitor):
    answer = visitor.get("/check", query_string={"claim": "four apples"})
    assert (answer.status_code, "Try:" in answer.text) == (422, True)
    assert 'name="claim" value="four apples"' in answer.text


def test_a_sentence_may_be_typed_as_long_as_one_may_be_that_is_checked(visitor):
    assert f'name="claim" value="" maxlength="{MOST_SIGNS}"' in visitor.get("/check").text


@pytest.mark.parametrize("parts", [3, 5, 12])
def test_parts_are_shown_and_printed(visitor, parts):
    asked = {"parts": parts, "paper": "A4", "along": "height"}
    assert '<svg class="picture"' in visitor.get("/parts", query_string=asked).text
    assert visitor.get("/parts.pdf", query_string=asked).data.startswith(b"%PDF")


@pytest.mark.parametrize(
    "asked", [{"parts": "2"}, {"parts": "13"}, {"parts": "x"}, {"parts": "5", "paper": "vellum"}]
)
def test_parts_that_no_side_has_are_refused(visitor, asked):
    assert visitor.get("/parts", query_string=asked).status_code == 422


@pytest.mark.parametrize(("language", "word"), [("en-US", "Notes"), ("es", "Notas")])
def test_the_page_names_the_button_of_the_notes_as_the_slides_of_the_lesson_do(
    visitor, seed_trays, language, word
):
    seed_trays.write_text(f'language = "{language}"\n{seed_trays.read_text()}')
    assert f"<b>{word}</b>" in visitor.get("/lesson/seed-trays/project").text
    assert f"<span>{word}</span>" in visitor.get("/lesson/seed-trays/slides").text


def test_the_slides_are_those_that_the_command_writes(visitor, seed_trays, tmp_path):
    (page,) = project(seed_trays, tmp_path / "out").files
    assert visitor.get("/lesson/seed-trays/slides").data == page.read_bytes()
