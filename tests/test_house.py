"""The house keeps its order: who may import whom, what exact rooms leave out, how long a module may be."""

import ast
from itertools import pairwise
from pathlib import Path
from typing import get_args

import pytest

import foldmath
from foldmath.paper import steps

HOUSE = Path(foldmath.__file__).parent
ROOMS = [
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
    "pydantic": {"lesson"},
    "sympy": {"plane.numbers"},
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
TREES = {name: ast.parse(path.read_text("utf-8")) for name, path in MODULES.items()}


def imports(name: str) -> set[str]:
    """Give the dotted names that a module imports, anywhere in it, with the names it takes from them."""
    found = set()
    for node in ast.walk(TREES[name]):
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


@pytest.mark.parametrize("name", MODULES)
def test_a_module_imports_only_rooms_below_it_and_its_own(name):
    assert room(name) in ROOMS
    assert [other for other in own_imports(name) if ROOMS.index(room(other)) > ROOMS.index(room(name))] == []


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


@pytest.mark.parametrize("name", MODULES)
def test_each_library_stays_in_the_rooms_that_own_it(name):
    for library in {full.split(".")[0] for full in imports(name)} & OWNERS.keys():
        assert OWNERS[library] & {room(name), name}, f"{library} does not belong in {name}"


@pytest.mark.parametrize("name", [name for name in MODULES if room(name) in EXACT_ROOMS])
def test_exact_rooms_hold_no_floats_and_no_square_roots(name):
    nodes = list(ast.walk(TREES[name]))
    # How alike two words must be to be suggested, which difflib asks for as a float, measures no paper.
    likeness = {node.value for node in nodes if isinstance(node, ast.keyword) and node.arg == "cutoff"}
    for node in nodes:
        if isinstance(node, ast.Constant) and isinstance(node.value, float):
            assert node in likeness, node.lineno
        elif isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            assert node.func.id != "float", node.lineno
        elif isinstance(node, ast.Attribute):
            assert node.attr not in ("sqrt", "evalf"), node.lineno
    assert {full for full in imports(name) if full.startswith("math.")} <= {
        "math.gcd",
        "math.lcm",
        "math.prod",
    }


def functions(name: str) -> list[ast.FunctionDef | ast.AsyncFunctionDef]:
    return [
        node for node in ast.walk(TREES[name]) if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
    ]


def calls(node: ast.AST, function: str) -> list[ast.Call]:
    """Give the calls of a function by its plain name, anywhere in a node."""
    found = [call for call in ast.walk(node) if isinstance(call, ast.Call)]
    return [call for call in found if isinstance(call.func, ast.Name) and call.func.id == function]


def unclosed_matches(name: str) -> list[int]:
    """Give the lines of matches on steps that call no other step absurd, in the last case or after it."""
    nodes = list(ast.walk(TREES[name]))
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


@pytest.mark.parametrize("name", MODULES)
def test_every_match_on_steps_is_closed_so_that_a_new_kind_cannot_pass_it_in_silence(name):
    assert unclosed_matches(name) == []


@pytest.mark.parametrize("name", MODULES)
def test_who_asks_for_more_than_one_kind_of_step_says_what_becomes_of_the_others(name):
    """One question about a step ("is it a fold?") has two answers; a second makes a branch."""
    for function in functions(name):
        asked = {ast.unparse(call) for call in calls(function, "isinstance") if kinds_named(call.args[1])}
        values = [question.removeprefix("isinstance(").partition(", ")[0] for question in asked]
        assert len(values) == len(set(values)) or closed(function), f"{name}: {function.name}"


@pytest.mark.parametrize("name", MODULES)
def test_no_function_is_chosen_by_kind_of_step_where_mypy_cannot_see_that_one_lacks(name):
    for function in functions(name):
        if any("register" in ast.unparse(decorator) for decorator in function.decorator_list):
            assert not kinds_named(function.args), f"{name}:{function.lineno}"


@pytest.mark.parametrize("name", MODULES)
def test_modules_stay_under_300_lines_and_functions_under_40(name):
    assert len(MODULES[name].read_text("utf-8").splitlines()) < 300
    for node in ast.walk(TREES[name]):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            assert node.end_lineno - node.lineno + 1 < 40, node.name


@pytest.mark.parametrize("path", sorted(HOUSE.rglob("__init__.py")), ids=lambda path: path.parent.name)
def test_every_room_opens_with_one_sentence(path):
    opening, *rest = ast.get_docstring(ast.parse(path.read_text("utf-8"))).splitlines()
    assert opening.endswith(".")
    assert opening.count(". ") == 0
    assert rest[:1] in ([], [""])


def fields_by_place(node: ast.ClassDef) -> list[str]:
    """Give the fields of a dataclass that may be given by their place; none of any other class."""
    made = [ast.unparse(decorator) for decorator in node.decorator_list]
    if not any(text.startswith("dataclass") and "kw_only=True" not in text for text in made):
        return []
    fields = [line for line in node.body if isinstance(line, ast.AnnAssign)]
    names = [ast.unparse(field.annotation) for field in fields]
    fields = fields[: names.index("KW_ONLY")] if "KW_ONLY" in names else fields
    return [field.target.id for field in fields if "ClassVar" not in ast.unparse(field.annotation)]


@pytest.mark.parametrize("name", MODULES)
def test_values_of_many_fields_are_made_by_name_and_no_call_has_seven_arguments_by_place(name):
    for node in ast.walk(TREES[name]):
        if isinstance(node, ast.ClassDef):
            assert len(fields_by_place(node)) <= MOST_FIELDS, node.name
        elif isinstance(node, ast.Call):
            assert len(node.args) <= MOST_ARGUMENTS, f"line {node.lineno}"
