"""While a sheet is gathered on the slides, one picture and one sentence show at a time."""

import pytest

SEEN = """[...document.querySelectorAll('.scene.here .turns > *')]
  .filter((part) => part.checkVisibility({ visibilityProperty: true }))
  .map((part) => part.getBoundingClientRect().width > 0 && (part.textContent.trim() || 'picture'))"""


@pytest.mark.parametrize("screen", ["old", "phone"])
def test_pictures_and_sentences_take_turns(shown, gathering, screen):
    show = shown(gathering, screen)
    place = next(n for n, slide in enumerate(show.slides, start=1) if slide.kind == "gather")
    slide = show.slides[place - 1]
    said = []
    for reveal in range(slide.last + 1):
        show.go(place, reveal)
        seen = show.page.evaluate(SEEN)
        assert len(seen) == 2
        said.append(seen[1])
    assert len(set(said)) == len(slide.poses)
    assert said[-1] == "Press it flat. Page 1 is the cover."
    assert show.seen()[-2:] == ["How many pages does the booklet have?", "8 pages"]
    assert show.complaints == []
