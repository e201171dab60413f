"""A crease pattern becomes the straight folds that make it, or is refused with the reason."""

import json

import pytest
from conftest import LESSONS
from exchanged import crossing_lines, file_of, measured_creases, proved_sentences, proved_steps
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from strategies import edge_folds, folds_at, gates, halvings, inside_fractions, pleats, sheets

from foldmath.fold_format.fold_arrays import arrays_of
from foldmath.fold_format.fold_json import pattern_frame
from foldmath.fold_format.fold_writing import fold_text
from foldmath.fold_format.refolding import refolding
from foldmath.fold_format.refolding.crease_pattern import crease_pattern
from foldmath.fold_format.refolding.lesson_writing import imported_lesson
from foldmath.fold_format.refolding.refolding import refolded
from foldmath.fold_format.refusals import PatternRefused
from foldmath.lesson.grammar.sentences import parse_step
from foldmath.lesson.proving import prove
from foldmath.lesson.reading import read_lesson
from foldmath.paper.state import Kind
from foldmath.paper.steps import FoldAlong, FoldPoint, Open, OpenLast, TurnOver, TurnQuarter
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ONE, ZERO

ALL_LESSONS = sorted(LESSONS.glob("*.toml"))

straight_steps = st.one_of(
    edge_folds, halvings, gates, folds_at, pleats, st.just(OpenLast()), st.just(Open()), st.just(TurnOver())
)
corners = st.sampled_from([Point(x, y) for x in (ZERO, ONE) for y in (ZERO, ONE)])
slanted_steps = st.one_of(
    st.builds(FoldPoint, corners, corners, st.booleans()),
    st.builds(FoldAlong, corners, st.builds(Point, inside_fractions, st.just(ONE)), corners, st.booleans()),
)
turns = st.builds(TurnQuarter, st.booleans())

# The search has a bound, which a foolish folding may meet; so the foldings drawn are always the same.
quietly = settings(
    max_examples=20,
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture],
)


def steps_found(folder, fold):
    """Give the steps of the lesson that folds a pattern."""
    return [step.step for step in imported_lesson(file_of(folder, fold)).proved.lesson.steps]


def steps_of(*sentences):
    """Read sentences, in whatever words they say their steps."""
    return [parse_step(sentence) for sentence in sentences]


def require_round_trip(proved, folder):
    """Export a lesson, import its crease pattern, and find the same creases of the same kinds."""
    found = imported_lesson(file_of(folder, fold_text(proved)))
    assert measured_creases(found.proved.states[-1]) == measured_creases(proved.states[-1])
    assert found.proved.states[0].sheet == proved.states[0].sheet
    return found


class TestRoundTrips:
    @pytest.mark.parametrize("path", ALL_LESSONS, ids=lambda path: path.stem)
    def test_the_crease_pattern_of_a_lesson_is_folded_again(self, path, tmp_path):
        proved = prove(read_lesson(path))
        found = require_round_trip(proved, tmp_path)
        assert found.remarks == ()

    @pytest.mark.parametrize("path", ALL_LESSONS, ids=lambda path: path.stem)
    def test_the_lesson_written_is_a_lesson_file(self, path, tmp_path):
        found = imported_lesson(file_of(tmp_path, fold_text(prove(read_lesson(path)))))
        written = tmp_path / "again.toml"
        written.write_text(found.text, encoding="utf-8")
        lesson = read_lesson(written)
        assert lesson.paper == read_lesson(path).paper
        assert prove(lesson).states[-1].creases == found.proved.states[-1].creases

    @given(sheets, st.lists(straight_steps, min_size=1, max_size=4))
    @quietly
    def test_any_level_and_upright_folding_is_folded_again(self, tmp_path, sheet, steps):
        proved = proved_steps(sheet, steps)
        if proved.states[-1].creases and min(sheet.width, sheet.height) > 1:
            require_round_trip(proved, tmp_path)

    @given(sheets, slanted_steps, st.lists(st.one_of(halvings, slanted_steps, turns), max_size=2))
    @quietly
    def test_slanted_folds_through_corners_are_folded_again(self, tmp_path, sheet, slanted, steps):
        proved = proved_steps(sheet, [slanted, *steps])
        if proved.states[-1].creases and min(sheet.width, sheet.height) > 1:
            require_round_trip(proved, tmp_path)

    def test_decimals_alone_give_back_the_fractions_that_they_were(self, tmp_path):
        proved = proved_sentences(
            "fold at 1/3 moving left", "fold at 2/7 moving top, behind", "fold at 1/3 moving right", "open"
        )
        told = json.loads(fold_text(proved))
        del told["vertices_foldmath:exact"]
        found = imported_lesson(file_of(tmp_path, told))
        assert measured_creases(found.proved.states[-1]) == measured_creases(proved.states[-1])

    def test_six_decimals_are_enough(self, tmp_path):
        proved = proved_sentences("pleat width into 3", "fold at 2/7 moving top", "open")
        told = json.loads(fold_text(proved))
        del told["vertices_foldmath:exact"]
        told["vertices_coords"] = [[round(x, 6), round(y, 6)] for x, y in told["vertices_coords"]]
        found = imported_lesson(file_of(tmp_path, told))
        assert measured_creases(found.proved.states[-1]) == measured_creases(proved.states[-1])

    @given(st.tuples(st.integers(-500, 500), st.integers(-500, 500)))
    @quietly
    def test_a_pattern_may_lie_anywhere_on_the_plane(self, tmp_path, shift):
        told = crossing_lines(11, 8.5, {11 / 3: "V", 5.5: "V"}, {4.25: "M"})
        told["vertices_coords"] = [[x + shift[0], y + shift[1]] for x, y in told["vertices_coords"]]
        found = imported_lesson(file_of(tmp_path, told))
        assert found.proved.lesson.paper == "letter"
        assert len(measured_creases(found.proved.states[-1])) == 3


