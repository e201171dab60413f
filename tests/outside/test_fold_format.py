"""The FOLD files of lessons, read and folded by the format's own JavaScript library.

Source: npm package ``fold`` 0.12.0 (github.com/edemaine/fold, MIT). Its ``flatFoldedGeometry`` reflects every
face across its edges and returns how far the faces miss when they close. It reflects across flat creases too,
so those are taken out first, cuts are split, and faces are found anew from the edges; it looks at no order of
layers.

It is run by node, from the folder that FOLDMATH_NODE_MODULES names, or from npm's global one.
"""

import json
import os
import shutil
import subprocess
from functools import cache
from pathlib import Path

import pytest
from conftest import LESSONS
from exchanged import file_of, frames, proved_sentences

from foldmath.fold_format.refolding.lesson_writing import imported_lesson
from foldmath.lesson.grammar.sentences import parse_step
from foldmath.lesson.proving import prove
from foldmath.lesson.reading import read_lesson

SCRIPT = """
const FOLD = require("fold");
function folded(pattern) {
  const fold = FOLD.convert.deepCopy(pattern);
  for (const edge of FOLD.filter.flatEdges(fold).reverse()) FOLD.filter.removeEdge(fold, edge);
  FOLD.convert.edges_vertices_to_vertices_edges_sorted(fold);
  FOLD.filter.splitCuts(fold);
  FOLD.convert.vertices_edges_to_faces_vertices_edges(fold);
  fold.edges_faces = fold.edges_vertices.map(() => []);
  fold.faces_edges.forEach((edges, face) => edges.forEach(edge => fold.edges_faces[edge].push(face)));
  return {
    error: FOLD.convert.flatFoldedGeometry(fold, 0),
    root: fold.faces_vertices[0],
    orientations: fold.faces_flatFoldOrientation,
    transforms: fold.faces_flatFoldTransform,
    sheet: fold.vertices_coords,
    lying: fold.vertices_flatFoldCoords,
  };
}
function counted(fold) {
  return {
    vertices: FOLD.filter.numVertices(fold),
    edges: FOLD.filter.numEdges(fold),
    faces: FOLD.filter.numFaces(fold),
    M: FOLD.filter.mountainEdges(fold).length, V: FOLD.filter.valleyEdges(fold).length,
    B: FOLD.filter.boundaryEdges(fold).length, C: FOLD.filter.cutEdges(fold).length,
  };
}
function faces(pattern) {
  const fold = FOLD.convert.deepCopy(pattern);
  for (const key of ["faces_vertices", "faces_edges", "edges_faces"]) delete fold[key];
  return FOLD.convert.edges_vertices_to_faces_vertices_edges(fold).faces_vertices;
}
const asked = JSON.parse(require("fs").readFileSync(0, "utf8"));
const answers = { folded, counted, faces };
console.log(JSON.stringify(asked.map(([what, fold]) => answers[what](fold))));
"""

DIAGONAL = {
    "vertices_coords": [[0, 0], [1, 0], [1, 1], [0, 1]],
    "edges_vertices": [[0, 1], [1, 2], [2, 3], [3, 0], [3, 1]],
    "edges_assignment": ["B", "B", "B", "B", "V"],
    "edges_foldAngle": [0, 0, 0, 0, 180],
    "frame_classes": ["creasePattern"],
}
"""examples/diagonal-cp.fold of the repository."""

FOLDINGS = {
    "accordion": ("pleat width into 5", "fold top edge to bottom edge"),
    "diagonals": (
        "fold bottom left corner to top right corner",
        "fold along (0, 0) (1, 1) moving (0, 1)",
        "fold at 1/3 moving left, behind",
        "turn over",
    ),
    "gate": (
        "fold top and bottom edges to middle",
        "fold left edge to 1/3",
        "fold at 1/4 moving top, behind",
    ),
}
BOOKLET = (
    "pleat width into 4",
    "fold top edge to bottom edge",
    "open",
    "slit at height 1/2 from 1/4 to 3/4",
    "gather into booklet",
)


@cache
def node_modules():
    """Give the folder in which node finds the package, or skip."""
    if shutil.which("node") is None:
        pytest.skip("node is not installed")
    folders = [os.environ.get("FOLDMATH_NODE_MODULES", "")]
    if shutil.which("npm"):
        told = subprocess.run(["npm", "root", "-g"], capture_output=True, text=True, check=False)
        folders.append(told.stdout.strip())
    for folder in filter(None, folders):
        if (Path(folder) / "fold" / "package.json").exists():
            return folder
    return pytest.skip("the npm package fold is not installed; set FOLDMATH_NODE_MODULES to where it is")


def asked(*questions):
    """Ask the library several things in one run of node."""
    environment = os.environ | {"NODE_PATH": str(Path(node_modules()).resolve())}
    done = subprocess.run(
        ["node", "-e", SCRIPT],
        input=json.dumps(questions),
        capture_output=True,
        text=True,
        check=True,
        env=environment,
    )
    return json.loads(done.stdout)


def opened(frame, pattern):
    """Give the vertices of a frame as they lie on the opened sheet."""
    places = [None] * len(frame["vertices_coords"])
    for ours, theirs in zip(frame["faces_vertices"], pattern["faces_vertices"], strict=True):
        for vertex, on_sheet in zip(ours, theirs, strict=True):
            places[vertex] = pattern["vertices_coords"][on_sheet]
    return places


