"""The printed papers, through programs that know nothing of Seatwright.

Outside sources: qpdf, MuPDF, Ghostscript and poppler for the files; pdfplumber for the scale;
page-validation for PDF/UA-1 (ISO 14289-1) and PDF/A-3a (ISO 19005-3). What only a person can see,
such as whether the words for a drawing are the right ones, it does not.
"""

import re
import subprocess

import page
import pdfplumber

from aid.drawing import texts
from aid.program import folder, near, run

DEMO = "DEMO-1"

# What an invented client's blanks are filled in with.
ANSWERS = (
    "client=X-001",
    "measures.taken_on=2026-01-15",
    "measures.taken_by=OT",
    "measures.hip_width=380",
    "measures.thigh_depth.left=480",
    "measures.thigh_depth.right=480",
    "weight.kg=60",
    "weight.weighed_on=2026-01-15",
    "cushion.layout=row-six",
    "cushion.size=440x400",
    "cushion.spare_cells=20",
)


def all_papers(here, paper):
    """Prints everything there is, and returns the PDFs."""
    with_paper = ("--paper", paper, "--out", "papers")
    run("new", "client", "client.toml", cwd=here)
    run("set", "client.toml", *ANSWERS, cwd=here)
    run("plan", "client.toml", "--record", "--by", "OT", "--date", "2026-03-02", cwd=here)
    run("print", "client.toml", *with_paper, "--date", "2026-03-02", cwd=here)
    run("history", "client.toml", *with_paper, "--date", "2026-03-02", cwd=here)
    sections = [word for ending in ("pdf", "svg") for word in ("--sections", f"papers/sections.{ending}")]
    run("predict", "client.toml", "--paper", paper, *sections, "--date", "2026-03-02", cwd=here)
    run("print", "--blank", *with_paper, "--date", "2026-03-02", cwd=here)
    run("print", "--stock", "curved-ten", "--size", "440x400", *with_paper, "--date", "2026-03-02", cwd=here)
    found = sorted((here / "papers").glob("*.pdf"))
    assert len(found) >= 9, found
    return found


def each_pdf():
    for paper in ("a4", "letter"):
        with folder() as here:
            for pdf in all_papers(here, paper):
                yield paper, pdf


def output(*command):
    done = subprocess.run(command, capture_output=True, text=True, timeout=120)
    assert done.returncode == 0, f"{command}: {done.stdout}{done.stderr}"
    return done.stdout


def check_four_readers_find_no_fault():
    for _, pdf in each_pdf():
        output("qpdf", "--check", pdf)
        output("mutool", "draw", "-q", "-o", "/dev/null", pdf)
        output("gs", "-q", "-dNOPAUSE", "-dBATCH", "-dPDFSTOPONERROR", "-sDEVICE=nullpage", pdf)
        done = subprocess.run(["pdftotext", pdf, "-"], capture_output=True, text=True, timeout=60)
        assert done.returncode == 0 and not done.stderr, (pdf, done.stderr)


def check_every_document_is_pdf_ua_1_and_pdf_a_3a():
    for _, pdf in each_pdf():
        for profile in ("ua1", "3a"):
            report = page.validate_pdf(str(pdf), profile=profile)
            faults = [(own.rule_id, own.message) for own in report.failures]
            assert report.is_compliant and not faults, (pdf, profile, faults)


def words(text):
    return sorted(re.findall(r"\S+", text))


def check_the_text_of_the_pdf_is_that_of_the_svg():
    for _, pdf in each_pdf():
        svgs = sorted(pdf.parent.glob(pdf.stem + "*.svg"))
        svgs = [svg for svg in svgs if re.fullmatch(re.escape(pdf.stem) + r"(-\d)?\.svg", svg.name)]
        drawn = " ".join(it[0] for svg in svgs for it in texts(svg.read_text(encoding="utf-8")))
        extracted = output("pdftotext", "-raw", pdf, "-")
        # Turned words come out a letter at a time from some readers: letters are compared.
        assert sorted(re.sub(r"\s", "", drawn)) == sorted(re.sub(r"\s", "", extracted)), pdf


def check_the_square_is_100_mm():
    for paper in ("a4", "letter"):
        with folder() as here:
            run("print", "--blank", "--paper", paper, "--out", ".", cwd=here)
            with pdfplumber.open(here / "measuring-form.pdf") as pdf:
                page = pdf.pages[-1]
                mm = 25.4 / 72
                shapes = page.rects + page.curves + page.lines
                square = max(shapes, key=lambda it: it["height"])
                near(float(square["width"]) * mm, 100, 0.05, "width of the square")
                near(float(square["height"]) * mm, 100, 0.05, "height of the square")


def check_pages_have_their_papers_size():
    sizes = {"a4": (595.276, 841.890), "letter": (612, 792)}
    for paper, pdf in each_pdf():
        with pdfplumber.open(pdf) as read:
            for page in read.pages:
                width, height = sizes[paper]
                if "tags-sheet" in pdf.name:
                    width, height = height, width
                elif "tag" in pdf.name:
                    width, height = 100 / 25.4 * 72, 60 / 25.4 * 72
                near(float(page.width), width, 0.01, f"width of {pdf.name}")
                near(float(page.height), height, 0.01, f"height of {pdf.name}")


def check_fonts_are_embedded_and_cut_down():
    for _, pdf in each_pdf():
        rows = output("pdffonts", pdf).splitlines()[2:]
        assert rows
        for row in rows:
            assert re.search(r"yes yes yes", row), row


def check_no_metadata_names_the_client():
    for _, pdf in each_pdf():
        said = output("pdfinfo", pdf) + output("pdfinfo", "-meta", pdf)
        assert "X-001" not in said, said


def check_two_runs_write_the_same_bytes():
    with folder() as one, folder() as other:
        for here in (one, other):
            run("demo", "--out", "papers", cwd=here)
        names = sorted(path.name for path in (one / "papers").iterdir())
        assert names == sorted(path.name for path in (other / "papers").iterdir())
        for name in names:
            assert (one / "papers" / name).read_bytes() == (other / "papers" / name).read_bytes(), name