class TestTheFoldsFound:
    def test_halvings_are_found_again_as_they_were(self, tmp_path):
        steps = [
            "fold left edge to right edge",
            "fold top edge to bottom edge",
            "fold left edge to right edge",
            "open",
        ]
        assert steps_found(tmp_path, fold_text(proved_sentences(*steps))) == steps_of(*steps)

    def test_a_fan_is_one_pleat(self, tmp_path):
        pattern = crossing_lines(10, 6, {2: "V", 4: "M", 6: "V", 8: "M"}, {})
        assert steps_found(tmp_path, pattern) == steps_of("pleat width into 5", "open")

    def test_two_valleys_at_the_fourths_are_a_gate(self, tmp_path):
        pattern = crossing_lines(8, 6, {}, {1.5: "V", 4.5: "V"})
        assert steps_found(tmp_path, pattern) == steps_of("fold top and bottom edges to middle", "open")

    def test_two_valleys_that_cross_are_folded_one_at_a_time(self, tmp_path):
        pattern = crossing_lines(8, 6, {4: "V"}, {3: "V"})
        found = steps_found(tmp_path, pattern)
        folds = steps_of("fold left edge to right edge", "fold top edge to bottom edge")
        assert found[::2] in (folds, folds[::-1])
        assert found[1::2] == steps_of("open", "open")

    def test_a_diagonal_goes_from_corner_to_corner(self, tmp_path):
        pattern = crossing_lines(8, 8, {}, {})
        pattern["edges_vertices"].append([1, 3])
        pattern["edges_assignment"].append("M")
        diagonal = "fold top right corner to bottom left corner, behind"
        assert steps_found(tmp_path, pattern) == steps_of(diagonal, "open")

    def test_unassigned_creases_are_folded_as_the_folds_go(self, tmp_path):
        pattern = crossing_lines(8, 6, {4: "U"}, {3: "U"})
        assert len(steps_found(tmp_path, pattern)) == 3

    def test_creases_need_no_vertices_where_they_cross(self, tmp_path):
        found = imported_lesson(file_of(tmp_path, crossing_lines(9, 6, {3: "V", 6: "M"}, {3: "V"})))
        assert len(found.proved.states[-1].panels) == 6

    def test_a_crease_made_the_other_way_is_folded_over_by_a_later_one(self, tmp_path):
        """The middle is a valley all the way, though folding through two layers leaves both kinds."""
        proved = proved_sentences(
            "pleat width into 4",
            "fold top edge to bottom edge",
            "open",
            "fold top edge to bottom edge",
            "open",
        )
        found = require_round_trip(proved, tmp_path)
        kinds = {crease.kind for crease in found.proved.states[-1].creases if crease.start.y == crease.end.y}
        assert kinds == {Kind.VALLEY}

    def test_slits_are_cut_at_the_end_and_a_ring_is_gathered(self, tmp_path):
        proved = proved_sentences(
            "pleat width into 4",
            "fold top edge to bottom edge",
            "open",
            "slit at height 1/2 from 1/4 to 3/4",
            "gather into booklet",
        )
        found = require_round_trip(proved, tmp_path)
        assert [step.step for step in found.proved.lesson.steps[-2:]] == steps_of(
            "slit at height 1/2 from 1/4 to 3/4", "gather into booklet"
        )

    def test_a_slit_drawn_as_two_borders_is_a_slit(self, tmp_path):
        pattern = crossing_lines(8, 6, {4: "V"}, {3: "V"})
        del pattern["edges_vertices"][-1], pattern["edges_assignment"][-1]
        pattern["vertices_coords"] += [[2, 3], [6, 3], [6, 3], [2, 3]]
        pattern["edges_vertices"] += [[6, 8], [9, 7], [8, 9], [10, 11]]
        pattern["edges_assignment"] += ["V", "V", "B", "B"]
        assert steps_found(tmp_path, pattern)[-1:] == steps_of("slit at height 1/2 from 1/4 to 3/4")

    def test_without_a_unit_the_short_side_is_that_of_letter(self, tmp_path):
        pattern = crossing_lines(1, 1, {0.5: "V"}, {})
        del pattern["frame_unit"]
        found = imported_lesson(file_of(tmp_path, pattern))
        assert 'paper = { width = "17/2 in", height = "17/2 in" }' in found.text
        assert "no unit" in str(found.remarks[0])

    @pytest.mark.parametrize(
        ("unit", "width", "paper"), [("mm", 297, "A4"), ("m", 0.297, "A4"), ("pt", 792, "279.4")]
    )
    def test_other_units_are_paper_too(self, unit, width, paper, tmp_path):
        height = {"mm": 210, "m": 0.21, "pt": 612}[unit]
        pattern = crossing_lines(width, height, {width / 2: "V"}, {}, unit)
        found = imported_lesson(file_of(tmp_path, pattern))
        assert found.proved.states[0].sheet.unit == "mm"
        assert paper in found.text or "1397/5 mm" in found.text

    def test_flat_edges_are_left_out_and_told(self, tmp_path):
        found = imported_lesson(file_of(tmp_path, crossing_lines(8, 6, {4: "V"}, {3: "F"})))
        assert len(found.proved.states[-1].panels) == 2
        assert [str(remark) for remark in found.remarks] == ["flat edges (F or J) left out: 1"]

    def test_a_crease_pattern_in_a_later_frame_is_found(self, tmp_path):
        pattern = crossing_lines(8, 6, {4: "V"}, {})
        file = {"file_spec": 1.2, "frame_classes": ["foldedForm"], "file_frames": [pattern]}
        assert steps_found(tmp_path, file) == steps_of("fold left edge to right edge", "open")


