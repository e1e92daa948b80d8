"""A room's ``__init__.py`` is its door: it names exactly what others may use, and each name is explained."""

from __future__ import annotations

import ast
import importlib
import inspect
import subprocess
import sys
from types import ModuleType

import pytest

import kneecase
from project_tree import ROOMS, Source, sources

STABLE = {
    "kneecase": ["Case", "new_case", "read_case"],
    "kneecase.evidence": ["PublishedValue", "Source", "published_value", "published_values", "sources"],
    "kneecase.record": ["MEASURES", "Case", "Reading", "new_case", "read_case", "save_case", "undo"],
    "kneecase.measures": [
        "effusion_course",
        "frontal_plane_projection_deg",
        "girth_differences",
        "hop_go_ahead",
        "hop_symmetry",
        "joint_angle_deg",
        "jump_height_cm",
        "landing_quality",
        "limb_symmetry",
        "limb_symmetry_index",
        "minimal_detectable_change",
        "motion_deficits",
        "outcome_scores",
        "preoperative_capacity",
        "reference_limb",
        "shank_angle_deg",
        "standard_error_of_measurement",
        "star_excursion",
        "strength_symmetry",
    ],
    "kneecase.recovery": [
        "fit_recovery",
        "gain_rate",
        "motion_gain",
        "real_change",
        "recovery_curve",
        "recovery_prior",
    ],
    "kneecase.report": ["review", "review_page", "review_text"],
}
"""Names other people's work may rest on: they stay."""

WITHOUT_LIST = ("kneecase.evidence.",)
"""Evidence topics hold constants only and are read through the registry."""


@pytest.fixture(params=["kneecase", *(f"kneecase.{room}" for room in ROOMS)])
def door(request: pytest.FixtureRequest) -> ModuleType:
    """Each door in turn."""
    return importlib.import_module(request.param)


def test_every_name_exists(door: ModuleType) -> None:
    """Each name of ``__all__`` can be had, and none stands twice."""
    assert [name for name in door.__all__ if not hasattr(door, name)] == []
    assert len(set(door.__all__)) == len(door.__all__)


def test_names_are_sorted(door: ModuleType) -> None:
    """``__all__`` reads constants, then classes, then functions, each in order."""
    expected = sorted(door.__all__, key=lambda n: (not n.isupper(), not n[0].isupper(), n))

    assert list(door.__all__) == expected


def test_nothing_leaks(door: ModuleType) -> None:
    """A public name that stands at the door but not in ``__all__`` is there by accident."""
    script = (
        f"import importlib, types; m = importlib.import_module({door.__name__!r});"
        "print(*(n for n, t in vars(m).items() if not n.startswith('_') and n not in m.__all__"
        " and not isinstance(t, types.ModuleType) and n not in ('annotations', 'TYPE_CHECKING', 'Any')))"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)

    assert done.stdout.split() == []


def test_stable_names_are_there(door: ModuleType) -> None:
    """Names that users rely on are behind their door."""
    assert [name for name in STABLE.get(door.__name__, []) if name not in door.__all__] == []


def test_public_names_are_explained(door: ModuleType) -> None:
    """Every public function and class has a docstring; every public constant a sentence after it."""
    unexplained = []
    for name in door.__all__:
        thing = getattr(door, name)
        if inspect.isroutine(thing) or inspect.isclass(thing) or inspect.ismodule(thing):
            own = thing.__doc__ and not (inspect.isclass(thing) and thing.__doc__.startswith(f"{name}("))
            unexplained += [] if own else [name]
        elif name != "__version__" and not _constant_is_explained(name):
            unexplained.append(name)

    assert unexplained == []


def _constant_is_explained(name: str) -> bool:
    """Whether a string stands right after the assignment of ``name`` (or of the last of its group)."""
    for source in sources():
        body = source.tree.body
        for here, after in zip(body, [*body[1:], None], strict=True):
            if name in _assigned(here):
                alias = isinstance(here, ast.Assign) and isinstance(here.value, ast.Subscript)
                text = isinstance(after, ast.Expr) and isinstance(after.value, ast.Constant)
                if text or alias:
                    return True
    return False


def _assigned(node: ast.stmt) -> list[str]:
    targets = node.targets if isinstance(node, ast.Assign) else [getattr(node, "target", None)]
    return [t.id for t in targets if isinstance(t, ast.Name)]


@pytest.mark.parametrize("source", sources(), ids=lambda s: s.module)
def test_every_file_names_what_it_offers(source: Source) -> None:
    """Each file says what it is about and lists what others may use, or its names are all its own."""
    assert ast.get_docstring(source.tree), f"{source.place} does not say what it is about"
    if source.module.startswith(WITHOUT_LIST) and source.module.split(".")[-1] not in (
        "provenance",
        "registry",
    ):
        return
    names = getattr(importlib.import_module(source.module), "__all__", None)
    public = [
        node.name
        for node in source.tree.body
        if isinstance(node, ast.FunctionDef | ast.ClassDef) and not node.name.startswith("_")
    ]

    assert names is not None or not public, f"{source.place} has no __all__"
    assert set(public) <= set(names or ()), f"{source.place}: a public name is missing from __all__"


def test_version_is_the_packages() -> None:
    """The version in the code is the one the package was built with."""
    from importlib.metadata import version

    assert kneecase.__version__ == version("kneecase")
