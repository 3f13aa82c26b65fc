#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Hold the program against the reference: random books and drain plans, every number.

    python3 tests/reference/compare.py --program build/rodbook --count 1000 --seed 1

Also, for a quarter of them: what `reduce -f csv` writes is a book with the same
elevations; falls and peg tests.  And a slip planted in a book is among the suspects.
The same seed gives the same books and plans.
"""
import argparse
import functools
import json
import multiprocessing
import os
import random
import re
import subprocess
import sys
import tempfile
from decimal import Decimal
from fractions import Fraction

sys.dont_write_bytecode = True

import books
import hold_levels
import hold_plans
import slips
from reduce import FOOT, INCH, METRE, Reduced, half_away

SHOWN = {"ft": (FOOT, 4), "ft-in": (FOOT, 4), "in": (INCH, 3), "m": (METRE, 4),
         "mm": (METRE // 1000, 1)}
QUARTER = 4  # each process that starts is time: the lesser checks are made less often


class Program:
    """The program, run in a folder of its own."""

    def __init__(self, path, folder):
        self.path = os.path.abspath(path)
        self.folder = tempfile.mkdtemp(dir=folder)

    def file(self, name, data):
        path = os.path.join(self.folder, name)
        with open(path, "wb") as file:
            file.write(data)
        return path

    def run(self, *arguments, **options):
        return subprocess.run([self.path, *arguments], capture_output=True, check=False,
                              cwd=self.folder, **options)

    def reduce(self, path, *options):
        return self.json("reduce", *options, path)

    def json(self, command, *options):
        """Exit status, result or None, messages."""
        done = self.run(command, "-f", "json", *options)
        try:
            result = json.loads(done.stdout, parse_float=Decimal, parse_int=Decimal)
        except ValueError:
            result = None
        return done.returncode, result, done.stderr.decode("utf-8", "replace")


def shown(value, unit):
    """A length as the result shows it; None stays None."""
    if value is None:
        return None
    scale, places = SHOWN[unit]
    return Decimal(half_away(Fraction(value, scale) * 10**places)).scaleb(-places)


def expected_points(reduced):
    book = reduced.book
    for shot in reduced.shots:
        back = shot.backsight_row
        dip = shot.row.dip
        best = shot.elevation if shot.adjusted is None else shot.adjusted
        values = {
            "known_elevation": book.known.get(shot.row.name) if shot.row.name else None,
            "backsight": back.bs if back else None,
            "height_of_instrument": shot.opens.hi if shot.opens else None,
            "intermediate": shot.reading if shot.column == "is_" else None,
            "foresight": shot.reading if shot.column == "fs" else None,
            "elevation": shot.elevation, "correction": shot.correction,
            "adjusted": shot.adjusted, "below": None if dip is None else best - dip,
            "chainage": shot.row.chainage}
        fields = {key: shown(value, book.unit) for key, value in values.items()}
        fields.update(line=shot.row.line, point=shot.row.point or None, kind=shot.kind)
        if back and back is not shot.row:
            fields["backsight_line"] = back.line
        yield fields


def expected_sections(reduced):
    unit = reduced.book.unit
    for s in reduced.sections:
            yield {"from": s.start_name.point, "setups": len(s.chain),
               "to": s.end.row.point if s.closed else None,
               "sum_backsight": shown(s.sum_bs, unit) if s.end else None,
               "sum_foresight": shown(s.sum_fs, unit) if s.end else None,
               "length": shown(s.length, unit) if s.end else None,
               "misclosure": shown(s.misclosure, unit), "closed": s.closed,
               "within_tolerance": s.within}


def differences(wanted, got, what):
    wanted = list(wanted)
    if len(wanted) != len(got):
        yield f"{what}: {len(wanted)} expected, {len(got)} given"
    for number, (want, have) in enumerate(zip(wanted, got)):
        for key, value in want.items():
            if key == "to" and value is None:
                continue
            if have.get(key) != value:
                name = want.get("point") or want.get("from")
                yield (f"{what} {number} ({name}) {key}: "
                       f"expected {value}, given {have.get(key)}")


def compare_book(program, seed, number):
    """What differs, and the files and options with which it does."""
    rng = random.Random(f"{seed}/{number}")
    data = books.write(books.observe(rng), rng)
    path = program.file("book.csv", data)
    wrong, result = reduce_book(program, path, data)
    if result and number % QUARTER == 0:
        wrong += round_trip(program, path, result)
    return wrong, {"book.csv": data}, []


def reduce_book(program, path, data):
    """What differs, and the result or None."""
    reduced = Reduced(data)
    status, result, talk = program.reduce(path)
    if result is None:
        return [f"no result, exit {status}: {talk.strip()[:600]}"], None
    wrong = list(differences(expected_points(reduced), result["points"], "point"))
    wrong += differences(expected_sections(reduced), result["sections"], "section")
    failed = any(s.within is False for s in reduced.sections)
    if status != (1 if failed else 0):
        wrong.append(f"exit {status}, expected {int(failed)}: {talk.strip()[:300]}")
    return wrong, result


def round_trip(program, path, result):
    """What the program writes as CSV reduces to the same elevations; it does not say where
    the rod stood, and without that more points are checks."""
    written = program.run("reduce", "-f", "csv", path).stdout
    again = program.file("again.csv", written)
    status, second, talk = program.reduce(again, "-u", result["unit"])
    if second is None:
        return [f"round trip: no result, exit {status}: {talk.strip()[:600]}"]
    keep = ["point", "elevation", "height_of_instrument", "known_elevation"]
    if not any(p["rod_on"] for p in result["points"]):
        keep.append("kind")
    wanted = [{key: p[key] for key in keep} for p in result["points"]]
    for first, then in zip(wanted, second["points"]):
        if re.fullmatch(r"\+\d\d(\.\d+)?", first["point"] or ""):
            whole = re.fullmatch(r"\d+" + re.escape(first["point"]), then["point"] or "")
            first["point"] = whole[0] if whole else first["point"]  # 1+10, of +10
    return list(differences(wanted, second["points"], "round trip"))


class Worker:
    """One of several processes; a program and its folder in each."""
    program = None

    @classmethod
    def start(cls, path, folder):
        cls.program = Program(path, folder)
        hold_plans.prepare(cls.program)


def run_one(compare, seed, number):
    return (number, *compare(Worker.program, seed, number))


def keep(folder, name, files):
    for file, data in files.items():
        with open(os.path.join(folder, f"{name}-{file}"), "wb") as out:
            out.write(data)


def compare_all(pool, what, compare, count, options):
    """How many of the random cases differ."""
    wrong = 0
    one = functools.partial(run_one, compare, options.seed)
    for number, found, files, arguments in pool.imap(one, range(count), 20):
        if not found:
            continue
        wrong += 1
        if wrong <= options.show:
            print(f"{what} {number} {' '.join(arguments)}")
            print("\n".join("  " + line for line in found[:8]), flush=True)
            if options.keep:
                keep(options.keep, f"{what}-{options.seed}-{number}", files)
    print(f"{what}s: {count - wrong} of {count} agree", flush=True)
    return wrong


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--program", default="build/rodbook")
    parser.add_argument("--count", type=int, default=1000,
                        help="books, and plans; of the rest a quarter")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--slips", type=int, default=300, help="planted, of each kind")
    parser.add_argument("--show", type=int, default=10, help="disagreements shown")
    parser.add_argument("--keep", metavar="FOLDER", help="where to leave their files")
    parser.add_argument("--jobs", type=int, default=os.cpu_count())
    options = parser.parse_args()
    with tempfile.TemporaryDirectory(prefix="compare-") as folder:
        start = [options.program, folder]
        with multiprocessing.Pool(options.jobs, Worker.start, start) as pool:
            wrong = 0
            for what, compare, count in (
                    ("book", compare_book, options.count),
                    ("plan", hold_plans.compare, options.count),
                    ("fall", hold_levels.compare_falls, options.count // QUARTER),
                    ("peg", hold_levels.compare_pegs, options.count // QUARTER)):
                wrong += compare_all(pool, what, compare, count, options)
        missed = slips.plant(Program(*start), options.slips, options.seed)
    sys.exit(1 if wrong or missed else 0)


if __name__ == "__main__":
    main()
