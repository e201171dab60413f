"""The house keeps its order: who may import whom, what exact rooms leave out, how long a module may be."""

import ast
from collections.abc import Callable, Iterable, Iterator
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import get_args

import foldmath
from foldmath.paper import steps

HOUSE = Path(foldmath.__file__).parent
ROOMS = [
    "values",
    "phrases",
    "errors",
    "workers",
    "cache",
    "kept_beside",
    "typeface",
    "grammars",
    "plane",
    "paper",
    "measured",
    "tolerance",
    "statements",
    "words",
    "drawing",
    "lesson",
]
ROOMS += ["pointing", "practice", "planning", "fold_format", "pages", "worksheets", "teachers_plan"]
ROOMS += ["guides", "booklets", "slides", "marking", "making", "desk", "cli", "__main__"]
EXACT_ROOMS = {"plane", "paper", "statements", "words", "lesson", "pointing", "practice", "planning"}
OWNERS = {
    "matplotlib": {"drawing"},
    "reportlab": {"pages", "booklets", "guides"},
    "jinja2": {"pages"},
    "lark": {"grammars", "statements", "lesson"},
    "platformdirs": {"cache", "cli.doors.desk", "desk.folding.history"},
    "voluptuous": {"lesson"},
    "sympy": {"plane.rational_of_sympy"},
    "numpy": {"tolerance", "drawing"},
    "uharfbuzz": {"pages"},
    "bidi": {"pages"},
    "fontTools": {"typeface", "pages"},
    "odfdo": {"marking"},
    "docx": {"pages"},
    "flask": {"desk"},
    "werkzeug": {"desk"},
    "waitress": {"desk"},
    "pypdfium2": {"pages"},
    "tomlkit": {"lesson"},
    "babel": {"words"},
    "setuptools": {"words"},
}
MOST_FIELDS, MOST_ARGUMENTS = 4, 6
"""By their place: a reader keeps no more apart."""
MODULES = {
    ".".join(path.relative_to(HOUSE).with_suffix("").parts).removesuffix(".__init__"): path
    for path in sorted(HOUSE.rglob("*.py"))
    if path.parent != HOUSE or path.stem != "__init__"
}


@cache
def tree(name: str) -> ast.Module:
    """Give what a module is made of; read once, and only by the tests that ask for it."""
    return ast.parse(MODULES[name].read_text("utf-8"))


def faults(
    find: Callable[[str], Iterable[object]], names: Iterable[str] = MODULES
) -> dict[str, list[object]]:
    """Give what is found amiss in each module; none where all is well."""
    return {name: found for name in names if (found := list(find(name)))}


@cache
def imports(name: str) -> set[str]:
    """Give the dotted names that a module imports, anywhere in it, with the names it takes from them."""
    found = set()
    for node in ast.walk(tree(name)):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{name} imports relatively"
            found |= {node.module} | {f"{node.module}.{alias.name}" for alias in node.names}
    return found


def own_imports(name: str) -> set[str]:
    """Give the modules of the house that a module imports."""
    return {full.removeprefix("foldmath.") for full in imports(name)} & MODULES.keys()


def room(name: str) -> str:
    return name.split(".")[0]


def test_every_room_is_named():
    assert set(map(room, MODULES)) <= set(ROOMS)


def test_a_module_imports_only_rooms_below_it_and_its_own():
    def from_above(name):
        own = ROOMS.index(room(name))
        return (other for other in own_imports(name) if ROOMS.index(room(other)) > own)

    assert faults(from_above) == {}


def test_no_module_imports_itself_in_a_circle():
    loose = {name: own_imports(name) - {name} for name in MODULES}
    while free := [name for name, needs in loose.items() if not needs & loose.keys()]:
        for name in free:
            del loose[name]
    assert loose == {}


def folder(name: str) -> Path:
    return MODULES[name].parent


def test_no_two_folders_import_each_other():
    ways = {
        (folder(name), folder(other))
        for name in MODULES
        for other in own_imports(name)
        if HOUSE not in (folder(name), folder(other)) and folder(name) != folder(other)
    }
    assert {way for way in ways if way[::-1] in ways} == set()


def test_each_library_stays_in_the_rooms_that_own_it():
    def strangers(name):
        libraries = {full.split(".")[0] for full in imports(name)} & OWNERS.keys()
        return (library for library in libraries if not OWNERS[library] & {room(name), name})

    assert faults(strangers) == {}


READ_BY_SETUP = {"words.compiling.BuildWithCatalogues", "words.extracting.word_lists"}
"""The build and the gathering of words are named in pyproject.toml alone."""


@cache
def words_read(name: str) -> set[str]:
    """Give the names that a module reads, by themselves or of something else."""
    nodes = list(ast.walk(tree(name)))
    plain = {one.id for one in nodes if isinstance(one, ast.Name) and isinstance(one.ctx, ast.Load)}
    return plain | {one.attr for one in nodes if isinstance(one, ast.Attribute)}


def test_whatever_a_module_gives_is_used_in_the_house_and_not_by_tests_alone():
    """Templates are given values, so they use no function or class that Python does not name."""
    taken = set().union(*map(imports, MODULES)) | {f"foldmath.{full}" for full in READ_BY_SETUP}

    def used_elsewhere(name, given):
        others = (other for other in MODULES if f"foldmath.{name}" in imports(other))
        return any(given in words_read(other) for other in others)

    def unused(name):
        for node in tree(name).body:
            if not isinstance(node, ast.FunctionDef | ast.ClassDef) or node.name.startswith("_"):
                continue
            known = f"foldmath.{name}.{node.name}" in taken or node.name in words_read(name)
            if not known and not used_elsewhere(name, node.name):
                yield node.name

    assert faults(unused) == {}


