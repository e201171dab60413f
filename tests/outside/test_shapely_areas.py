"""Areas, unions and layers against shapely (shapely.readthedocs.io), another library of plane geometry.

shapely reckons in floats, so the two are compared to within a billionth of the sheet.
"""

from itertools import combinations

import shapely
from hypothesis import given
from shapely.geometry import LineString, Polygon
from shapely.ops import polygonize, unary_union
from strategies import folded, often_enough, sheets, step_lists

from foldmath.plane.numbers import denominator, numerator

TINY = 1e-9


def measured(number) -> float:
    return numerator(number) / denominator(number)


def outline(corners) -> list[tuple[float, float]]:
    return [(measured(x), measured(y)) for x, y in corners]


def lying(state) -> list[Polygon]:
    return [Polygon(outline(panel.lying)) for panel in state.panels]


@given(sheets, step_lists)
@often_enough
def test_every_panel_has_the_area_that_shapely_measures(sheet, steps):
    whole = measured(sheet.area)
    for panel in folded(sheet, steps).panels:
        for corners in (panel.corners, panel.lying):
            assert abs(Polygon(outline(corners)).area / whole - measured(panel.area)) < TINY


@given(sheets, step_lists)
@often_enough
def test_panels_cover_the_sheet_and_do_not_overlap_on_it(sheet, steps):
    whole = measured(sheet.area)
    panels = [Polygon(outline(panel.corners)) for panel in folded(sheet, steps).panels]
    assert abs(unary_union(panels).area / whole - 1) < TINY
    tree = shapely.STRtree(panels)
    for one, other in zip(*tree.query(panels, predicate="intersects"), strict=True):
        assert one == other or panels[one].intersection(panels[other]).area / whole < TINY


@given(sheets, step_lists)
@often_enough
def test_the_paper_on_the_table_covers_the_union_of_its_panels(sheet, steps):
    state = folded(sheet, steps)
    union = unary_union(lying(state))
    assert abs(union.area - measured(state.table.area)) / measured(sheet.area) < TINY
    box = state.table.box
    for ours, theirs in zip((box.left, box.bottom, box.right, box.top), union.bounds, strict=True):
        assert abs(measured(ours) - theirs) < TINY * measured(sheet.width + sheet.height)


@given(sheets, step_lists)
@often_enough
def test_the_most_layers_are_the_most_panels_over_any_region(sheet, steps):
    state = folded(sheet, steps)
    panels = lying(state)
    regions = polygonize(unary_union([LineString(panel.exterior.coords) for panel in panels]))
    whole = measured(sheet.area)
    seen = [region for region in regions if region.area / whole > 1e-7]
    # In floats, regions too small for paper are left out on both sides.
    covered = [(Polygon(outline(cover.polygon)), cover.layers) for cover in state.table.covers]
    large = [(region, layers) for region, layers in covered if region.area > 1e-5 * whole]
    # Lines that miss one another by a billionth bound no region for shapely; it is asked about ours too.
    seen += [region for region, _ in large]
    depths = [sum(panel.contains(region.representative_point()) for panel in panels) for region in seen]
    assert max(layers for _, layers in large) <= max(depths) <= state.table.layers


@given(sheets, step_lists)
@often_enough
def test_regions_of_the_table_do_not_overlap_and_stack_up_to_the_sheet(sheet, steps):
    covers = folded(sheet, steps).table.covers
    regions = [Polygon(outline(cover.polygon)) for cover in covers]
    whole = measured(sheet.area)
    for one, other in combinations(regions, 2):
        assert one.intersection(other).area / whole < TINY
    stacked = sum(region.area * cover.layers for region, cover in zip(regions, covers, strict=True))
    assert abs(stacked / whole - 1) < TINY
