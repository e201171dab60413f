"""Every story of the word problems, told with all its sensible numbers in turn."""

from functools import cache

from foldmath.statements.items.story import StoryFrame, StoryItem, make_story
from foldmath.statements.story_numbers import fillings


@cache
def every_telling(frame: StoryFrame) -> tuple[StoryItem, ...]:
    """Tell a story with all its sensible numbers in turn."""
    return tuple(make_story(frame, filling) for filling in fillings(frame.asks, frame.ranges))
