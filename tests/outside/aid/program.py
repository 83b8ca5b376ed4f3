"""Runs the program in folders that go away afterwards, always with the same date."""

import contextlib
import json
import os
import pathlib
import subprocess
import tempfile

PROGRAM = os.environ.get("SEATWRIGHT", "target/debug/seatwright")
ROOT = pathlib.Path(__file__).resolve().parents[3]
REFERENCE = ROOT / "tests" / "reference"
DATE = "2026-03-02"
# Names of the built-in layouts, from the files that the program embeds.
LAYOUTS = sorted(path.stem for path in (ROOT / "layouts").glob("*.toml"))


def example(name, *arguments):
    """Runs an example of one of the crates, as the tests built it; returns what it wrote to stdout."""
    command = [str(pathlib.Path(PROGRAM).resolve().parent / "examples" / name), *arguments]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, timeout=600)
    assert done.returncode == 0, done.stderr
    return done.stdout


@contextlib.contextmanager
def folder():
    """A new folder, gone afterwards."""
    with tempfile.TemporaryDirectory(prefix="seatwright-") as path:
        yield pathlib.Path(path)


def run(*arguments, cwd, expect=0):
    """Runs the program; returns what it wrote to stdout. The exit status must be `expect`."""
    command = [str(pathlib.Path(PROGRAM).resolve()), *map(str, arguments)]
    done = subprocess.run(command, cwd=cwd, capture_output=True, text=True, encoding="utf-8", timeout=120)
    assert done.returncode == expect, (
        f"{' '.join(command[1:])}: status {done.returncode}, not {expect}\n{done.stdout}{done.stderr}"
    )
    return done.stdout


def report(*arguments, cwd):
    """Runs a command with `--json` and returns its report."""
    value = json.loads(run(*arguments, "--json", cwd=cwd))
    assert value["schema"] == 1 and value["estimate"] is True, value
    return value


def near(value, expected, tolerance, what):
    """Holds `value` to `expected` within `tolerance`, on both sides; NaN fails."""
    assert abs(value - expected) <= tolerance, f"{what}: {value}, expected {expected} +- {tolerance}"
