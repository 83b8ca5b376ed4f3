"""Our pictures of the papers against a browser's rendering of their SVGs.

Outside sources: Chromium, which reads the SVGs with the faces embedded in them; poppler, which says
where each word stands in the PDFs. Our pictures are drawn by another program than Chromium's, with
other code for text, so where both agree with the PDF a page looks the same everywhere.
"""

import os
import pathlib
import re
import shutil
import subprocess

import numpy
from PIL import Image

from aid.program import folder, run

DPI = 150  # of our pictures
MM = DPI / 25.4
# The farthest that a word may stand from where it stands in our picture, mm: less than a letter of
# the smallest print is wide.
FARTHEST = 0.5
# How far is looked, mm: beyond the farthest, so that what moved further is seen to have.
LOOKED = 1.0
# The share of a word's ink that may differ where it agrees best: edges are smoothed otherwise. Of the
# demo's 4617 words the same one differs by 0.51 at most, and none stands elsewhere by more than 0.17 mm;
# where nothing stands all of it differs.
DIFFERS = 0.6
# A page's place in the browser's window, in pixels of CSS; with 1.5625 of ours to each it is whole.
PLACE = (800, 1136)
PER_CSS = DPI / 96


def browser():
    for name in ("chromium", "chromium-headless-shell"):
        if shutil.which(name):
            return name
    raise AssertionError("Chromium is missing")


def rendered(svgs, here, columns=5):
    """Each SVG as Chromium draws it, as grey from 0 (black) to 1."""
    rows = -(-len(svgs) // columns)
    place = lambda at: (at % columns * PLACE[0], at // columns * PLACE[1])
    images = "".join(
        '<img src="{}" style="position:absolute;left:{}px;top:{}px">'.format(svg.resolve().as_uri(), *place(at))
        for at, svg in enumerate(svgs)
    )
    page = here / "all.html"
    page.write_text(f'<!doctype html><body style="margin:0;background:white">{images}', encoding="utf-8")
    picture = here / "all.png"
    command = [
        browser(), "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--no-first-run",
        # As print does: letters at their own places and in grey.
        "--font-render-hinting=none", "--disable-lcd-text",
        f"--user-data-dir={here / 'browser'}", f"--force-device-scale-factor={PER_CSS}",
        f"--window-size={columns * PLACE[0]},{rows * PLACE[1]}", "--virtual-time-budget=10000",
        f"--screenshot={picture}", page.resolve().as_uri(),
    ]  # fmt: skip
    done = subprocess.run(command, capture_output=True, text=True, timeout=120, env={**os.environ, "HOME": str(here)})
    assert picture.exists(), done.stderr
    whole = grey(picture)
    for at in range(len(svgs)):
        left, top = (round(own * PER_CSS) for own in place(at))
        yield whole[top : top + round(PLACE[1] * PER_CSS), left : left + round(PLACE[0] * PER_CSS)]


def grey(picture):
    Image.MAX_IMAGE_PIXELS = None
    return numpy.asarray(Image.open(picture).convert("L"), dtype=float) / 255


def words(pdf, number):
    """Each word of a page with its box in our pixels, from poppler."""
    said = subprocess.run(
        ["pdftotext", "-bbox", "-f", str(number), "-l", str(number), pdf, "-"],
        check=True, capture_output=True, text=True, timeout=60,
    ).stdout  # fmt: skip
    found = re.findall(r'<word xMin="(.*?)" yMin="(.*?)" xMax="(.*?)" yMax="(.*?)">(.*?)</word>', said)
    # A rule of underscores is no word: drawn so thinly, it differs by how its edges are smoothed.
    found = [own for own in found if any(it.isalnum() for it in own[-1])]
    return [(word, [float(own) * DPI / 72 for own in box]) for *box, word in found]


def moved(ours, theirs, box):
    """How far a word stands elsewhere in the other picture, mm, and which share of its ink differs
    there."""
    far = round(LOOKED * MM)
    x0, y0, x1, y1 = (round(own) for own in box)
    own = ours[y0:y1, x0:x1]
    ink = numpy.abs(own - numpy.median(own)).sum()
    best = (numpy.inf, 0.0)
    for dx in range(-far, far + 1):
        for dy in range(-far, far + 1):
            if y0 + dy < 0 or x0 + dx < 0:
                continue
            other = theirs[y0 + dy : y1 + dy, x0 + dx : x1 + dx]
            if other.shape == own.shape:
                best = min(best, (numpy.abs(own - other).sum(), numpy.hypot(dx, dy) / MM))
    return best[1], best[0] / max(ink, 1.0)


def faults(ours, theirs, words):
    """The words that stand elsewhere in the other picture, or nowhere near."""
    found = []
    for word, box in words:
        by, differs = moved(ours, theirs, box)
        if by > FARTHEST or differs > DIFFERS:
            found.append(f"{word!r} by {by:.2f} mm, {differs:.2f} of its ink differs")
    return found


def pages(papers):
    """Every page: its SVG, its picture, its PDF and its number there."""
    for pdf in sorted(papers.glob("*.pdf")):
        numbered = [(papers / f"{pdf.stem}-{number}.svg", number) for number in range(1, 20)]
        found = [own for own in numbered if own[0].exists()] or [(papers / f"{pdf.stem}.svg", 1)]
        for svg, number in found:
            yield svg, svg.with_suffix(".png"), pdf, number


def check_no_word_stands_elsewhere_in_a_browser():
    with folder() as here:
        run("demo", "--out", "papers", cwd=here)
        all_pages = list(pages(here / "papers"))
        assert len(all_pages) >= 10, all_pages
        pictures = list(rendered([svg for svg, *_ in all_pages], here))
        seen = 0
        for (svg, picture, pdf, number), theirs in zip(all_pages, pictures, strict=True):
            ours, listed = grey(picture), words(pdf, number)
            wrong = faults(ours, theirs, listed)
            assert not wrong, (svg.name, wrong)
            seen += len(listed)
        # Much fewer would mean that nothing was looked at.
        assert seen > 1500, seen
        moved_words_are_found(all_pages[0], pictures[0])


def moved_words_are_found(page, theirs):
    """What is 0.7 mm aside, or another page's, is not taken for right: the check can fail."""
    _, picture, pdf, number = page
    ours, listed = grey(picture), words(pdf, number)
    aside = numpy.roll(theirs, round(0.7 * MM), axis=1)
    assert len(faults(ours, aside, listed[:50])) > 45
    assert len(faults(ours, numpy.ones_like(theirs), listed[:50])) == 50
