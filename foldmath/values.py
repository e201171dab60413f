"""Frozen dataclasses, the values of all rooms, made without compiling anything.

``dataclasses.dataclass(frozen=True)`` writes six methods of each class as text and compiles them when their
module is imported: with three hundred classes that was a third of a command's start. Here five methods are
shared by all classes, and the sixth, ``__init__``, is compiled when a first value of its class is made.
"""

import dataclasses
from collections.abc import Callable
from operator import attrgetter
from typing import Any, NoReturn, TypeVar, cast, dataclass_transform, overload

Kind = TypeVar("Kind", bound=type)

made = tuple.__new__
"""Makes a named tuple of all its values in one tuple, where they are made by the thousand: to call the class
itself takes twice as long, since it is a function in Python."""


@overload
def frozen(kind: Kind, /) -> Kind: ...
@overload
def frozen(*, eq: bool = True, kw_only: bool = False) -> Callable[[Kind], Kind]: ...
@dataclass_transform(frozen_default=True, field_specifiers=(dataclasses.field,))
def frozen(kind: Any = None, /, *, eq: bool = True, kw_only: bool = False) -> Any:
    """Make a class a dataclass whose values never change, as ``dataclass(frozen=True)`` does."""

    def made(kind: type) -> type:
        dataclasses.dataclass(init=False, repr=False, eq=False, kw_only=kw_only)(kind)
        methods = {"__setattr__": _refuse, "__delattr__": _refuse, "__repr__": _shown}
        methods |= {"__init__": _first_init(kind)}
        if eq:
            methods |= _comparing(kind)
        for name, method in methods.items():
            if kind.__dict__.get(name) is None:
                setattr(kind, name, method)
        return kind

    return made if kind is None else made(kind)


def _refuse(value: object, name: str, _: object = None) -> NoReturn:
    raise dataclasses.FrozenInstanceError(f"{type(value).__qualname__} is frozen: {name}")


def _shown(value: Any) -> str:
    shown = (
        f"{field.name}={getattr(value, field.name)!r}" for field in dataclasses.fields(value) if field.repr
    )
    return f"{type(value).__qualname__}({', '.join(shown)})"


def _comparing(kind: Any) -> dict[str, Callable[..., Any]]:
    """Compare and hash values by their fields; without any, those of one class are equal."""
    fields = dataclasses.fields(kind)
    compared = [field.name for field in fields if field.compare]
    hashed = [field.name for field in fields if (field.compare if field.hash is None else field.hash)]
    told, kept = attrgetter(*(compared or ["__class__"])), attrgetter(*(hashed or ["__class__"]))

    def equal(value: object, other: object) -> bool:
        return told(value) == told(other) if other.__class__ is value.__class__ else NotImplemented

    return {"__eq__": equal, "__hash__": lambda value: hash(kept(value))}


def _first_init(kind: Any) -> Callable[..., None]:
    """Write the class's own ``__init__`` in the place of this one, when it is called first."""

    def written_when_called(made: object, /, *arguments: object, **named: object) -> None:
        kind.__init__ = _init_of(kind)
        kind.__init__(made, *arguments, **named)

    return written_when_called


def _init_of(kind: Any) -> Callable[..., None]:
    """Compile the ``__init__`` of a class: each field given, or its default, or what its factory makes.

    Its own names begin with two lines, as no field's does.
    """
    known: dict[str, Any] = {"__put": object.__setattr__, "__missing": dataclasses.MISSING}
    by_place, by_name, lines = ["__made"], ["*"], []
    for field in dataclasses.fields(kind):
        name = given = taken = field.name
        if field.default_factory is not dataclasses.MISSING:
            known[f"__make_{name}"] = field.default_factory
            taken, given = f"{name}=__missing", f"__make_{name}() if {name} is __missing else {name}"
        elif field.default is not dataclasses.MISSING:
            known[f"__default_{name}"] = field.default
            taken = f"{name}=__default_{name}"
        (by_name if field.kw_only else by_place).append(taken)
        lines.append(f"__put(__made, {name!r}, {given})")
    if hasattr(kind, "__post_init__"):
        lines.append("__made.__post_init__()")
    heads = ", ".join([*by_place, *(by_name if len(by_name) > 1 else [])])
    exec(f"def __init__({heads}):\n " + "\n ".join(lines or ["pass"]), known)
    return cast("Callable[..., None]", known["__init__"])
