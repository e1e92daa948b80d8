"""Marking the notebooks of a working copy as trusted, so that JupyterLab shows them as they were made.

JupyterLab takes the style out of a notebook that this user did not run.  The ones that
kneecase ships, and only those whose bytes are still the shipped ones, are signed with the
user's own key.  The signature stays on this machine.
"""

from __future__ import annotations

from pathlib import Path

from kneecase.shipped import WorkingCopy

__all__ = ["trusted"]


def trusted(copy: WorkingCopy) -> tuple[Path, ...]:
    """Sign the shipped notebooks of ``copy``; the ones that were signed.

    A notebook that was changed is left alone.  Where the key store cannot be written, nothing is
    signed: the notebooks then show with plainer tables until they are run.
    """
    import nbformat
    from nbformat.sign import NotebookNotary

    notebooks = [path for path in (*copy.new, *copy.same) if path.suffix == ".ipynb"]
    signed = []
    try:
        notary = NotebookNotary()
        for path in notebooks:
            notary.sign(nbformat.read(path, as_version=4))
            signed.append(path)
        notary.store.close()
    except OSError:
        return tuple(signed)
    return tuple(signed)
