"""Each law finds the paper that breaks it: a state is spoilt in one way, and the law must say so."""

from dataclasses import replace

import pytest
from paper import laws
from paper.inspection import ends
from strategies import folded

from foldmath.paper.state import Cover, Crease, FoldedState, Kind, Placement, Sheet, Table
from foldmath.paper.steps import Axis, Edge, FoldAt, FoldEdge, Open, Pleat
from foldmath.plane.lines import Point
from foldmath.plane.motions import AT_REST
from foldmath.plane.numbers import HALF, ONE, ZERO, exact

SHEET = Sheet(exact(11), exact(17, 2), "in")
QUARTERS = folded(SHEET, [FoldEdge(Edge.LEFT, ONE), FoldEdge(Edge.TOP, ZERO)])
FAN = folded(SHEET, [Pleat(Axis.WIDTH, 5)])


def with_panel(state: FoldedState, index: int, **changes: object) -> FoldedState:
    panels = list(state.panels)
    panels[index] = panels[index]._replace(**changes)
    return replace(state, panels=tuple(panels))


def with_place(state: FoldedState, index: int, place: int) -> FoldedState:
    *earlier, last = state.panels[index].placements
    return with_panel(state, index, placements=(*earlier, Placement(last.motion, place)))


def with_kinds(state: FoldedState, kind: Kind) -> FoldedState:
    panels = [
        panel._replace(edges=tuple(edge and Crease(kind, edge.fold) for edge in panel.edges))
        for panel in state.panels
    ]
    return replace(state, panels=tuple(panels))


def test_unspoilt_paper_breaks_no_law():
    assert laws.breaches(QUARTERS) == laws.breaches(FAN) == ()


def test_an_area_that_is_not_the_panels_share_is_found():
    spoilt = with_panel(QUARTERS, 2, area=exact(1, 3))
    assert [breach.panels for breach in laws.areas_make_the_sheet(spoilt)] == [(2,), ()]


def test_a_layer_too_many_is_found():
    cover = QUARTERS.table.covers[0]
    table = Table((Cover(cover.polygon, cover.layers + 1),), QUARTERS.table.places)
    assert laws.covers_are_the_panels_that_lie_there(replace(QUARTERS, tables=(*QUARTERS.tables[:-1], table)))


def test_a_panel_lying_over_another_on_the_sheet_is_found():
    spoilt = with_panel(QUARTERS, 0, corners=QUARTERS.panels[1].corners)
    assert (0, 1) in {breach.panels for breach in laws.panels_tile_the_sheet(spoilt)}


def test_a_panel_with_a_corner_pushed_in_is_found():
    corners = (*QUARTERS.panels[0].corners, QUARTERS.panels[0].corners[0])
    assert laws.panels_tile_the_sheet(with_panel(QUARTERS, 0, corners=corners))


@pytest.mark.parametrize("edge", range(4))
def test_an_edge_that_disagrees_with_its_neighbour_is_found(edge):
    edges = list(QUARTERS.panels[0].edges)
    edges[edge] = None if edges[edge] else Crease(Kind.VALLEY, 0)
    assert laws.edges_are_shared_whole(with_panel(QUARTERS, 0, edges=tuple(edges)))


def test_stretched_paper_is_found():
    *earlier, last = QUARTERS.panels[0].placements
    stretched = Placement(last.motion._replace(c=last.motion.c * 2), last.place)
    assert laws.motions_are_rigid(with_panel(QUARTERS, 0, placements=(*earlier, stretched)))


def test_a_panel_that_lies_elsewhere_than_its_placement_says_is_found():
    assert laws.motions_are_rigid(with_panel(QUARTERS, 0, lying=QUARTERS.panels[0].lying[::-1]))


def test_torn_paper_is_found():
    *earlier, last = FAN.panels[2].placements
    aside = Placement(last.motion._replace(y=last.motion.y + ONE), last.place)
    torn = with_panel(FAN, 2, placements=(*earlier, aside))
    assert {frozenset(breach.panels) for breach in laws.hinges_meet(torn)} == {
        frozenset({1, 2}),
        frozenset({2, 3}),
    }


def test_a_crease_called_flat_that_is_folded_is_found():
    panels = [
        panel._replace(edges=tuple(edge and Crease(edge.kind, 0) for edge in panel.edges))
        for panel in FAN.panels
    ]
    assert len(laws.hinges_meet(replace(FAN, panels=tuple(panels)))) == 4


