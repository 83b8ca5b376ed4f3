"""The pictures of the README that show papers of the demo client, made by one command:

    PYTHONPATH=tests/outside SEATWRIGHT=target/debug/seatwright target/test-python/bin/python -m aid.gallery
"""

from pathlib import Path

from PIL import Image

from aid.program import folder, run

ROOT = Path(__file__).resolve().parents[3]
GALLERY = ROOT / "out" / "gallery"
CLIENT = ROOT / "crates" / "cli" / "demo" / "client.toml"
# The day of the demo, on which nothing is overdue.
DAY = "2026-02-24"
# Wide enough to be read on a page of the web, in pixels.
WIDE = 800
# The same of those in Spanish.
SPANISH = {
    "es-setup-card": "setup-card-1",
    "es-take-home-1": "take-home-1",
    "es-take-home-2": "take-home-2",
}
# By file of the gallery, the paper as the program calls it.
PAPERS = {
    "setup-card": "setup-card-1",
    "setup-card-2": "setup-card-3",
    "setup-card-3": "setup-card-4",
    "fill-card": "fill-card",
    "take-home-1": "take-home-1",
    "take-home-2": "take-home-2",
    "wash-day": "wash-day-1",
    "height-gauge": "height-gauge-1",
    "letter": "letter-1",
    "tag": "tag",
}


def drawn():
    """Each picture of the gallery as the program draws it now."""
    with folder() as here:
        run("print", str(CLIENT), "--date", DAY, "--png", "--out", "papers", cwd=here)
        run("print", str(CLIENT), "--date", DAY, "--png", "--language", "es", "--out", "es", cwd=here)
        run("predict", str(CLIENT), "--date", DAY, "--sections", "sections.png", cwd=here)
        pages = {name: next((here / "papers").glob(f"*-{page}.png")) for name, page in PAPERS.items()}
        pages |= {name: next((here / "es").glob(f"*-{page}.png")) for name, page in SPANISH.items()}
        pages["sections"] = here / "sections.png"
        return {name: small(path) for name, path in pages.items()}


def small(path):
    page = Image.open(path).convert("RGB")
    size = (WIDE, round(page.height * WIDE / page.width))
    return page.resize(size, Image.Resampling.LANCZOS) if page.width > WIDE else page


if __name__ == "__main__":
    for name, picture in drawn().items():
        # A palette is enough for print, and a fifth as large.
        picture.quantize(64).save(GALLERY / f"{name}.png", optimize=True)
