"""Frozen values are what the standard library's frozen dataclasses are."""

import pickle
from dataclasses import KW_ONLY, FrozenInstanceError, dataclass, field, fields, replace
from functools import cached_property

import pytest
from hypothesis import given
from hypothesis import strategies as st

from foldmath.values import frozen


def classes(made, made_by_name):
    """Write the same classes with one decorator and with the other."""

    @made
    class Nothing:
        pass

    @made
    class Crease:
        at: int
        behind: bool = False
        note: str = field(default="", compare=False)
        layers: list = field(default_factory=list, hash=False)

    @made
    class Named(Crease):
        _: KW_ONLY
        name: str = field(default="crease", repr=False)

        def __post_init__(self):
            assert self.at is not None

    @made_by_name
    class Slit:
        value: int
        made: int = 1

    for each in (Nothing, Crease, Named, Slit):
        each.__qualname__ = each.__name__
    return Nothing, Crease, Named, Slit


OWN = classes(frozen, frozen(kw_only=True))
OTHERS = classes(dataclass(frozen=True), dataclass(frozen=True, kw_only=True))
NOTHING, CREASE, NAMED, SLIT = range(4)
CREASES = st.fixed_dictionaries(
    {"at": st.integers(0, 2)},
    optional={
        "behind": st.booleans(),
        "note": st.sampled_from(["", "middle"]),
        "layers": st.lists(st.integers(0, 1), max_size=1),
    },
)


@given(CREASES, CREASES)
def test_values_are_shown_and_equal_and_hashed_as_those_of_dataclasses(one, other):
    for kind in (CREASE, NAMED):
        own, theirs = OWN[kind], OTHERS[kind]
        assert repr(own(**one)) == repr(theirs(**one))
        assert (own(**one) == own(**other)) == (theirs(**one) == theirs(**other))
        assert own(**one) != theirs(**one)
        assert (hash(own(**one)) == hash(own(**other))) == (hash(theirs(**one)) == hash(theirs(**other)))


@pytest.mark.parametrize(
    ("kind", "places", "names"),
    [
        (NOTHING, (), {}),
        (NOTHING, (1,), {}),
        (CREASE, (), {}),
        (CREASE, (1, True, "n", [2]), {}),
        (CREASE, (1, True, "n", [2], 3), {}),
        (CREASE, (1,), {"at": 1}),
        (CREASE, (1,), {"fold": 1}),
        (NAMED, (1,), {"name": "a"}),
        (NAMED, (1, False, "", [], "a"), {}),
        (SLIT, (1,), {}),
        (SLIT, (), {"value": 1}),
        (SLIT, (), {"made": 1}),
    ],
)
def test_values_take_by_place_and_by_name_what_those_of_dataclasses_take(kind, places, names):
    def outcome(made):
        try:
            return repr(made(*places, **names))
        except TypeError:
            return TypeError

    assert outcome(OWN[kind]) == outcome(OTHERS[kind])


def test_what_a_factory_makes_is_shared_by_no_two_values():
    one, other = OWN[CREASE](1), OWN[CREASE](1)
    one.layers.append(1)
    assert other.layers == []


def test_a_value_does_not_change():
    crease = OWN[CREASE](1)
    with pytest.raises(FrozenInstanceError, match="Crease is frozen: at"):
        crease.at = 2
    with pytest.raises(FrozenInstanceError, match="Crease is frozen: at"):
        del crease.at
    assert crease.at == 1


def test_another_value_is_made_with_one_field_changed():
    assert replace(OWN[NAMED](1, name="a"), at=2) == OWN[NAMED](2, name="a")
    assert [each.name for each in fields(OWN[NAMED])] == ["at", "behind", "note", "layers", "name"]


def test_values_of_one_class_without_fields_are_equal_and_those_of_another_are_not():
    assert OWN[NOTHING]() == OWN[NOTHING]()
    assert len({OWN[NOTHING](), OWN[NOTHING](), OTHERS[NOTHING]()}) == 2
    assert OWN[CREASE](1) != OWN[NAMED](1)


@frozen(eq=False)
class Sheet:
    """A value that is known by what it is, not by what it says."""

    width: int

    @cached_property
    def area(self):
        return self.width**2


def test_values_that_are_not_compared_are_themselves_alone():
    one = Sheet(2)
    assert one == one
    assert one != Sheet(2)
    assert one.area == 4


@frozen
class Sent:
    """A value that comes from another process, where its class has made none yet."""

    width: int

    def __hash__(self):
        return 7


def test_a_value_comes_whole_from_another_process_before_its_class_has_made_one():
    plain = object.__new__(Sent)
    plain.__dict__["width"] = 3
    came = pickle.loads(pickle.dumps(plain))
    assert came == Sent(3)
    assert hash(came) == 7, "what a class writes itself stays"
