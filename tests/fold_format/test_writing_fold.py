"""What a FOLD file says of a lesson, held against the rules of the format and against the model.

Source of the rules: FOLD 1.2, doc/spec.md in github.com/edemaine/fold.
"""

import json
from fractions import Fraction
from itertools import combinations

import pytest
from exchanged import SQUARE, frames, proved_sentences, proved_steps
from hypothesis import given, settings
from hypothesis import strategies as st
from strategies import sheets, step_lists

from foldmath.fold_format import face_orders
from foldmath.fold_format.fold_writing import fold_file, fold_text
from foldmath.lesson.grammar.sentences import parse_step
from foldmath.paper.steps import Axis, Pleat, Shade
from foldmath.plane import overlaps
from foldmath.plane.numbers import exact
from foldmath.plane.overlaps import counter_clockwise, share_area, spans

few = settings(max_examples=15, deadline=None)

BOOKLET = (
    "pleat width into 4",
    "fold top edge to bottom edge",
    "open",
    "slit at height 1/2 from 1/4 to 3/4",
    "gather into booklet",
)


def turning(points):
    """Give the signed area of a polygon."""
    pairs = zip(points, [*points[1:], points[0]], strict=True)
    return sum(x * v - u * y for (x, y), (u, v) in pairs) / 2


def face(frame, index):
    return [frame["vertices_coords"][vertex] for vertex in frame["faces_vertices"][index]]


def require_format(frame, pattern):
    """Hold a frame to the rules that any reader of the format relies on."""
    for index, vertices in enumerate(frame["faces_vertices"]):
        around = zip(vertices, [*vertices[1:], vertices[0]], frame["faces_edges"][index], strict=True)
        for start, end, edge in around:
            assert {start, end} == set(frame["edges_vertices"][edge])
            left, right = frame["edges_faces"][edge]
            assert index == (left if [start, end] == frame["edges_vertices"][edge] else right)
        assert abs(turning(face(frame, index))) == pytest.approx(turning(face(pattern, index)))
    for letter, angle, (_, right) in zip(
        frame["edges_assignment"], frame["edges_foldAngle"], frame["edges_faces"], strict=True
    ):
        assert angle == {"V": 180, "M": -180}.get(letter, 0)
        assert (letter == "B") is (right is None)


@given(sheets, step_lists)
@few
def test_every_frame_of_any_folding_obeys_the_format(sheet, steps):
    pattern, *folded = frames(proved_steps(sheet, steps))
    assert all(turning(face(pattern, index)) > 0 for index in range(len(pattern["faces_vertices"])))
    assert {"M", "V", "B"} >= set(pattern["edges_assignment"])
    for frame in (pattern, *folded):
        require_format(frame, pattern)


def test_every_frame_of_a_booklet_obeys_the_format():
    pattern, *folded = frames(proved_sentences(*BOOKLET))
    assert pattern["edges_assignment"].count("C") == 2
    require_format(
        pattern | {"edges_assignment": [x.replace("C", "F") for x in pattern["edges_assignment"]]}, pattern
    )
    for frame in folded:
        require_format(frame, pattern)


@given(sheets, step_lists)
@few
def test_vertices_lie_where_the_model_lays_them(sheet, steps):
    proved = proved_steps(sheet, steps)
    for frame, state in zip(frames(proved)[1:], proved.states[1:], strict=True):
        corners = {corner for panel in state.panels for corner in panel.lying}
        told = {tuple(map(read_long, place)) for place in frame["vertices_foldmath:exact"]}
        assert corners <= told
        for place, exactly in zip(frame["vertices_coords"], frame["vertices_foldmath:exact"], strict=True):
            assert place == [float(Fraction(number)) for number in exactly]


def read_long(text):
    number = Fraction(text)
    return exact(number.numerator, number.denominator)


@given(sheets, step_lists)
@few
def test_creases_are_folded_in_a_frame_just_when_they_are_in_the_model(sheet, steps):
    proved = proved_steps(sheet, steps)
    pattern, *told = frames(proved)
    for frame, state in zip(told, proved.states[1:], strict=True):
        letters = set(frame["edges_assignment"]) & {"M", "V"}
        lengths = {letter: total(frame, pattern, letter) for letter in letters}
        made = {}
        for crease in state.creases:
            if crease.folded:
                letter = crease.kind.value[0].upper()
                made[letter] = made.get(letter, 0) + distance(crease.start, crease.end)
        assert lengths == pytest.approx(made)


