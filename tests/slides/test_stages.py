"""How the paper moves, as values: each stage against the states of the model, and what is seen of it."""

from itertools import pairwise

import pytest
from lessons_in_words import EIGHTHS, core_sheet, proved
from slides.moving_pieces import turns_over

from foldmath.paper.folding.folding import Turn
from foldmath.plane.motions import reflection
from foldmath.slides.motion.stages import Cutting, Spinning, Turning, stages_of_lesson
from foldmath.slides.motion.stars import holds_star, star_of
from foldmath.slides.slides import StepSlide, slide_show


def lying(pieces, when):
    return {
        (
            frozenset(getattr(piece, when).motion.carry(corner) for corner in piece.panel.corners),
            getattr(piece, when).printed_side_up,
        )
        for piece in pieces
    }


def lying_of(state):
    return {(frozenset(panel.lying), panel.placements[-1].printed_side_up) for panel in state.panels}


def test_the_stages_of_a_step_lead_from_the_paper_before_it_to_the_paper_after_it(folded):
    for moment, stages in zip(folded.moments, stages_of_lesson(folded), strict=True):
        if not stages:
            continue
        assert {side for _, side in lying(stages[0].pieces, "start")} == {
            side for _, side in lying_of(moment.before)
        }
        assert covered(lying(stages[0].pieces, "start")) == covered(lying_of(moment.before))
        if not isinstance(stages[-1], Cutting):
            assert lying(stages[-1].pieces, "end") == lying_of(moment.after)
        for one, two in pairwise(stages):
            assert covered(lying(one.pieces, "end")) == covered(lying(two.pieces, "start"))


def covered(polygons):
    corners = [corner for polygon, _ in polygons for corner in polygon]
    return (
        min(x for x, _ in corners),
        max(x for x, _ in corners),
        min(y for _, y in corners),
        max(y for _, y in corners),
    )


def test_in_every_stage_what_moves_is_mirrored_in_its_line_and_what_stays_stays(folded):
    for stages in stages_of_lesson(folded):
        for stage in stages:
            for piece in stage.pieces:
                start, end = piece.start.motion, piece.end.motion
                if isinstance(stage, Turning) and turns_over(piece):
                    assert start.then(reflection(stage.axis)) == end
                    # What moves is on the positive hand at the start.
                    assert all(
                        stage.axis.side(start.carry(corner)) >= 0 for corner in piece.panel.corners
                    ) or (all(turns_over(other) for other in stage.pieces))
                elif not isinstance(stage, Spinning):
                    assert start == end


def test_what_comes_over_lies_on_top_of_what_stays_and_what_goes_behind_beneath(folded):
    for stages in stages_of_lesson(folded):
        for stage in stages:
            if not isinstance(stage, Turning) or all(turns_over(piece) for piece in stage.pieces):
                continue
            over = stage.turn is Turn.OVER
            moved = [piece.end.place for piece in stage.pieces if turns_over(piece)]
            stayed = [piece.end.place for piece in stage.pieces if not turns_over(piece)]
            before = [piece.start.place for piece in stage.pieces if turns_over(piece)]
            rested = [piece.start.place for piece in stage.pieces if not turns_over(piece)]
            folds = max(moved) > max(stayed) if over else min(moved) < min(stayed)
            opens = max(before) > max(rested) if over else min(before) < min(rested)
            assert folds or opens


def test_every_fold_turn_and_opening_moves_and_a_slit_is_cut(folded):
    doing = [slide for slide in slide_show(folded, core_sheet(folded)).slides if isinstance(slide, StepSlide)]
    for slide in doing:
        if slide.does in ("fold", "open", "turn"):
            gathered = folded.moments[slide.number - 1].before.gathered
            assert slide.picture.stages or gathered
        if slide.does == "slit":
            assert [stage.kind for stage in slide.picture.stages] == ["cut"]


def test_opening_undoes_the_folds_with_all_the_creases_that_were_made_since():
    opening = stages_of_lesson(
        proved("fold left edge to right edge", "fold top edge to bottom edge", "open")
    )[-1]
    assert [len(stage.pieces) for stage in opening] == [4, 4]


def test_opening_after_a_turn_still_moves_and_from_the_back_over_is_behind():
    plain = stages_of_lesson(proved(*EIGHTHS[:2], "open"))[-1]
    turned = stages_of_lesson(proved(*EIGHTHS[:2], "turn over", "open"))[-1]
    assert [stage.turn for stage in plain] == [Turn.OVER, Turn.OVER]
    assert [stage.turn for stage in turned] == [Turn.BEHIND, Turn.BEHIND]


