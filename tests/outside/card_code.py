"""The code on setup card and take-home sheet, read from a picture of the paper by zxing-cpp, which knows
nothing of Seatwright.

Outside sources: zxing-cpp reads the code (ISO/IEC 18004) from what MuPDF draws; qpdf hands out the text that
the PDF carries; zlib has the checksum (CRC-32). The picture is grey, of 150 dpi, turned by 7 degrees, and a
tenth of the code is painted over.
"""

import math
import tomllib
import zlib

import zxingcpp
from PIL import Image, ImageDraw

from aid.program import LAYOUTS, folder, report, run
from papers import ANSWERS, output

DPI = 150
MM = DPI / 25.4
SERIAL = "SW-2026-0142"
NAME = "seatwright-code.txt"
# Where a tenth of the code is painted over, as the middle of a square in shares of its side: the finder
# squares reach to 0.2 from three corners.
SPOTS = ((0.5, 0.5), (0.5, 0.8), (0.8, 0.5), (0.8, 0.8), (0.38, 0.62))
SHADES = (0, 128, 255)


def largest(layout, here):
    """The largest size of a layout, and twice the cells of its stock fill in each compartment."""
    found = [own for own in report("layouts", cwd=here)["layouts"] if own["layout"] == layout]
    size = found[0]["sizes"][-1]["size_mm"]
    drawn = report("pattern", layout, "--size", size, cwd=here)
    counts = {own["number"]: 2 * own["cells"]["high"] for own in drawn["compartments"]}
    return size, counts


def printed(layout, here, paper="a4", language="en"):
    """The PDFs of a setup card and of a take-home sheet with very many cells, and the counts."""
    size, counts = largest(layout, here)
    run("new", "client", "c.toml", cwd=here)
    answers = [own for own in ANSWERS if not own.startswith(("cushion.layout", "cushion.size"))]
    own = (f"cushion.layout={layout}", f"cushion.size={size}", f"cushion.serial={SERIAL}")
    run("set", "c.toml", *answers, *own, cwd=here)
    day = ("--date", "2026-03-02")
    run("plan", "c.toml", "--record", "--nearest-safe", "--by", "OT", *day, cwd=here)
    filled = [f"{number}={cells}" for number, cells in counts.items()]
    run("record", "c.toml", "filled", *filled, "--by", "OT", *day, cwd=here)
    run("print", "c.toml", "--out", "papers", "--paper", paper, "--language", language, *day, cwd=here)
    pdfs = [next((here / "papers").glob(f"*-{name}.pdf")) for name in ("setup-card", "take-home")]
    return pdfs, list(counts.values())


def pages(pdf):
    """The pages in grey, as MuPDF draws them."""
    output("mutool", "draw", "-q", "-r", str(DPI), "-c", "gray", "-o", pdf.with_suffix(".%d.png"), pdf)
    pictures = sorted(pdf.parent.glob(pdf.stem + ".*.png"))
    assert pictures, pdf
    return [Image.open(own).convert("L") for own in pictures]


def read(picture):
    found = zxingcpp.read_barcodes(picture, formats=zxingcpp.BarcodeFormat.QRCode)
    return [own for own in found if own.valid]


def carried(pdf):
    return output("qpdf", f"--show-attachment={NAME}", pdf)


def corners(code):
    at = code.position
    return [(own.x, own.y) for own in (at.top_left, at.top_right, at.bottom_left)]


def spoilt(picture, code, spot, shade):
    """The picture with a tenth of the code painted over, turned by 7 degrees."""
    (x, y), (right, _), (_, low) = corners(code)
    side = ((right - x) + (low - y)) / 2
    half = side * math.sqrt(0.1) / 2
    middle = (x + spot[0] * side, y + spot[1] * side)
    changed = picture.copy()
    box = [middle[0] - half, middle[1] - half, middle[0] + half, middle[1] + half]
    ImageDraw.Draw(changed).rectangle(box, fill=shade)
    return changed.rotate(7, resample=Image.Resampling.BILINEAR, expand=True, fillcolor=255)


def the_code(pdf):
    """The page with the code and what is read from it; there is one."""
    found = [(page, code) for page in pages(pdf) for code in read(page)]
    assert len(found) == 1, (pdf, found)
    return found[0]


def check_every_layout_is_read_from_spoilt_pictures():
    for layout in LAYOUTS:
        with folder() as here:
            pdfs, counts = printed(layout, here)
            for pdf in pdfs:
                page, code = the_code(pdf)
                text = carried(pdf)
                assert code.text == text, (pdf, code.text, text)
                assert f"/{'-'.join(map(str, counts))}/" in text, (counts, text)
                for spot in SPOTS:
                    for shade in SHADES:
                        again = [own.text for own in read(spoilt(page, code, spot, shade))]
                        assert again == [text], (pdf, spot, shade, again)


def check_the_text_is_what_the_page_of_the_developers_says():
    with folder() as here:
        pdfs, _ = printed("curved-ten", here)
        one, other = map(carried, pdfs)
        assert one == other
        body, checksum = one.rsplit("/", 1)
        assert checksum == f"{zlib.crc32(body.encode()):08X}", one
        assert len(one) <= 150, one
        version, layout, digest, cell, cell_digest, size, counts, plan, word, serial, client = body.split("/")
        assert (version, layout, cell, serial, client) == ("SW1", "CURVED-TEN", "PILLOW-25", SERIAL, ""), one
        assert len(digest) == len(cell_digest) == 10 and "X" in size and counts and plan == "1", one
        assert f"-plan-{plan}-{word}-" in pdfs[0].name, (one, pdfs)


def check_the_code_is_an_inch_wide_with_white_around_it():
    """On paper 25 mm at least with the white of four modules (ISO/IEC 18004), on both papers."""
    for paper, language in (("a4", "en"), ("letter", "es")):
        with folder() as here:
            for pdf in printed("curved-ten", here, paper, language)[0]:
                page, code = the_code(pdf)
                (left, top), (right, _), (_, low) = corners(code)
                side = right - left
                version = int(code.extra["Version"])
                assert version <= 8 and code.ec_level == "Q", (pdf, code.extra)
                white = 4 * side / (17 + 4 * version)
                # Corners are told to a dot, at each end.
                assert (side + 2 * white + 2) / MM >= 25.0, (pdf, side / MM)
                around = page.crop([round(own) for own in (left - white, top - white, right + white, low + white)])
                # Without what lies within two dots of the edges of the code and of the white.
                edge = int(white) - 2
                around.paste(255, (edge, edge, around.width - edge, around.height - edge))
                inside = around.crop((2, 2, around.width - 2, around.height - 2))
                assert inside.getextrema()[0] > 200, (pdf, "something stands in the white around the code")


def check_a_client_made_of_what_the_phone_reads_has_the_counts():
    with folder() as here:
        pdfs, counts = printed("island-eight", here)
        _, code = the_code(pdfs[1])
        run("restore", code.text, "--out", "again.toml", "--serial", SERIAL, cwd=here)
        run("restore", pdfs[0], "--out", "pdf.toml", "--date", "2026-03-02", cwd=here)
        for file in ("again.toml", "pdf.toml"):
            kept = tomllib.loads((here / file).read_text(encoding="utf-8"))["record"]
            assert [own["cells"] for own in kept[0]["counts"]] == counts and len(kept) == 1, (file, kept)
