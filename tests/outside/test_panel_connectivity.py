"""Which panels hang together, against networkx on grids and on paper measured by shapely.

Sources: networkx (connected components, cycles; A. Hagberg, D. Schult, P. Swart, SciPy 2008) and shapely.
"""

from itertools import combinations

import networkx
import pytest
from creased import LETTER, creased, papers, ring_sheet
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString, MultiLineString, Polygon
from strategies import folded, sheets, step_lists

from foldmath.paper.booklet.gathering import booklet
from foldmath.paper.folding.hinges import hinges, pieces
from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import SheetParted
from foldmath.paper.state import Kind
from foldmath.paper.steps import Axis, Slit
from foldmath.plane.numbers import denominator, exact, numerator
from foldmath.plane.polygons import box


def measured(number):
    return numerator(number) / denominator(number)


def outline(points):
    return [(measured(point.x), measured(point.y)) for point in points]


def graph_of(panels):
    graph = networkx.Graph()
    graph.add_nodes_from(range(len(panels)))
    graph.add_edges_from((hinge.one, hinge.other) for hinge in hinges(panels))
    return graph


def measured_graph(state):
    """Join panels whose outlines share a length of paper that no cut covers."""
    cuts = MultiLineString(
        [outline((line.start, line.end)) for line in state.creases if line.kind is Kind.CUT]
    ).buffer(1e-9)
    graph = networkx.Graph()
    graph.add_nodes_from(range(len(state.panels)))
    polygons = [Polygon(outline(panel.corners)) for panel in state.panels]
    for one, other in combinations(range(len(polygons)), 2):
        shared = polygons[one].boundary.buffer(1e-9).intersection(LineString(polygons[other].exterior))
        if shared.difference(cuts).length > 1e-6:
            graph.add_edge(one, other)
    return graph


@given(st.integers(2, 5), st.integers(2, 5), st.data())
@settings(max_examples=60, deadline=None)
def test_a_slit_is_refused_just_when_networkx_says_that_the_grid_falls_apart(columns, rows, data):
    """Several slits, from crossing to crossing, on a grid of panels; the grid graph loses their edges."""
    state, graph = creased(LETTER, columns, rows), networkx.grid_2d_graph(columns, rows)
    for _ in range(data.draw(st.integers(1, 4))):
        level = data.draw(st.booleans())
        along, across = (columns, rows) if level else (rows, columns)
        line = data.draw(st.integers(1, across - 1))
        start, end = sorted(data.draw(st.lists(st.integers(0, along), min_size=2, max_size=2, unique=True)))
        cells = [((i, line - 1), (i, line)) for i in range(start, end)]
        edges = cells if level else [(one[::-1], other[::-1]) for one, other in cells]
        left = graph.copy()
        left.remove_edges_from(edges)
        if left.number_of_edges() == graph.number_of_edges():
            continue
        axis = Axis.HEIGHT if level else Axis.WIDTH
        step = Slit(axis, exact(line, across), exact(start, along), exact(end, along))
        if networkx.is_connected(left):
            state, graph = perform(step, state), left
            assert networkx.is_isomorphic(graph_of(state.panels), graph)
        else:
            with pytest.raises(SheetParted):
                perform(step, state)


@given(sheets, step_lists)
@settings(max_examples=15, deadline=None)
def test_the_panels_of_any_folding_hang_together(sheet, steps):
    state = folded(sheet, steps)
    assert networkx.is_connected(graph_of(state.panels))
    assert len(pieces(state.panels)) == 1


@given(papers, st.integers(2, 4), st.booleans(), st.integers(0, 9))
@settings(max_examples=15, deadline=None)
def test_the_panels_round_a_slit_are_one_ring_as_measured(paper, k, level, beyond):
    state = ring_sheet(paper, k, level=level, beyond=(exact(beyond, 20 * k), exact(0)))
    graph = graph_of(state.panels)
    if min(measured(paper.width), measured(paper.height)) > 1:
        assert networkx.utils.graphs_equal(graph, measured_graph(state))
    (cycle,) = networkx.cycle_basis(graph)
    assert len(cycle) == len(state.panels) == 4 * k
    assert set(dict(graph.degree).values()) == {2}


@pytest.mark.parametrize("k", [2, 3, 4])
def test_pages_follow_the_ring_that_networkx_finds(k):
    state = ring_sheet(LETTER, k)
    made = booklet(state)
    read = [page.panel for page in made.pages]
    ring = networkx.cycle_graph(read)
    assert networkx.utils.graphs_equal(graph_of(state.panels), ring)
    assert box(state.panels[read[0]].corners).left < box(state.panels[read[1]].corners).left


def test_pieces_of_panels_are_the_connected_components():
    """Cutting all creases along one line leaves what networkx leaves, though no step does so."""
    state = creased(LETTER, 4, 3)
    graph = graph_of(state.panels)
    apart = [panel._replace(edges=(None,) * len(panel.edges)) for panel in state.panels[:5]]
    panels = (*apart, *state.panels[5:])
    graph.remove_edges_from([(one, other) for one, other in graph.edges if one < 5 or other < 5])
    found = {frozenset(piece) for piece in pieces(panels)}
    assert found == {frozenset(piece) for piece in networkx.connected_components(graph)}
    assert len(found) > 5
