"""The take-home sheet: can a tired carer read it?

Outside sources: textstat for the reading grade (Flesch-Kincaid); wcag-contrast-ratio for contrast
(WCAG 2); RNIB Clear Print for the least size of print.
"""

import re

import textstat
import wcag_contrast_ratio

from aid.drawing import texts
from aid.program import folder, run

COUNTS = re.compile(r"^[\d\s.]+$")


def pages():
    with folder() as here:
        run("demo", "--out", ".", cwd=here)
        return [(here / f"take-home-{page}.svg").read_text(encoding="utf-8") for page in (1, 2, 3, 4, 5)]


def sentences(svg):
    """The lines joined to sentences; numbers of pockets and cells are no prose."""
    lines = [it[0].replace("\u00a0", " ") for it in texts(svg)]
    prose = " ".join(line for line in lines if not COUNTS.match(line) and not line.isupper())
    # An entry of a list ends where the next begins; a heading ends at its line.
    return prose.replace("•", ".").replace(";", ".")


def check_the_words_are_for_grade_6():
    for svg in pages():
        grade = textstat.flesch_kincaid_grade(sentences(svg))
        assert grade <= 6, grade


def check_sentences_are_short():
    *read, to_write_on = pages()
    # The lines of the page to write on are no sentences that go on.
    lines = [it[0] for it in texts(to_write_on)]
    prose = [sentence for svg in read for sentence in re.split(r"[.?:!]", sentences(svg))]
    for sentence in prose + lines:
        # Headings run into the sentence after them here, which makes it longer than it is.
        assert len(sentence.split()) <= 25, sentence


def check_print_is_large():
    for svg in pages():
        # Words at the edges of drawings and in pictures may be smaller; sentences may not.
        small = [it for it in texts(svg) if it[3] < 13.99 and len(it[0].split()) > 3]
        assert not small, small


def colour(text):
    return tuple(int(text[at : at + 2], 16) / 255 for at in (1, 3, 5))


def check_every_ink_stands_out():
    with folder() as here:
        run("demo", "--out", ".", cwd=here)
        for path in here.glob("*.svg"):
            for ink in {it[5] for it in texts(path.read_text(encoding="utf-8"))}:
                # White stands on the two dark grounds, everything else on white or the pale one.
                grounds = ["#181c21", "#104854"] if ink == "#ffffff" else ["#ffffff", "#e4ecee"]
                for ground in grounds:
                    ratio = wcag_contrast_ratio.rgb(colour(ink), colour(ground))
                    assert ratio >= 4.5, (path.name, ink, ground, ratio)