def carried(frame, sheet, answer):
    """Give the motion that lays the library's root face, which it leaves at rest, where the frame has it."""
    corners = [answer["sheet"][vertex] for vertex in answer["root"]]
    known = [frame["vertices_coords"][sheet.index(corner)] for corner in corners]
    (ax, ay), (bx, by) = corners[0], corners[1]
    (ux, uy), (vx, vy) = known[0], known[1]
    length = (bx - ax) ** 2 + (by - ay) ** 2
    turn = complex(vx - ux, vy - uy)
    for mirrored in (False, True):
        along = complex(bx - ax, ay - by if mirrored else by - ay)
        by_turn = turn * along.conjugate() / length
        moved = []
        for x, y in corners:
            place = complex(x - ax, ay - y if mirrored else y - ay) * by_turn
            moved.append([place.real + ux, place.imag + uy])
        if moved == [pytest.approx(place, abs=1e-9) for place in known]:
            return lambda x, y, m=mirrored, t=by_turn: (
                complex(x - ax, ay - y if m else y - ay) * t + complex(ux, uy)
            )
    raise AssertionError("the root face has another shape in the frame")


def rounded(*numbers):
    return tuple(round(number, 6) + 0.0 for number in numbers)


def require_same_positions(frame, pattern, answer):
    """Hold the library's folded vertices, moved as one, against those of the frame."""
    assert answer["error"] == pytest.approx(0, abs=1e-9)
    sheet = opened(frame, pattern)
    motion = carried(frame, sheet, answer)
    folded = set()
    for (x, y), (u, v) in zip(answer["sheet"], answer["lying"], strict=True):
        place = motion(u, v)
        folded.add(rounded(x, y, place.real, place.imag))
    ours = {rounded(*place, *lying) for place, lying in zip(sheet, frame["vertices_coords"], strict=True)}
    assert folded <= ours
    return folded, ours


def require_frames_fold(proved):
    pattern, *folded = frames(proved)
    creased = [frame for frame in folded if {"M", "V"} & set(frame["edges_assignment"])]
    answers = asked(*(("folded", flat_pattern(frame, pattern)) for frame in creased))
    for frame, answer in zip(creased, answers, strict=True):
        require_same_positions(frame, pattern, answer)
    return len(creased)


def flat_pattern(frame, pattern):
    """Give the creases folded in a frame on the opened sheet; where it is slit, a cut is one edge again."""
    letters = {}
    for ours, theirs in zip(frame["faces_edges"], pattern["faces_edges"], strict=True):
        for edge, on_sheet in zip(ours, theirs, strict=True):
            border = pattern["edges_assignment"][on_sheet] == "B"
            letter = frame["edges_assignment"][edge]
            letters[on_sheet] = "C" if letter == "B" and not border else letter
    kept = [edge for edge, letter in sorted(letters.items()) if letter != "F"]
    used = sorted({vertex for edge in kept for vertex in pattern["edges_vertices"][edge]})
    return {
        "vertices_coords": [pattern["vertices_coords"][vertex] for vertex in used],
        "edges_vertices": [
            [used.index(vertex) for vertex in pattern["edges_vertices"][edge]] for edge in kept
        ],
        "edges_assignment": [letters[edge] for edge in kept],
    }


@pytest.mark.parametrize("path", sorted(LESSONS.glob("*.toml")), ids=lambda path: path.stem)
def test_every_folded_state_of_a_lesson_closes_and_lies_where_the_model_says(path):
    assert require_frames_fold(prove(read_lesson(path))) > 0


@pytest.mark.parametrize("steps", FOLDINGS.values(), ids=FOLDINGS)
def test_every_folded_state_of_other_foldings_closes_too(steps):
    proved = proved_sentences(*steps)
    assert require_frames_fold(proved) == len(steps)


def test_the_crease_pattern_of_a_booklet_folds_into_it_once_its_slit_is_split():
    pattern, *_, booklet = frames(proved_sentences(*BOOKLET))
    kept = ("vertices_coords", "edges_vertices", "edges_assignment")
    (answer,) = asked(("folded", {key: pattern[key] for key in kept}))
    folded, ours = require_same_positions(booklet, pattern, answer)
    assert folded == ours


@pytest.mark.parametrize("path", sorted(LESSONS.glob("*.toml")), ids=lambda path: path.stem)
def test_the_library_finds_the_same_faces_and_counts_the_same_edges(path):
    pattern, *_ = frames(prove(read_lesson(path)))
    counted, faces = asked(("counted", pattern), ("faces", pattern))
    letters = pattern["edges_assignment"]
    assert counted == {
        "vertices": len(pattern["vertices_coords"]),
        "edges": len(letters),
        "faces": len(pattern["faces_vertices"]),
        **{letter: letters.count(letter) for letter in "MVBC"},
    }
    assert {starting_lowest(face) for face in faces} == {
        starting_lowest(face) for face in pattern["faces_vertices"]
    }


def starting_lowest(face):
    first = face.index(min(face))
    return (*face[first:], *face[:first])


class TestTheDiagonalOfASquare:
    """Source: examples/diagonal-cp.fold and diagonal-folded.fold.

    Vertex 2 lands on [0, 0]; the second face is carried by [[0, -1, 1], [-1, 0, 1]] and turned over.
    """

    def test_the_library_folds_it_so(self):
        (answer,) = asked(("folded", DIAGONAL))
        assert answer["error"] == 0
        assert answer["lying"][2] == [0, 0]
        assert answer["transforms"][1] == [[0, -1, 1], [-1, 0, 1]]
        assert answer["orientations"] == [1, -1]

    def test_it_is_imported_as_one_fold_whose_corner_lands_on_the_other(self, tmp_path):
        proved = imported_lesson(file_of(tmp_path, DIAGONAL)).proved
        assert proved.lesson.steps[-1].step == parse_step("open")
        pattern, folded, _ = frames(proved)
        corner = pattern["vertices_coords"].index([8.5, 8.5])
        assert folded["vertices_coords"][corner] == [0, 0]
        assert folded["edges_assignment"].count("V") == 1
        assert folded["edges_foldAngle"].count(180) == 1
