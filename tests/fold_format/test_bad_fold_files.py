"""A FOLD file that is damaged, hostile or something else is refused in one message, with a remedy."""

import json

import pytest
from exchanged import crossing_lines, file_of
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from foldmath.fold_format import fold_json
from foldmath.fold_format.refolding.lesson_writing import imported_lesson
from foldmath.fold_format.refusals import PatternRefused

GOOD = crossing_lines(8, 6, {4: "V"}, {})


def refusal(folder, fold):
    with pytest.raises(PatternRefused) as refused:
        imported_lesson(file_of(folder, fold))
    assert str(refused.value).startswith(str(folder))
    assert "\n    try:  " in str(refused.value)
    return str(refused.value.heading)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("", "not JSON"),
        ("vertices", "line 1, column 1: is not JSON"),
        ('{"file_spec":\n 1.2;}', "line 2, column 5: is not JSON"),
        ("[1, 2]", "not an object"),
        ("null", "not an object"),
        ("[" * 100_000, "nested too deeply"),
        ('{"a":' * 100_000, "nested too deeply"),
        ('{"vertices_coords": [[NaN, 0]]}', "NaN"),
        ('{"vertices_coords": [[Infinity, 0]]}', "Infinity"),
        ('{"vertices_coords": [[' + "9" * 5000 + ", 0]]}", "thousands of digits"),
        ('{"file_frames": 3}', "file_frames: is not a list of frames"),
        ('{"file_frames": [3]}', "file_frames: is not a list of frames"),
        (
            '{"file_frames": [' + ", ".join(["{}"] * 1001) + "]}",
            "file_frames: there are more than 1000 frames",
        ),
        ("{}", "vertices_coords: is missing"),
    ],
    ids=lambda text: text[:20],
)
def test_text_that_is_no_fold_file(text, told, tmp_path):
    assert told in refusal(tmp_path, text)


@pytest.mark.parametrize(
    ("key", "value", "told"),
    [
        ("file_spec", 2, "file_spec: is 2"),
        ("file_spec", "new", "file_spec: is new"),
        ("file_spec", True, "file_spec: is True"),
        ("frame_classes", ["foldedForm"], "frame_classes: no frame is a crease pattern"),
        ("frame_classes", "creasePattern", "frame_classes: is not a list of words"),
        ("frame_attributes", ["3D"], "frame_attributes: is folded in space"),
        ("frame_unit", 3, "frame_unit: is not a word"),
        ("frame_unit", "furlong", "frame_unit: 'furlong' is not a unit"),
        ("vertices_coords", [], "vertices_coords: is missing"),
        ("vertices_coords", {"0": [0, 0]}, "vertices_coords: is missing"),
        ("vertices_coords", [[0, 0]] * 10_001, "vertices_coords: has more than 10000"),
        ("vertices_coords", [[0, "0"]], "vertices_coords[0]: is not two numbers"),
        ("vertices_coords", [[0, True]], "vertices_coords[0]: is not two numbers"),
        ("vertices_coords", [[0]], "vertices_coords[0]: is not two numbers"),
        ("vertices_coords", [[0, 0], [0, 10**400]], "vertices_coords[1]: is not two numbers"),
        ("vertices_coords", [[0, 0, 1]], "vertices_coords[0]: is not in the plane"),
        ("vertices_coords", [[1, 1]] * 6, "vertices_coords: the sheet has no area"),
        ("edges_vertices", [[0, 6]], "edges_vertices[0]: names vertex 6"),
        ("edges_vertices", [[-1, 0]], "edges_vertices[0]: names vertex -1"),
        ("edges_vertices", [[0, 1.0]], "edges_vertices[0]: names vertex 1.0"),
        ("edges_vertices", [[0]], "edges_vertices[0]: does not have two vertices"),
        ("edges_vertices", [None], "edges_vertices[0]: does not have two vertices"),
        ("edges_vertices", [[0, 1]] * 20_001, "edges_vertices: has more than 20000"),
        ("edges_vertices", [[0, 0]] * 5, "edges_vertices[0]: has no length"),
        ("edges_assignment", ["B"], "edges_assignment: does not have one letter for each edge"),
        ("edges_assignment", ["B", "B", "B", "B", "v"], "edges_assignment[4]: is 'v'"),
        ("edges_assignment", ["B", "B", "B", "B", ""], "edges_assignment[4]: is ''"),
        ("edges_assignment", ["B", "B", "B", "B", 1], "edges_assignment[4]: is '1'"),
        ("edges_foldAngle", [0], "edges_foldAngle: does not have one number"),
        ("edges_foldAngle", [0, 0, 0, 0, 90], "edges_foldAngle[4]: is 90°"),
        ("edges_foldAngle", [0, 0, 0, 0, -180], "edges_foldAngle[4]: is -180, yet the edge is assigned V"),
        ("vertices_foldmath:exact", [["0", "0"]], "vertices_foldmath:exact: does not have one entry"),
        ("vertices_foldmath:exact", [["1/0", "0"]] * 6, "vertices_foldmath:exact[0]: is no fraction"),
        ("vertices_foldmath:exact", [["9" * 5000, "0"]] * 6, "vertices_foldmath:exact[0]: is no fraction"),
        ("vertices_foldmath:exact", [["0", 0]] * 6, "vertices_foldmath:exact[0]: is no fraction"),
        ("vertices_foldmath:exact", [["1", "0"]] * 6, "vertices_foldmath:exact[0]: is another place"),
        ("vertices_foldmath:exact", ["00"] * 6, "vertices_foldmath:exact[0]: is not a pair"),
    ],
)
def test_a_value_that_cannot_be(key, value, told, tmp_path):
    assert told in refusal(tmp_path, GOOD | {key: value})


