"""The notebooks and sample cases that come with kneecase: where they are, and a working copy of them.

An installed wheel carries them inside the package; in a project tree that is
installed editable they stand beside ``toolkit``.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from kneecase.errors import KneecaseError

__all__ = ["SHIPPED", "WorkingCopy", "shipped_folder", "working_copy"]

SHIPPED = ("notebooks", "sample_data")
"""The folders that come with kneecase; a working copy holds them side by side under the same names."""

_PACKAGE = Path(__file__).resolve().parent
_NOT_COPIED = ("__pycache__", ".ipynb_checkpoints", ".DS_Store")


@dataclass(frozen=True, kw_only=True)
class WorkingCopy:
    """What a copy did: files that are new, that were there already, and that were kept as changed."""

    folder: Path
    new: tuple[Path, ...]
    same: tuple[Path, ...]
    kept: tuple[Path, ...]

    @property
    def start(self) -> Path:
        """The notebook to open first."""
        return self.folder / "notebooks" / "00-start-here.ipynb"

    def words(self) -> str:
        """What happened, for people; every file that was kept is named."""
        lines = [f"Working folder: {self.folder}"]
        if self.new:
            lines.append(f"Copied {len(self.new)} file{'' if len(self.new) == 1 else 's'} there.")
        if self.same:
            lines.append(f"{len(self.same)} already there, unchanged.")
        if self.kept:
            lines.append("Kept as they are, because they differ from the ones that come with kneecase:")
            lines += [f"  {path.relative_to(self.folder)}" for path in self.kept]
            lines.append("For a fresh copy of one of them, rename yours and start again.")
        return "\n".join(lines)


def shipped_folder(name: str, package: Path = _PACKAGE) -> Path:
    """The folder ``"notebooks"`` or ``"sample_data"`` as it came with kneecase.

    Raises
    ------
    KneecaseError
        If this installation does not hold it.
    """
    for folder in (package / "_shipped" / name, package.parents[1] / name):
        if name in SHIPPED and folder.is_dir():
            return folder
    raise KneecaseError(
        f"The folder {name!r} is not part of this installation of kneecase ({package}). "
        "Install kneecase again, from a wheel or from the project folder."
    )


def working_copy(folder: str | Path, package: Path = _PACKAGE) -> WorkingCopy:
    """Copy the notebooks and sample cases into ``folder``; nothing that is there is overwritten.

    Raises
    ------
    KneecaseError
        If the folder cannot be written, or this installation lacks the files.
    """
    home = Path(folder).expanduser().resolve()
    outcome: dict[str, list[Path]] = {"new": [], "same": [], "kept": []}
    for source, target in _pairs(home, package):
        try:
            outcome[_copied(source, target)].append(target)
        except OSError as error:
            raise KneecaseError(
                f"{target} could not be written: {error.strerror}. Choose another one: kneecase start FOLDER"
            ) from error
    return WorkingCopy(folder=home, **{key: tuple(paths) for key, paths in outcome.items()})


def _pairs(home: Path, package: Path) -> list[tuple[Path, Path]]:
    pairs = []
    for name in SHIPPED:
        root = shipped_folder(name, package)
        if home == root or root in home.parents:
            raise KneecaseError(f"{home} is where kneecase keeps its own {name}. Choose another folder.")
        for source in sorted(root.rglob("*")):
            parts = source.relative_to(root).parts
            if source.is_file() and not any(part in _NOT_COPIED for part in parts):
                pairs.append((source, home.joinpath(name, *parts)))
    return pairs


def _copied(source: Path, target: Path) -> str:
    content = source.read_bytes()
    target.parent.mkdir(parents=True, exist_ok=True)
    try:
        with target.open("xb") as file:
            file.write(content)
    except FileExistsError:
        return "same" if target.is_file() and target.read_bytes() == content else "kept"
    return "new"