def inexact(name: str) -> Iterator[object]:
    """Give the lines with floats and square roots, and what is taken of math but whole numbers."""
    nodes = list(ast.walk(tree(name)))
    # How alike two words must be to be suggested, which difflib asks for as a float, measures no paper.
    likeness = {node.value for node in nodes if isinstance(node, ast.keyword) and node.arg == "cutoff"}
    for node in nodes:
        match node:
            case ast.Constant(value=float()) if node not in likeness:
                yield node.lineno
            case ast.Call(func=ast.Name(id="float")) | ast.Attribute(attr="sqrt" | "evalf"):
                yield node.lineno
    of_whole_numbers = {"math.gcd", "math.lcm", "math.prod"}
    yield from {full for full in imports(name) if full.startswith("math.")} - of_whole_numbers


def test_exact_rooms_hold_no_floats_and_no_square_roots():
    assert faults(inexact, [name for name in MODULES if room(name) in EXACT_ROOMS]) == {}


def functions(name: str) -> list[ast.FunctionDef | ast.AsyncFunctionDef]:
    return [node for node in ast.walk(tree(name)) if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)]


def calls(node: ast.AST, function: str) -> list[ast.Call]:
    """Give the calls of a function by its plain name, anywhere in a node."""
    found = [call for call in ast.walk(node) if isinstance(call, ast.Call)]
    return [call for call in found if isinstance(call.func, ast.Name) and call.func.id == function]


def unclosed_matches(name: str) -> list[int]:
    """Give the lines of matches on steps that call no other step absurd, in the last case or after it."""
    nodes = list(ast.walk(tree(name)))
    blocks = [block for node in nodes for _, block in ast.iter_fields(node) if isinstance(block, list)]
    following = {id(one): other for block in blocks for one, other in pairwise(block)}
    matches = [node for node in nodes if isinstance(node, ast.Match)]
    return [
        node.lineno
        for node in matches
        if any(kinds_named(case.pattern) for case in node.cases)
        and not closed(node.cases[-1])
        and not closed(following.get(id(node), ast.Pass()))
    ]


def closed(node: ast.AST) -> bool:
    return bool(calls(node, "assert_never"))


KINDS_OF_STEP = {"FoldStep", "OpenStep", "TurnStep", *(kind.__name__ for kind in get_args(steps.Step))}


def kinds_named(node: ast.AST) -> set[str]:
    return {name.id for name in ast.walk(node) if isinstance(name, ast.Name)} & KINDS_OF_STEP


def test_every_match_on_steps_is_closed_so_that_a_new_kind_cannot_pass_it_in_silence():
    assert faults(unclosed_matches) == {}


def test_who_asks_for_more_than_one_kind_of_step_says_what_becomes_of_the_others():
    """One question about a step ("is it a fold?") has two answers; a second makes a branch."""

    def asks_twice(function):
        asked = {ast.unparse(call) for call in calls(function, "isinstance") if kinds_named(call.args[1])}
        values = [question.removeprefix("isinstance(").partition(", ")[0] for question in asked]
        return len(values) > len(set(values))

    def open_branches(name):
        return (one.name for one in functions(name) if asks_twice(one) and not closed(one))

    assert faults(open_branches) == {}


def test_no_function_is_chosen_by_kind_of_step_where_mypy_cannot_see_that_one_lacks():
    def chosen_by_kind(name):
        for function in functions(name):
            if any("register" in ast.unparse(decorator) for decorator in function.decorator_list):
                yield from kinds_named(function.args)

    assert faults(chosen_by_kind) == {}


MOST_LINES, MOST_LINES_OF_A_FUNCTION = 299, 39


def test_modules_stay_under_300_lines_and_functions_under_40():
    def too_long(name):
        if len(MODULES[name].read_text("utf-8").splitlines()) > MOST_LINES:
            yield "the module"
        for one in functions(name):
            if one.end_lineno - one.lineno + 1 > MOST_LINES_OF_A_FUNCTION:
                yield one.name

    assert faults(too_long) == {}


def test_every_room_opens_with_one_sentence():
    def opens_otherwise(path):
        opening, *rest = ast.get_docstring(ast.parse(path.read_text("utf-8"))).splitlines()
        return not opening.endswith(".") or ". " in opening or rest[:1] not in ([], [""])

    assert [path for path in HOUSE.rglob("__init__.py") if opens_otherwise(path)] == []


MADE_BY_THE_THOUSAND = {"Panel", "Motion", "Line", "Source", "Choice"}
"""Named tuples of many fields: made in inner loops, where names cost time."""


def fields_by_place(node: ast.ClassDef) -> list[str]:
    """Give the fields of a dataclass or named tuple that may be given by their place; none of others."""
    made = [ast.unparse(decorator) for decorator in node.decorator_list]
    by_place = any(text.startswith("frozen") and "kw_only=True" not in text for text in made)
    if not by_place and "NamedTuple" not in map(ast.unparse, node.bases):
        return []
    fields = [line for line in node.body if isinstance(line, ast.AnnAssign)]
    names = [ast.unparse(field.annotation) for field in fields]
    fields = fields[: names.index("KW_ONLY")] if "KW_ONLY" in names else fields
    return [field.target.id for field in fields if "ClassVar" not in ast.unparse(field.annotation)]


def test_values_of_many_fields_are_made_by_name_and_no_call_has_seven_arguments_by_place():
    def too_many(name):
        for node in ast.walk(tree(name)):
            if isinstance(node, ast.ClassDef) and len(fields_by_place(node)) > MOST_FIELDS:
                yield from {node.name} - MADE_BY_THE_THOUSAND
            elif isinstance(node, ast.Call) and len(node.args) > MOST_ARGUMENTS:
                yield node.lineno

    assert faults(too_many) == {}
