"""Prints how much the answers change under each rival, and how many lie within the program's ranges.

    python compare.py [--step MM] [--case NAME]... [--answers FILE.json] [--ranges FILE.json]

--answers keeps the rivals' answers, or takes them from the file where it exists. --ranges is
{case: {measure: [low, high]}} with any of the measures below, as the program states them.
"""

import argparse
import json
import math
from pathlib import Path

import numpy as np

from cases import CASES, Case
from rivals import BASE, MOVED, RIVALS, Rival, rest

MEASURES = {  # name: unit
    "clearance_left": "mm",
    "clearance_right": "mm",
    "roll": "degrees",
    "effect_of_four": "degrees",  # change of roll
    "effect_of_one": "mm",  # change of mean clearance, one cell more in each compartment
}
REFERENCE = Path(__file__).parent.parent / "reference" / "prototype_cases.md"
GOAL = 0.9


def measures(case, rival, step):
    at = lambda counts: rest(case, counts, rival, step)
    moved = list(case.counts)
    for place, change in zip(case.moved, (-MOVED, MOVED)):
        moved[place] += change
    now, after, more = at(case.counts), at(tuple(moved)), at(tuple(n + 1 for n in case.counts))
    values = {
        "clearance_left": 1e3 * now[0],
        "clearance_right": 1e3 * now[1],
        "roll": math.degrees(now[2]),
        "effect_of_four": math.degrees(after[2] - now[2]),
        "effect_of_one": 1e3 * (more[0] + more[1] - now[0] - now[1]) / 2,
    }
    assert all(math.isfinite(value) for value in values.values())
    return values


def reference_rows():
    """Case, load, counts, fill pressures, clearances and pose of each row of the reference table."""
    numbers = lambda text: [float(word) for word in text.replace("/", " ").replace(",", " ").split()]
    for line in REFERENCE.read_text().splitlines():
        cells = [cell.strip() for cell in line.strip("|").split("|")]
        if len(cells) == 12 and cells[0][:1].isdigit():
            yield cells[0], float(cells[1]), *(numbers(cells[k]) for k in (2, 3, 6, 11))


def print_agreement(step):
    print("Base model against tests/reference/prototype_cases.md (clearances rounded to 0.1 mm there):")
    print(f"{'case':<38}{'clearance L R, mm':>18}{'off, mm':>14}{'off, kPa':>9}{'roll, pitch':>14}{'off':>14}")
    stock = {}
    for name, load, counts, pressures, clearances, pose in reference_rows():
        cushion = CASES["six" if name.startswith("6") else "four"].cushion
        case = Case(cushion, tuple(counts), load=load)
        *sides, roll, pitch, found = rest(case, case.counts, Rival(BASE), step)
        sides, tilt = 1e3 * np.array(sides), np.degrees([roll, pitch])
        off, turned = sides - clearances, tilt - pose
        worst = np.abs(np.array(found) / 1e3 - pressures).max()
        print(f"{name + f', {load:.0f} N':<38}{sides[0]:9.2f}{sides[1]:9.2f}{off[0]:+7.2f}{off[1]:+7.2f}{worst:9.3f}"
              f"{tilt[0]:7.2f}{tilt[1]:7.2f}{turned[0]:+7.2f}{turned[1]:+7.2f}")
        stock.setdefault(name.split(",")[0], (case.counts[0], sides, np.array(clearances)))
        before, ours, theirs = stock[name.split(",")[0]]
        cells = before - case.counts[0]
        if cells > 0:
            each = [(now - then) / cells for now, then in ((sides, ours), (np.array(clearances), theirs))]
            print(f"{'    a cell of rear left, L R, mm':<38}{each[0][0]:9.3f}{each[0][1]:9.3f}"
                  f"   there {each[1][0]:.3f} {each[1][1]:.3f}")
    print()


def print_case(name, answers):
    base = answers["base"]
    print(f"{name}: value, and change from the base model")
    print(f"{'':<32}" + "".join(f"{measure + ', ' + unit:>24}" for measure, unit in MEASURES.items()))
    for rival, values in answers.items():
        row = "".join(f"{values[m]:14.2f} {values[m] - base[m]:+9.2f}" for m in MEASURES)
        print(f"{rival:<32}{row}")
    print()


def print_summary(answers):
    print("Change under each rival over all cases: median [least, greatest]")
    print(f"{'':<32}" + "".join(f"{text:>26}" for text in ("clearance, mm", "roll, degrees", "effect of four, degrees", "effect of one, mm")))
    groups = (("clearance_left", "clearance_right"), ("roll",), ("effect_of_four",), ("effect_of_one",))
    for rival in RIVALS:
        row = ""
        for group in groups:
            d = [of[rival][m] - of["base"][m] for of in answers.values() for m in group]
            row += f"{f'{np.median(d):+.2f} [{min(d):+.2f}, {max(d):+.2f}]':>26}"
        print(f"{rival:<32}{row}")
    print()


def print_shares(answers, ranges):
    """Per measure, the share of plausible rivals (the base model is none) within the stated range."""
    odd = {measure for of in ranges.values() for measure in of} - set(MEASURES)
    if odd:
        raise ValueError(f"not a measure: {', '.join(sorted(odd))}")
    rivals = [rival for rival, how in RIVALS.items() if how.plausible]
    unknown = set(ranges) - set(answers)
    if unknown:
        print(f"ranges of cases that were not computed are left out: {', '.join(sorted(unknown))}")
    print("Share of rivals within the stated ranges (goal 90 %):")
    for measure in MEASURES:
        within, outside, by_case = 0, [], []
        for case, of in answers.items():
            if measure not in ranges.get(case, {}):
                continue
            low, high = ranges[case][measure]
            if not low <= high:
                raise ValueError(f"{case}, {measure}: {low} is not at most {high}")
            here = [rival for rival in rivals if low <= of[rival][measure] <= high]
            within += len(here)
            by_case.append(f"{case} {len(here)}/{len(rivals)}")
            outside += [f"{case}: {rival} {of[rival][measure]:.2f}, not in {low:.2f} .. {high:.2f}"
                        for rival in rivals if rival not in here]
        asked = within + len(outside)
        if asked:
            word = "" if within >= GOAL * asked else "  BELOW THE GOAL"
            print(f"{measure:<18}{within:4d} of {asked:3d} = {100 * within / asked:4.0f} %{word}  ({', '.join(by_case)})")
            for line in outside:
                print(f"    {line}")


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--step", type=float, default=6.0, help="of the grid, mm (usual: 6)")
    parser.add_argument("--case", action="append", choices=CASES, help="only this one; may be repeated")
    parser.add_argument("--answers", type=Path)
    parser.add_argument("--ranges", type=Path)
    given = parser.parse_args()
    step = given.step / 1e3
    if given.answers and given.answers.exists():
        answers = json.loads(given.answers.read_text())
    else:
        print_agreement(step)
        everyone = {"base": Rival(BASE), **RIVALS}
        answers = {
            name: {rival: measures(CASES[name], how, step) for rival, how in everyone.items()}
            for name in given.case or CASES
        }
        if given.answers:
            given.answers.write_text(json.dumps(answers, indent=1) + "\n")
    for name, of in answers.items():
        print_case(name, of)
    print_summary(answers)
    if given.ranges:
        print_shares(answers, json.loads(given.ranges.read_text()))


if __name__ == "__main__":
    main()
