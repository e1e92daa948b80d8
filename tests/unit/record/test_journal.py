"""The journal of a case: what its lines say, and what is made of lines that say nothing."""

from __future__ import annotations

import json

import pytest

from kneecase.errors import NewerFormatError
from kneecase.record.edits import edit_between
from kneecase.record.journal import JournalEntry, journal_from


def entry(number: int, kind: str = "save", of: int | None = None) -> JournalEntry:
    edit = edit_between("visits.csv", b"%d" % (number - 1), b"%d" % number)
    return JournalEntry(number=number, kind=kind, time="2026-03-02T10:00:00+00:00", edits=(edit,), of=of)


def lines(*entries: JournalEntry) -> bytes:
    return b"".join(e.begin_line() + e.done_line() for e in entries)


def test_an_entry_reads_back_as_it_was_written():
    """Number, kind, time, files and what it takes back are all kept."""
    written = entry(3, "undo", of=2)
    (read,) = journal_from(lines(written)).entries
    assert (read.number, read.kind, read.time, read.edits, read.of, read.done) == (
        *(3, "undo", written.time, written.edits, 2),
        True,
    )


def test_nothing_is_an_empty_journal():
    """No bytes: no entry, nothing pending, the first number is 1."""
    journal = journal_from(b"")
    assert (journal.entries, journal.pending, journal.next_number, journal.sound_size) == ((), None, 1, 0)


def test_a_save_that_was_begun_and_not_done_is_pending():
    """Only the last entry can be pending."""
    journal = journal_from(lines(entry(1)) + entry(2).begin_line())
    assert journal.pending is not None
    assert journal.pending.number == 2


@pytest.mark.parametrize("cut", range(1, 200, 7))
def test_an_end_cut_off_in_the_middle_of_writing_is_left_out(cut):
    """Whatever part of the last line is there, what came before stands and is pending on nothing."""
    whole = lines(entry(1))
    torn = entry(2).begin_line()[:-1][:cut]
    journal = journal_from(whole + torn)
    assert [e.number for e in journal.entries] == [1]
    assert journal.pending is None
    assert journal.sound_size == len(whole)


def test_a_last_line_of_nothing_is_left_out_too():
    """Zeros where the last line should be, as after a power cut, count as a torn end."""
    journal = journal_from(lines(entry(1)) + b"\0" * 40 + b"\n")
    assert journal.sound_size == len(lines(entry(1)))
    assert journal.damaged_lines == ()


@pytest.mark.parametrize(
    "line",
    [
        *(b"{broken", b"[1, 2]", b'{"stage": "begin"}', b'{"stage": "done", "entry": 99}'),
        b'{"stage": "done", "entry": Infinity}',
        json.dumps(
            {"entry": 1, "stage": "begin", "kind": "save", "time": "", "files": [{"name": "../x"}]}
        ).encode(),
    ],
)
def test_a_damaged_line_in_the_middle_is_named_and_passed_over(line):
    """Later entries are still read, and the line is told by its number."""
    journal = journal_from(lines(entry(1)) + line + b"\n" + lines(entry(2)))
    assert [e.number for e in journal.entries] == [1, 2]
    assert journal.damaged_lines == (3,)


def test_lines_of_another_kind_are_passed_over():
    """A line that begins and ends nothing, such as a draft, disturbs nobody and is kept as sound."""
    draft = b'{"journal": 1, "stage": "whole", "kind": "draft", "text": "later"}\n'
    content = lines(entry(1)) + draft
    journal = journal_from(content)
    assert (journal.sound_size, journal.damaged_lines, len(journal.entries)) == (len(content), (), 1)


def test_unknown_parts_of_an_entry_are_kept():
    """What a line says besides is carried along."""
    values = json.loads(entry(1).begin_line())
    (read,) = journal_from(json.dumps({**values, "by": "MO"}).encode() + b"\n").entries
    assert read.extra == {"by": "MO"}


def test_a_journal_of_a_later_kneecase_is_refused_with_a_sentence():
    """Nothing is guessed from a format that is not known."""
    with pytest.raises(NewerFormatError, match="Update kneecase"):
        journal_from(b'{"journal": 2, "entry": 1, "stage": "begin"}\n')


def test_undo_and_redo_walk_through_the_saves():
    """What stands and what was taken back follow from the order of the entries."""
    journal = journal_from(
        lines(
            entry(1, "create"),
            entry(2),
            entry(3),
            entry(4, "undo", 3),
            entry(5, "undo", 2),
            entry(6, "redo", 2),
        )
    )
    assert [e.number for e in journal.standing()] == [1, 2]
    assert [e.number for e in journal.taken_back()] == [3]


def test_a_save_after_an_undo_leaves_nothing_to_redo():
    """A new save starts from where the undo went back to."""
    journal = journal_from(lines(entry(1), entry(2), entry(3, "undo", 2), entry(4)))
    assert [e.number for e in journal.standing()] == [1, 4]
    assert journal.taken_back() == ()
