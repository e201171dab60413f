"""Two sets of a made-up lesson that differ in every file, and what must hold of a folder that got them."""

from pathlib import Path

from foldmath.making.sets.file_set import FileSet
from foldmath.making.sets.leftovers import mend_all
from foldmath.making.sets.manifest import MANIFEST, Origin, digest, read_manifest

NAMES = ("worksheet.pdf", "answer-key.pdf", "diagrams/step-1.svg", "diagrams/step-2.svg")
RUNS = ("first", "second")


def set_of(run: str, out: Path, name: str = "", names: tuple[str, ...] = NAMES) -> FileSet:
    """Give the set of a run, each file of which says whose it is."""
    files = {file: f"{file} of the {run} run\n".encode() * 200 for file in names}
    return FileSet(lesson_folder=out / "seed-trays", name=name, files=files, origin=Origin(run))


def run_of(folder: Path) -> str | None:
    """Tell which run a folder holds whole; None where it is not there yet."""
    if not folder.exists():
        return None
    manifest = read_manifest(folder)
    assert manifest is not None
    for name, told in manifest.files.items():
        assert digest((folder / name).read_bytes()) == told, f"{name} is not of this run"
        assert f"of the {manifest.origin.lesson} run" in (folder / name).read_text("utf-8")
    assert set(manifest.files) == set(NAMES)
    return manifest.origin.lesson


def names_in(folder: Path) -> set[str]:
    """Name every file in a folder, but the manifest of its own set."""
    names = {path.relative_to(folder).as_posix() for path in folder.rglob("*") if not path.is_dir()}
    return names - {MANIFEST}


def mended(out: Path) -> None:
    """Do what the next run does first."""
    mend_all(out / "seed-trays")
