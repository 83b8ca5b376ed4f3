"""The take-home sheet: can a tired carer read it?

Outside sources: textstat for the reading grade of English (Flesch-Kincaid); for Spanish the formula and
the bands of J. Fernández Huerta, "Medidas sencillas de lecturabilidad", Consigna 214, 1959 (from memory),
in which 80 to 90 is easy ("fácil"); wcag-contrast-ratio for contrast (WCAG 2); RNIB Clear Print for the
least size of print.
"""

import re

import textstat
import wcag_contrast_ratio

from aid.drawing import texts
from aid.program import folder, run

COUNTS = re.compile(r"^[\d\s.]+$")


def pages(language="en"):
    with folder() as here:
        run("demo", "--out", ".", "--language", language, cwd=here)
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


# The band that is called easy begins here.
EASY = 80
STRONG, OPEN = "aeoáéó", "íú"


def syllables(word):
    """The syllables of a Spanish word: one for each vowel, but for those that a diphthong joins."""
    plain = re.sub(r"y(?![aeiouáéíóú])", "i", word.lower())
    vowels = re.findall(r"[aeiouáéíóúü]+", plain)
    parts = 0
    for group in vowels:
        parts += 1
        for one, next_one in zip(group, group[1:]):
            both_strong = one in STRONG and next_one in STRONG
            open_beside_strong = (one in OPEN and next_one in STRONG) or (one in STRONG and next_one in OPEN)
            parts += both_strong or open_beside_strong
    return max(parts, 1)


def check_syllables_are_counted_as_dictionaries_part_them():
    parted = "co-jín pier-na cui-da-do o-í-do le-er bue-no a-gua quien dí-a mé-di-co y hay res-ba-la"
    for word in parted.split():
        assert syllables(word.replace("-", "")) == word.count("-") + 1, word


def ease(prose):
    """How easy Spanish is to read, by Fernández Huerta: 206.84 - 60 syllables a word - 1.02 words a sentence."""
    sentences = [own for own in re.split(r"[.?!:]", prose) if re.search(r"[^\W\d]", own)]
    words = re.findall(r"[^\W\d_]+", prose)
    parts = sum(syllables(word) for word in words)
    return 206.84 - 60 * parts / len(words) - 1.02 * len(words) / len(sentences)


def check_the_words_are_easy_in_spanish():
    all_pages = [sentences(svg) for svg in pages("es")]
    # The demo's own notes and contacts are English, and the foot's line is in both languages.
    for prose in all_pages:
        assert ease(prose.split("Pág.")[0]) >= EASY, (ease(prose.split("Pág.")[0]), prose)


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