def total(frame, pattern, letter):
    places = pattern["vertices_coords"]
    return sum(
        distance(places[start], places[end])
        for (start, end), other in zip(frame["edges_vertices"], frame["edges_assignment"], strict=True)
        if other == letter
    )


def distance(one, other):
    return ((float(one[0] - other[0])) ** 2 + (float(one[1] - other[1])) ** 2) ** 0.5


class TestFaceOrders:
    def test_a_half_folded_over_lies_above_the_other_on_its_printed_side(self):
        _, folded = frames(proved_sentences("fold left edge to right edge"))
        right, left = (0, 1) if turning(face(folded, 0)) > 0 else (1, 0)
        orders = {(one, other): sign for one, other, sign in folded["faceOrders"]}
        # The face that moved is turned over: its printed side looks down, onto the one that stayed.
        assert orders == {(min(left, right), max(left, right)): 1}

    def test_a_half_folded_behind_has_its_printed_side_away_from_the_other(self):
        _, folded = frames(proved_sentences("fold left edge to right edge, behind"))
        assert [sign for *_, sign in folded["faceOrders"]] == [-1]

    @given(sheets, step_lists)
    @settings(max_examples=10, deadline=None)
    def test_faces_are_ordered_just_where_they_overlap_and_as_the_model_stacks_them(self, sheet, steps):
        proved = proved_steps(sheet, steps)
        if len(proved.states) == 1:
            return
        panels = proved.states[-1].panels
        above = above_one_another(frames(proved)[-1]["faceOrders"], panels)
        assert above == stacked(panels)

    def test_past_the_bound_the_order_of_all_follows_from_neighbours(self, monkeypatch):
        monkeypatch.setattr(face_orders, "MOST_ORDERS", 10)
        proved = proved_sentences(
            "pleat width into 5",
            "fold top edge to bottom edge",
            "fold at 1/3 moving left",
            "fold at 2/3 moving top",
        )
        panels, last = proved.states[-1].panels, frames(proved)[-1]
        assert "neighbours" in last["frame_description"]
        told = above_one_another(last["faceOrders"], panels)
        assert told < stacked(panels)
        assert stacked(panels) <= all_that_follows(told)

    def test_panels_side_by_side_are_not_held_against_each_other_pair_by_pair(self, monkeypatch):
        looked_at = []
        monkeypatch.setattr(overlaps, "spans", lambda corners: looked_at.append(corners) or spans(corners))
        proved = proved_sentences("pleat width into 12", "pleat height into 12", "open")
        assert frames(proved)[-1]["faceOrders"] == []
        assert len(looked_at) <= len(proved.states) * len(proved.states[-1].panels)


def above_one_another(orders, panels):
    """Give every pair of an upper and a lower face that the orders tell."""
    pairs = set()
    for one, other, sign in orders:
        up = panels[other].placements[-1].printed_side_up
        pairs.add((one, other) if (sign > 0) is up else (other, one))
    return pairs


def stacked(panels):
    """Give every pair of an upper and a lower panel that overlap, one against another."""
    lying = [counter_clockwise(panel.lying) for panel in panels]
    pairs = set()
    for one, other in combinations(range(len(panels)), 2):
        if share_area(lying[one], lying[other]):
            over = panels[one].placements[-1].place > panels[other].placements[-1].place
            pairs.add((one, other) if over else (other, one))
    return pairs


def all_that_follows(pairs):
    below: dict = {}
    for over, under in pairs:
        below.setdefault(over, set()).add(under)
    follows = set()
    for top in below:
        reached, waiting = set(), [top]
        while waiting:
            fresh = below.get(waiting.pop(), set()) - reached
            reached |= fresh
            waiting += fresh
        follows |= {(top, under) for under in reached}
    return follows


