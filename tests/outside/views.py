"""The two views of a fill, read back from the papers: mirror images with the same counts.

Outside source: the drawings alone; nothing of the program is asked.
"""

from aid.drawing import texts
from aid.program import folder, run


def demo(name):
    with folder() as here:
        run("demo", "--out", ".", cwd=here)
        return texts((here / f"{name}.svg").read_text(encoding="utf-8"))


def middle(found, words):
    return next(it for it in found if it[0] == words)


def counted(found):
    """Number -> count of a drawing: the number stands in a disc, in print of 0.72 times the size of the count below or beside it."""
    counts = {}
    digits = [it for it in found if it[0].isdigit()]
    for words, x, y, size, *_ in digits:
        near = [it for it in digits if abs(0.72 * it[3] - size) < 0.05 and -1 < it[2] - y < 10 and abs(it[1] - x) < 14]
        if size > 8 and near:
            nearest = min(near, key=lambda it: abs(it[1] - x) + abs(it[2] - y))
            counts[int(words)] = (int(nearest[0]), x, y)
    return counts


def check_counts_are_the_same_from_above_and_from_below():
    above, below = counted(demo("setup-card-1")), counted(demo("fill-card"))
    assert len(above) == 10 and above.keys() == below.keys(), (above, below)
    for number in above:
        assert above[number][0] == below[number][0], number


def check_numbers_are_mirrored():
    above, below = counted(demo("setup-card-1")), counted(demo("fill-card"))
    # The drawings differ in scale: places are taken as shares of the distance between two numbers.
    def shares(found):
        left, right = found[7], found[8]
        width = right[1] - left[1]
        return {number: ((it[1] - left[1]) / width, (it[2] - left[2]) / abs(width)) for number, it in found.items()}

    a, b = shares(above), shares(below)
    # A label stands where its compartment has room, which may be elsewhere in a drawing of another
    # scale; mirrored, it is still nearest to itself.
    for number, (across, along) in a.items():
        def far(other):
            return (b[other][0] - across) ** 2 + (b[other][1] - along) ** 2
        nearest = min(b, key=far)
        assert nearest == number, f"{number} lies at the place of {nearest}"
    # From above 7 is left of 8, from below right of it.
    assert above[7][1] < above[8][1] and below[7][1] > below[8][1]


def check_side_words_stand_on_their_sides():
    for name, left_first in (("setup-card-1", True), ("fill-card", False)):
        found = demo(name)
        large = max(it[3] for it in found if it[0].startswith("CLIENT'S"))
        sides = {it[0]: it[1] for it in found if it[0].startswith("CLIENT'S") and it[3] == large}
        assert (sides["CLIENT'S LEFT"] < sides["CLIENT'S RIGHT"]) == left_first, (name, sides)
        front = next(it for it in found if it[0].startswith("FRONT EDGE") and it[3] == large)
        rear = next(it for it in found if it[0].startswith("REAR EDGE") and it[3] == large)
        assert front[2] < rear[2], name
