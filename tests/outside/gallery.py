"""README's pictures of papers are what the program draws now. Outside source: Pillow's reading of both."""

from PIL import Image, ImageChops, ImageStat

from aid.gallery import GALLERY, drawn

# A palette of 64 colours is off by some levels of 255 on average; another word or line in a box is off by
# far more.
MEAN, BOX, IN_A_BOX = 4.0, 40, 40.0


def check_gallery_is_as_the_program_draws():
    for name, now in drawn().items():
        kept = Image.open(GALLERY / f"{name}.png").convert("RGB")
        assert kept.size == now.size, f"{name}: {kept.size} is now {now.size}: make the gallery anew"
        difference = ImageChops.difference(kept, now).convert("L")
        assert ImageStat.Stat(difference).mean[0] < MEAN, f"{name} looks otherwise: make the gallery anew"
        boxes = difference.reduce(BOX)
        assert boxes.getextrema()[1] < IN_A_BOX, f"{name} looks otherwise in places: make the gallery anew"
