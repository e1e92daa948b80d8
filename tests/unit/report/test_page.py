"""The page is whole in itself, escaped, and overwrites nothing of others."""

from __future__ import annotations

import os
import re
from html.parser import HTMLParser

import pytest

from kneecase.errors import Problem, SaveError
from kneecase.record import Athlete, Limit, read_case
from kneecase.report import review_page, reviewed, write_page

HOSTILE = '<script>alert("x")</script><img src=//example.invalid/x>&{{ 7 * 7 }}'
VOID = {"meta", "img", "br", "link", "hr"}


class Outline(HTMLParser):
    """Collects ids, images, headings and whether every element is closed."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.tags: list[str] = []
        self.ids: list[str] = []
        self.images: list[dict[str, str | None]] = []
        self.links: list[str] = []

    def handle_starttag(self, tag, attrs):
        """An element begins."""
        found = dict(attrs)
        self.tags.append(tag)
        self.ids += [found["id"]] if "id" in found else []
        self.images += [found] if tag == "img" else []
        self.links += [found["href"]] if "href" in found else []
        if tag not in VOID:
            self.open.append(tag)

    def handle_endtag(self, tag):
        """An element ends: it must be the one that was opened last."""
        assert self.open.pop() == tag


def outline(page):
    """The outline of a page."""
    found = Outline()
    found.feed(page)
    found.close()
    assert found.open == []
    return found


def test_every_sample_page_is_whole(sample_case, artefacts):
    """Each sample case gives a well-formed page with one title heading, alt text and no outside address."""
    case = read_case(sample_case)
    page = review_page(case)
    (artefacts / f"review-{sample_case.name}.html").write_text(page, "utf-8")
    found = outline(page)

    assert found.tags.count("h1") == 1
    assert "script" not in found.tags
    assert "link" not in found.tags
    assert len(set(found.ids)) == len(found.ids)
    assert all(link.removeprefix("#") in found.ids for link in found.links)
    assert all(
        image["alt"] and image["src"].startswith("data:image/svg+xml;base64,") for image in found.images
    )
    assert not re.search(r"(?:src|href)\s*=\s*[\"']?(?:https?:)?//|@import|url\(", page)
    assert reviewed(case).banner.pseudonym in page


def test_same_page_each_time(sample_case):
    """A page is the same bytes each time: it holds no clock and no chance."""
    case = read_case(sample_case)

    assert review_page(case) == review_page(case)


def test_sample_pages_show_charts():
    """The stiff knee's page shows its motion, the hop battery's page its trials."""
    from project_tree import ROOT

    stiff = outline(review_page(read_case(ROOT / "sample_data" / "stiff-knee")))
    hops = outline(review_page(read_case(ROOT / "sample_data" / "hop-battery")))

    assert any(image["alt"].startswith("Knee flexion of the operated") for image in stiff.images)
    assert any("Effusion by the stroke test" in image["alt"] for image in stiff.images)
    assert any(image["alt"].startswith("Hop tests") for image in hops.images)
    assert not any("Effusion" in image["alt"] for image in hops.images), "one day is no course"


def test_hostile_text_stays_text(make_case, flexion, visit):
    """Whatever stands in a case is shown as text: no markup, no template, in any corner of the page."""
    case = make_case(
        athlete=Athlete(pseudonym=HOSTILE),
        readings=(flexion(7, 60, tester=HOSTILE, device=HOSTILE), flexion(14, 70, tester=HOSTILE)),
        visits=(visit(14, {"activity": HOSTILE, "reason": HOSTILE, "soreness": HOSTILE}, fever="yes"),),
        limits=(Limit(kind="other", start=make_case().surgery.date, note=HOSTILE),),
        warnings=(Problem(severity="warning", file=HOSTILE, what="odd", mend="Check."),),
    )
    page = review_page(case)
    found = outline(page)

    assert "script" not in found.tags
    assert all("src" in image and image["src"].startswith("data:") for image in found.images)
    assert "&lt;script&gt;" in page
    assert "{{ 7 * 7 }}" in page


def test_flags_stand_before_answers(make_case, flexion, visit):
    """Recorded red flags come first, with who to turn to."""
    case = make_case(readings=(flexion(7, 60), flexion(14, 70)), visits=(visit(14, chest_pain="yes"),))
    page = review_page(case)

    assert page.index("Red flags recorded") < page.index('id="flexion_gain"')
    assert "Act now: emergency help by the local pathway" in page
    assert "<b>Not asked</b>" in page


def test_without_visits_that_is_said(make_case):
    """A record without visits says that nothing was asked."""
    page = review_page(make_case())

    assert "no red flag was asked about" in page
    assert "The last visits" not in page


def test_last_three_visits_latest_first(make_case, visit):
    """The last three visits are told, the latest first, with the clinician's own decision."""
    about = {"action": "hold", "decided_by": "AB", "pain": {"rest": 2.0}, "response_next_day": "same"}
    page = review_page(make_case(visits=tuple(visit(n, about) for n in (7, 14, 21, 28))))
    weeks = re.findall(r'<th scope="row">(\d{4}-\d\d-\d\d), week', page)

    assert weeks == ["2026-02-02", "2026-01-26", "2026-01-19"]
    assert "hold; by AB" in page
    assert "pain 0–10: rest 2" in page
    assert "next day: same" in page


