"""Times for each page of Seatwright's measuring form, and of the same words in Typst.

Usage: typeset.py PROGRAM. The form is what takes no mechanics; both make one PDF of the same number
of pages, with the same words at the same places, in a process of its own, and take turns. A start is
in both times; Typst's, of an empty page, is told beside, since much of it is Python's.
"""

import pathlib
import re
import resource
import statistics
import subprocess
import sys
import tempfile

TURNS = 9
# What the peer runs: Typst's compiler as PyPI has it, from a file to a PDF.
PEER = "import sys, typst; typst.compile(sys.argv[1], output=sys.argv[2])"
FAMILY = "Atkinson Hyperlegible Next"


def timed(*command):
    """Seconds of the processor, of all threads: what else the machine does is not in it."""
    spent = lambda: sum(resource.getrusage(resource.RUSAGE_CHILDREN)[:2])
    before = spent()
    subprocess.run(command, check=True, capture_output=True)
    return spent() - before


def placed(svg):
    """The words of one of our SVGs as Typst's own: each where it stands, in the same size; and its
    strokes as lines, which is less than is drawn."""
    lines = ["#set page(width: 210mm, height: 297mm, margin: 0mm)"]
    for x, y, size, weight, inside in re.findall(
        r'<text x="([\d.]+)" y="([\d.]+)" font-size="([\d.]+)" font-weight="(\d+)".*?>(.*?)</text>', svg
    ):
        words = re.sub(r"<.*?>", "", inside).replace("&amp;", "&").replace("&lt;", "<").replace("&gt;", ">")
        words = words.replace("&quot;", '"').replace("\\", "\\\\").replace('"', '\\"')
        lines.append(
            f'#place(dx: {x}mm, dy: {y}mm, text(size: {size}mm, weight: {weight}, bottom-edge: "baseline", "{words}"))'
        )
    for x0, y0, x1, y1 in re.findall(r' d="M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)"', svg):
        lines.append(f"#place(line(start: ({x0}mm, {y0}mm), end: ({x1}mm, {y1}mm), stroke: 0.25mm))")
    return "\n".join(lines)


def main(program):
    fonts = pathlib.Path(__file__).resolve().parents[2] / "crates" / "sheets" / "fonts"
    with tempfile.TemporaryDirectory() as path:
        here = pathlib.Path(path)
        ours = (program, "print", "--blank", "--out", str(here / "form"), "--date", "2026-03-02")
        timed(*ours)
        pages = sorted((here / "form").glob("*.svg"))
        sources = [placed(page.read_text(encoding="utf-8")) for page in pages]
        (here / "form.typ").write_text(f'#set text(font: "{FAMILY}")\n' + "\n#pagebreak()\n".join(sources), encoding="utf-8")
        (here / "empty.typ").write_text("a", encoding="utf-8")
        peer = PEER.replace("output=", f"font_paths=[{str(fonts)!r}], ignore_system_fonts=True, output=")
        compiles = lambda name: timed(sys.executable, "-c", peer, str(here / f"{name}.typ"), str(here / f"{name}.pdf"))
        own, theirs, empty = [], [], []
        for _ in range(TURNS):
            own.append(timed(*ours))
            theirs.append(compiles("form"))
            empty.append(compiles("empty"))
        for word, of in [("median", statistics.median), ("fastest", min)]:
            a, b, nothing = (1e3 * of(all) for all in (own, theirs, empty))
            print(
                f"{word}, a page of {len(pages)}: seatwright {a / len(pages):.1f} ms (PDF and SVG), "
                f"typst {b / len(pages):.1f} ms (PDF), of which {nothing / len(pages):.1f} ms its start; "
                f"ratio {b / a:.1f}"
            )
        return 0 if min(own) <= min(theirs) else 1


sys.exit(main(sys.argv[1]))