def test_a_panel_that_would_not_open_flat_is_found():
    first, *later = QUARTERS.panels[3].placements
    askew = Placement(AT_REST._replace(x=HALF), first.place)
    assert [
        b.panels for b in laws.opening_gives_one_sheet(with_panel(QUARTERS, 3, placements=(askew, *later)))
    ] == [(3,)]


def test_a_folded_crease_that_ends_inside_the_sheet_breaks_kawasaki():
    middle, foot = Point(exact(11, 2), exact(17, 4)), Point(exact(11, 2), ZERO)
    spoilt = QUARTERS
    for index, panel in enumerate(QUARTERS.panels):
        flat_below = tuple(
            Crease(Kind.VALLEY, 0) if {*ends(panel.corners, edge)} == {middle, foot} else crease
            for edge, crease in enumerate(panel.edges)
        )
        spoilt = with_panel(spoilt, index, edges=flat_below)
    assert [breach.at for breach in laws.folded_creases_close_up(spoilt)] == [(middle,)]


@pytest.mark.parametrize("kind", [Kind.VALLEY, Kind.MOUNTAIN])
def test_creases_all_of_one_kind_round_a_point_break_maekawa(kind):
    spoilt = with_kinds(QUARTERS, kind)
    assert [breach.law for breach in laws.mountains_and_valleys_differ_by_two(spoilt)] == [laws.MAEKAWA]


def test_two_layers_in_one_place_are_found():
    one, other = (panel.placements[-1].place for panel in QUARTERS.panels[:2])
    assert one != other
    assert laws.overlapping_panels_have_own_places(with_place(QUARTERS, 0, other))


def with_two_exchanged(state: FoldedState, one: int, other: int) -> FoldedState:
    places = [panel.placements[-1].place for panel in state.panels]
    return with_place(with_place(state, one, places[other]), other, places[one])


@pytest.mark.parametrize(("one", "other"), [(1, 2), (0, 3), (1, 4)])
def test_two_bends_that_pass_through_each_other_are_found(one, other):
    exchanged = with_two_exchanged(FAN, one, other)
    assert laws.overlapping_panels_have_own_places(exchanged) == ()
    assert laws.no_layer_passes_through_another(exchanged)


@pytest.mark.parametrize(("one", "other"), [(0, 1), (0, 2), (2, 4)])
def test_another_way_that_a_fan_can_lie_is_not_called_a_breach(one, other):
    assert laws.no_layer_passes_through_another(with_two_exchanged(FAN, one, other)) == ()


def test_a_layer_that_passes_through_the_bend_of_a_flap_is_found():
    """The left edge lies on the middle, and the right side covers that flap, its bend and more."""
    state = folded(SHEET, [FoldEdge(Edge.LEFT, HALF), FoldAt(exact(1, 4), Edge.RIGHT)])
    flap = next(i for i, panel in enumerate(state.panels) if max(panel.corners).x == SHEET.width / 4)
    lid = next(i for i, panel in enumerate(state.panels) if max(panel.corners).x == SHEET.width)
    assert laws.no_layer_passes_through_another(state) == ()
    breaches = laws.no_layer_passes_through_another(with_two_exchanged(state, flap, lid))
    assert {x for breach in breaches for x, _ in breach.at} == {SHEET.width / 4}


def test_two_flat_layers_that_change_places_at_an_old_crease_are_found():
    state = folded(SHEET, [FoldEdge(Edge.LEFT, ONE), Open(), FoldEdge(Edge.TOP, ZERO)])
    one, other = (i for i, panel in enumerate(state.panels) if ZERO in {x for x, _ in panel.corners})
    assert laws.no_layer_passes_through_another(state) == ()
    breaches = laws.no_layer_passes_through_another(with_two_exchanged(state, one, other))
    assert {x for breach in breaches for x, _ in breach.at} == {SHEET.width / 2}


@pytest.mark.parametrize("kind", [Kind.VALLEY, Kind.MOUNTAIN])
def test_a_kind_that_the_stack_does_not_show_is_found(kind):
    assert len(laws.kinds_agree_with_the_stack(with_kinds(FAN, kind))) == 2
