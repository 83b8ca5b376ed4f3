"""Runs the checks of the named files and counts them.

A check is a function whose name begins with `check_`. It passes when it returns, and fails when it
raises. The last line is `outside: N passed, N failed`.
"""

import importlib
import sys
import traceback


def checks(name):
    module = importlib.import_module(name)
    found = [value for key, value in vars(module).items() if key.startswith("check_") and callable(value)]
    if not found:
        sys.exit(f"{name}: no function begins with check_")
    return found


def run(check):
    try:
        check()
    except Exception:
        print(f"FAILED {check.__module__}.{check.__name__}: {(check.__doc__ or '').strip()}")
        traceback.print_exc(file=sys.stdout)
        return False
    return True


def main(names):
    results = [run(check) for name in names for check in checks(name)]
    print(f"outside: {results.count(True)} passed, {results.count(False)} failed")
    return 0 if results and all(results) else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