def test_visit_without_a_word_says_so(make_case, visit):
    """A visit in which nothing was noted is not left blank."""
    page = review_page(make_case(visits=(visit(7),)))

    for text in ("pain not asked", "not recorded", "no decision recorded"):
        assert text in page


def test_a_course_without_a_picture_keeps_its_words(make_case, flexion, monkeypatch):
    """Where a chart has nothing to draw, the answer stands without one."""
    from kneecase.errors import InputError

    def refuses(*_, **__):
        raise InputError("nothing to draw")

    monkeypatch.setattr("kneecase.report.page.motion_chart", refuses)
    page = review_page(make_case(readings=(flexion(7, 60), flexion(14, 70))))

    assert 'id="flexion_gain"' in page
    assert "<figure" not in page


# -- writing --------------------------------------------------------------------------


def test_page_is_written_whole(make_case, tmp_path):
    """The file holds exactly the page, with ordinary permissions, and nothing is left beside it."""
    page = review_page(make_case())
    written = write_page(page, tmp_path / "page.html")

    assert written.read_text("utf-8") == page
    assert list(tmp_path.iterdir()) == [written]
    if os.name == "posix":
        assert written.stat().st_mode & 0o444 == 0o444 & ~_umask()


def _umask():
    mask = os.umask(0)
    os.umask(mask)
    return mask


def test_only_its_own_page_is_replaced(make_case, tmp_path):
    """A page of the same case is replaced; another case's, or another file, only when forced."""
    mine = review_page(make_case())
    other = review_page(make_case(athlete=Athlete(pseudonym="Tansy")))
    file = write_page(mine, tmp_path / "page.html")

    assert write_page(mine, file) == file
    with pytest.raises(SaveError, match="review of another case"):
        write_page(other, file)
    file.write_bytes(b"\xff\xfe not a page")
    with pytest.raises(SaveError, match="kneecase did not write it"):
        write_page(mine, file)
    assert write_page(other, file, force=True).read_text("utf-8") == other


def test_a_failed_write_leaves_nothing(make_case, tmp_path, monkeypatch):
    """When the disk fails, the old page stays and no half page is left."""
    mine = review_page(make_case())
    file = write_page(mine, tmp_path / "page.html")

    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "replace", full)
    with pytest.raises(SaveError, match="No space left on device"):
        write_page(mine, file)
    assert file.read_text("utf-8") == mine
    assert list(tmp_path.iterdir()) == [file]
