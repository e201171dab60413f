"""Reads paths of straight lines, as Scalable Vector Graphics 2 (W3C), 9.3, has them."""

import re

COMMAND = re.compile(r"([MLHVZmlhvz])([^MLHVZmlhvz]*)")
NUMBER = re.compile(r"-?\d*\.?\d+")


def corners_of(path: str) -> list[list[tuple[float, float]]]:
    """Give the corners of each line or loop of a path."""
    found: list[list[tuple[float, float]]] = []
    x = y = 0.0
    for letter, rest in COMMAND.findall(path):
        values = [float(said) for said in NUMBER.findall(rest)]
        if letter in "Zz":
            x, y = found[-1][0]
            continue
        across, up = (values * 2)[:2] if letter in "HVhv" else values
        if letter.islower():
            across, up = across + x, up + y
        x, y = (x if letter in "Vv" else across), (y if letter in "Hh" else up)
        if letter in "Mm":
            found.append([])
        found[-1].append((x, y))
    return found