class TestFrames:
    def test_each_step_that_moves_paper_is_a_frame_titled_by_its_sentence(self):
        steps = ("pleat width into 3", "open", "shade 1 of 3 across", "turn over")
        titles = [frame["frame_title"] for frame in fold_file(proved_sentences(*steps))["file_frames"]]
        assert titles == ["pleat width into 3", "open", "turn over"]

    def test_frames_inherit_the_crease_pattern_until_a_slit_parts_corners(self):
        _, *folded = fold_file(proved_sentences(*BOOKLET))["file_frames"]
        told = fold_file(proved_sentences(*BOOKLET))["file_frames"]
        assert [(frame["frame_parent"], frame["frame_inherit"]) for frame in told] == [
            (0, True),
            (0, True),
            (0, True),
            (0, False),
            (4, True),
        ]
        assert "faces_vertices" not in folded[0]

    def test_a_corner_in_the_middle_of_a_slit_is_two_and_its_ends_are_one(self):
        pattern, *_, slit, booklet = frames(proved_sentences(*BOOKLET))
        assert len(slit["vertices_coords"]) == len(pattern["vertices_coords"]) + 1
        middle = [place for place in slit["vertices_coords"] if place == [5.5, 4.25]]
        assert len(middle) == 2
        assert len(booklet["vertices_coords"]) == len(slit["vertices_coords"])
        assert slit["edges_assignment"].count("B") == pattern["edges_assignment"].count("B") + 4

    def test_a_slit_between_two_crossings_has_two_sides_between_the_same_corners(self):
        _, *_, slit = frames(
            proved_sentences("pleat width into 3", "open", "slit at width 1/3 from 1/4 to 1/2")
        )
        ends = [tuple(sorted(edge)) for edge in slit["edges_vertices"]]
        (twice,) = {edge for edge in ends if ends.count(edge) == 2}
        sides = [index for index, edge in enumerate(ends) if edge == twice]
        assert [slit["edges_assignment"][index] for index in sides] == ["B", "B"]

    def test_an_edge_is_cut_once_a_second_slit_has_cut_all_of_it(self):
        pattern, *_, first, second = frames(
            proved_sentences(
                "fold top edge to bottom edge",
                "open",
                "slit at height 1/2 from 1/8 to 1/4",
                "slit at height 1/2 from 1/4 to 3/8",
            )
        )
        assert pattern["edges_assignment"].count("C") == 1
        assert first["edges_assignment"].count("B") == second["edges_assignment"].count("B") - 2

    @pytest.mark.parametrize("step", ["open", "open last"])
    def test_creases_opened_again_are_flat(self, step):
        *_, folded, opened = frames(proved_sentences("fold left edge to right edge", step))
        assert "V" in folded["edges_assignment"]
        assert set(opened["edges_assignment"]) == {"B", "F"}
        assert opened["faceOrders"] == []

    def test_the_crease_pattern_keeps_the_last_kind_of_a_crease(self):
        pattern, *_ = frames(
            proved_sentences(
                "fold left edge to right edge", "open", "fold left edge to right edge, behind", "open"
            )
        )
        assert set(pattern["edges_assignment"]) == {"B", "M"}

    def test_the_file_names_its_version_unit_and_classes(self):
        told = json.loads(fold_text(proved_steps(SQUARE, [parse_step("fold top edge to bottom edge")])))
        assert told["file_spec"] == 1.2
        assert told["file_creator"].startswith("foldmath")
        assert told["frame_unit"] == "in"
        assert told["frame_classes"] == ["creasePattern"]
        assert {"2D", "noCuts", "convexFaces"} <= set(told["frame_attributes"])
        assert {"selfTouching", "noCuts"} <= set(told["file_frames"][0]["frame_attributes"])

    def test_keys_of_our_own_have_a_colon(self):
        known = ("file_", "frame_", "vertices_coords", "edges_", "faces_", "faceOrders")
        for frame in frames(proved_sentences(*BOOKLET)):
            assert {key for key in frame if not key.startswith(known)} == {"vertices_foldmath:exact"}

    @given(st.integers(2, 12))
    @settings(max_examples=5, deadline=None)
    def test_text_and_data_are_the_same(self, parts):
        proved = proved_steps(SQUARE, [Pleat(Axis.WIDTH, parts), Shade(0, 1, Axis.HEIGHT)])
        assert json.loads(fold_text(proved)) == json.loads(json.dumps(fold_file(proved)))