def refusal(folder, fold):
    with pytest.raises(PatternRefused) as refused:
        imported_lesson(file_of(folder, fold))
    assert str(refused.value).startswith(str(folder))
    assert refused.value.hint
    return str(refused.value.message)


class TestWhatCannotBeFolded:
    def test_two_valleys_and_two_mountains_at_one_point(self, tmp_path):
        """Two valleys and two mountains at one point: no two lines crease so, whichever comes first."""
        pattern = crossing_lines(8, 6, {}, {})
        pattern["vertices_coords"] += [[4, 3], [4, 0], [8, 3], [4, 6], [0, 3]]
        pattern["edges_vertices"] += [[4, 5], [4, 6], [4, 7], [4, 8]]
        pattern["edges_assignment"] += ["V", "V", "M", "M"]
        assert "no sequence of straight folds" in refusal(tmp_path, pattern)

    def test_a_crease_that_ends_inside_the_sheet(self, tmp_path):
        pattern = crossing_lines(8, 6, {}, {})
        pattern["vertices_coords"] += [[4, 0], [4, 3]]
        pattern["edges_vertices"].append([4, 5])
        pattern["edges_assignment"].append("V")
        assert "(4, 0) to (4, 3)" in refusal(tmp_path, pattern)

    def test_a_twist_of_pleats(self, tmp_path):
        """Pleats that meet in a square turn it: every crease ends at it, and none runs across the sheet."""
        pattern = crossing_lines(6, 6, {}, {})
        pattern["vertices_coords"] += [[2, 2], [4, 2], [4, 4], [2, 4], [2, 0], [6, 2], [4, 6], [0, 4]]
        pattern["edges_vertices"] += [[4, 5], [5, 6], [6, 7], [7, 4], [4, 8], [5, 9], [6, 10], [7, 11]]
        pattern["edges_assignment"] += ["V"] * 4 + ["M"] * 4
        assert "no sequence of straight folds" in refusal(tmp_path, pattern)

    def test_the_search_ends_at_its_bound_and_says_so(self, tmp_path):
        told = crossing_lines(8, 6, {4: "V"}, {})
        told["vertices_coords"] += [[6, 0], [6, 3]]
        told["edges_vertices"].append([6, 7])
        told["edges_assignment"].append("V")
        pattern = crease_pattern(arrays_of(pattern_frame(file_of(tmp_path, told))))
        with pytest.raises(PatternRefused, match="was found in"):
            refolded(pattern, most_tried=1)
        with pytest.raises(PatternRefused, match="no sequence of straight folds through all layers"):
            refolded(pattern)

    def test_a_pattern_that_needs_more_steps_than_a_lesson_has(self, tmp_path, monkeypatch):
        monkeypatch.setattr(refolding, "MOST_STEPS", 3)
        assert "more than 3 steps" in refusal(tmp_path, crossing_lines(8, 6, {4: "V"}, {3: "V"}))
        assert steps_found(tmp_path, crossing_lines(8, 6, {4: "V"}, {3: "U"}))

    def test_a_pattern_that_takes_too_many_tries_in_all(self, tmp_path, monkeypatch):
        monkeypatch.setattr(refolding, "MOST_IN_ALL", 5)
        assert "tries" in refusal(tmp_path, crossing_lines(8, 6, {2: "V", 4: "V"}, {2: "V", 3: "V"}))

    def test_creases_along_too_many_lines(self, tmp_path):
        many = dict.fromkeys(range(1, 202), "V")
        assert "more than 200 lines" in refusal(tmp_path, crossing_lines(300, 200, many, {}, "mm"))

    def test_creases_in_too_many_pieces(self, tmp_path):
        many = dict.fromkeys(range(1, 101), "V")
        assert "pieces" in refusal(tmp_path, crossing_lines(200, 150, many, many, "mm"))

    def test_a_sheet_that_is_no_rectangle(self, tmp_path):
        pattern = crossing_lines(8, 6, {4: "V"}, {})
        pattern["vertices_coords"][2] = [7, 6]
        assert "rectangle" in refusal(tmp_path, pattern)

    def test_a_sheet_with_a_hole(self, tmp_path):
        pattern = crossing_lines(8, 6, {4: "V"}, {})
        pattern["vertices_coords"] += [[1, 1], [2, 1], [2, 2]]
        pattern["edges_vertices"] += [[6, 7], [7, 8], [8, 6]]
        pattern["edges_assignment"] += ["B"] * 3
        assert "hole" in refusal(tmp_path, pattern)

    def test_a_sheet_without_a_border(self, tmp_path):
        pattern = crossing_lines(8, 6, {4: "V"}, {3: "M"})
        del pattern["edges_vertices"][:4], pattern["edges_assignment"][:4]
        assert "border has a gap" in refusal(tmp_path, pattern)

    def test_a_crease_at_a_place_that_needs_a_square_root(self, tmp_path):
        pattern = crossing_lines(8, 8, {8 * (2**0.5 - 1): "V"}, {})
        assert "no simple fraction" in refusal(tmp_path, pattern)

    def test_a_pattern_without_creases(self, tmp_path):
        assert "no creases" in refusal(tmp_path, crossing_lines(8, 6, {}, {}))

    def test_a_slit_that_parts_the_sheet(self, tmp_path):
        assert "part the sheet" in refusal(tmp_path, crossing_lines(8, 6, {4: "C"}, {}))

    def test_a_slanted_slit(self, tmp_path):
        pattern = crossing_lines(8, 8, {}, {})
        pattern["vertices_coords"].append([4, 4])
        pattern["edges_vertices"] += [[0, 4], [4, 2]]
        pattern["edges_assignment"] += ["C", "V"]
        assert "slanted slit" in refusal(tmp_path, pattern)

    @pytest.mark.parametrize("size", [0.001, 1e7])
    def test_a_sheet_of_a_size_that_nobody_folds(self, size, tmp_path):
        assert "no size for a sheet" in refusal(tmp_path, crossing_lines(size, size, {size / 2: "V"}, {}))
