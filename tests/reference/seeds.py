#!/usr/bin/env python3
"""seeds.py FOLDER COUNT: random books, plans with their ground and laid books, and levels,
as seeds for the fuzzer.  Each is one of the files of `make reference`."""
import os
import random
import sys

import books
import hold_levels
import hold_plans


def keep(folder, kind, number, *files):
    """Several files in one stand apart by lines of %%%%."""
    os.makedirs(os.path.join(folder, kind), exist_ok=True)
    with open(os.path.join(folder, kind, f"random-{number}"), "wb") as out:
        out.write(b"\n%%%%\n".join(files))


def main(folder, count):
    for number in range(count):
        rng = random.Random(f"seed/{number}")
        keep(folder, "book", number, books.write(books.observe(rng), rng))
        keep(folder, "book", f"levels-{number}", hold_levels.Falls(rng).data)
        case = hold_plans.Case(rng)
        files = case.files
        keep(folder, "plan", number, case.data, files.get("ground.csv", b""),
             files.get("laid.csv", b""))
        for name in files.keys() - {"plan.csv"}:
            keep(folder, "book", f"{number}-{name}", files[name])


if __name__ == "__main__":
    main(sys.argv[1], int(sys.argv[2]))