def test_edges_on_one_place_that_want_different_creases(tmp_path):
    twice = {
        "edges_vertices": [*GOOD["edges_vertices"], GOOD["edges_vertices"][-1]],
        "edges_assignment": [*GOOD["edges_assignment"], "M"],
    }
    assert "call for different creases" in refusal(tmp_path, GOOD | twice)


@pytest.mark.parametrize("parent", [7, -1, "0", 1])
def test_frames_that_inherit_from_nowhere_or_in_a_circle(parent, tmp_path):
    file = {"frame_classes": ["foldedForm"], "file_frames": [{"frame_inherit": True, "frame_parent": parent}]}
    assert "file_frames[0]: frame 1" in refusal(tmp_path, file)


def test_the_key_is_named_behind_the_file_and_before_what_is_wrong(tmp_path):
    path = file_of(tmp_path, GOOD | {"edges_vertices": [[0, 1], [1, 99]]})
    with pytest.raises(PatternRefused) as refused:
        imported_lesson(path)
    told = f"{path}, edges_vertices[1]: names vertex 99, which is not there"
    assert str(refused.value).splitlines()[0] == told


def test_faces_without_edges_give_the_edges_round_them(tmp_path):
    square = {"vertices_coords": [[0, 0], [2, 0], [2, 2], [0, 2]], "faces_vertices": [[0, 1, 2], [0, 2, 3]]}
    found = imported_lesson(file_of(tmp_path, square))
    assert len(found.proved.states[-1].panels) == 2


@pytest.mark.parametrize("faces", [[[0, 1]], [3], [[0, 1, 9]], [[0, 1, "2"]]])
def test_faces_that_cannot_be(faces, tmp_path):
    square = {"vertices_coords": [[0, 0], [2, 0], [2, 2], [0, 2]], "faces_vertices": faces}
    assert "faces_vertices[0]: " in refusal(tmp_path, square)


def test_files_that_cannot_be_read(tmp_path, monkeypatch):
    for path, told in ((tmp_path, "a folder"), (tmp_path / "none.fold", "no such file")):
        with pytest.raises(PatternRefused, match=told):
            imported_lesson(path)
    (tmp_path / "bytes.fold").write_bytes(b"\xff\xfe{}")
    with pytest.raises(PatternRefused, match="not UTF-8"):
        imported_lesson(tmp_path / "bytes.fold")
    monkeypatch.setattr(fold_json, "LARGEST_FILE", 10)
    with pytest.raises(PatternRefused, match="larger than"):
        imported_lesson(file_of(tmp_path, GOOD))


def test_a_title_cannot_steer_a_terminal_or_break_the_file(tmp_path):
    title = 'Sail"\n\x1b[31m]] \\ = \u202e cloth' + "x" * 200
    found = imported_lesson(file_of(tmp_path, GOOD | {"file_title": title}))
    assert "\x1b" not in found.text
    assert "\u202e" not in found.text
    assert found.proved.lesson.title.startswith('Sail" ')


json_values = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=3),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=3), inner, max_size=3),
    max_leaves=8,
)


@given(st.sampled_from(sorted({*GOOD, "file_frames", "edges_foldAngle", "faces_vertices"})), json_values)
@settings(
    max_examples=80,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture],
)
def test_any_value_anywhere_is_taken_or_refused(tmp_path, key, value):
    path = file_of(tmp_path, json.dumps(GOOD | {key: value}))
    try:
        found = imported_lesson(path)
    except PatternRefused:
        return
    assert found.proved.states[-1].creases