@pytest.mark.parametrize("parts", [2, 12])
def test_the_star_is_on_the_panel_of_the_bottom_left_corner_however_small(parts):
    made = proved(f"pleat width into {parts}", f"pleat height into {parts}", "open")
    star = star_of(made.states[-1])
    for state in made.states:
        (panel,) = [panel for panel in state.panels if holds_star(panel, star)]
        assert (0, 0) in panel.corners


def test_shading_moves_with_the_side_that_was_shaded():
    steps = ("pleat width into 3", "open", "turn over", "shade 2 of 3 across")
    told = [slide for slide in slide_show(*both(*steps, "turn over")).slides if isinstance(slide, StepSlide)]
    shaded = told[3].picture.after.flaps
    assert [bool(flap.faces[0].hatches) for flap in shaded] == [True]
    assert not shaded[0].faces[0].printed
    turned = told[4].picture
    assert [bool(face.hatches) for face in turned.stages[0].flaps[0].faces] == [True, False]
    assert not any(flap.faces[0].hatches for flap in turned.after.flaps)


def both(*steps):
    made = proved(*steps)
    return made, core_sheet(made)


def test_shading_lies_where_it_was_counted_from_as_the_sheet_lies_then():
    """Two columns from the left, seen from the back: they are the right two of the printed side."""
    steps = ("pleat width into 3", "open", "turn over", "shade 2 of 3 across")
    made = proved(*steps)
    told = [slide for slide in slide_show(made, core_sheet(made)).slides if isinstance(slide, StepSlide)]
    picture = told[3].picture
    hatched = [spot.x for flap in picture.after.flaps for line in flap.faces[0].hatches for spot in line]
    paper = [spot.x for spot in picture.after.whole]
    third = (max(paper) - min(paper)) / 3
    assert min(hatched) == pytest.approx(min(paper), abs=1)
    assert max(hatched) == pytest.approx(min(paper) + 2 * third, abs=1)


def test_creases_run_through_crossings_in_one_line_and_are_thinner_where_panels_are_small():
    few, many = (
        [slide for slide in slide_show(*both(*steps, "open")).slides if isinstance(slide, StepSlide)][
            -1
        ].picture
        for steps in (EIGHTHS, ("pleat width into 12", "pleat height into 12"))
    )
    assert len(few.after.flaps[0].faces[0].creases) == 4
    assert len(many.after.flaps[0].faces[0].creases) == 22
    assert few.after.flaps[0].faces[0].crease_mm > 1.2 * many.after.flaps[0].faces[0].crease_mm
    level = [line for line in many.opened.creases.valley if line[0].y == line[1].y]
    assert all(abs(start.x - end.x) < 60 for start, end in level)


def test_ten_halvings_open_with_their_creases_and_few_flaps():
    halvings = ["fold left edge to right edge", "fold top edge to bottom edge"] * 5
    opening = [
        slide for slide in slide_show(*both(*halvings, "open")).slides if isinstance(slide, StepSlide)
    ][-1].picture
    assert len(opening.stages) == 10
    assert all(len(stage.flaps) == 2 for stage in opening.stages)
    assert [flap.layers for flap in opening.stages[0].flaps] == [512, 512]
    last = opening.stages[-1].flaps[0].faces[0]
    assert len(last.creases) == 31 + 15


@pytest.mark.parametrize(("turned", "alone"), [((), False), (("turn over",), True)])
def test_columns_shaded_after_rows_are_hatched_inside_them_and_whole_on_the_other_side(turned, alone):
    """As on the worksheets, where the product of two fractions is a part of a part."""
    rows = ("pleat width into 3", "open", "pleat height into 2", "open", "shade 1 of 2 up")
    made = proved(*rows, *turned, "shade 1 of 3 across")
    told = [slide for slide in slide_show(made, core_sheet(made)).slides if isinstance(slide, StepSlide)]
    faces = [face for flap in told[-1].picture.after.flaps for face in flap.faces]
    heights = {round(spot.y) for face in faces if face.hatches for line in face.hatches for spot in line}
    middle = sum(spot.y for spot in told[-1].picture.after.whole) / 4
    # Heights count from the top: rows are shaded from the bottom.
    assert any(height < middle - 2 for height in heights) is alone
