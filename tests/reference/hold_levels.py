# SPDX-License-Identifier: MIT
"""Hold falls along a book and two-peg tests against exact fractions."""
import random
from fractions import Fraction

import plans
from hold_plans import compare_lists, differences, leg_fields, length_as_shown
from plan import Leg, nm, slope_of
from reduce import FOOT, METRE, Reduced

PIPE = ("invert", "top of pipe", "inside top")


class Falls:
    """A book of shots with chainage, on one or two surfaces."""

    def __init__(self, rng):
        self.rng = rng
        unit = rng.choice(list(plans.PLACE))
        self.scale = METRE if unit in ("m", "mm") else FOOT
        self.book = plans.Levelled(unit, rng, 100 * FOOT)
        surfaces = rng.choice([["invert"], ["top of pipe"], ["ground"], [""],
                               ["invert", "ground"], ["ground", "inside top", "rim"]])
        for surface in surfaces:
            self.draw(surface)
        self.book.close()
        self.options, self.minimum, self.outlet = [], None, rng.choice(["first", "last", ""])
        if self.outlet:
            self.options += ["--outlet", self.outlet]
        if rng.random() < .6:
            text = rng.choice(plans.MINIMA)
            self.minimum = slope_of(text)
            self.options += ["--minimum", text]
        self.unit = rng.choice([None, None, *plans.PLACE])
        if self.unit:
            self.options += ["-u", self.unit]
        self.unit = self.unit or unit
        self.data = self.book.data(rng.choice(["", "none"]))
        self.reduced = Reduced(self.data)

    def draw(self, surface):
        rng, book = self.rng, self.book
        run = rng.sample(range(0, 400), rng.randrange(2, 7))
        drop = rng.randrange(-40, 41)
        for number, place in enumerate(run):
            level = book.hi - (500 + drop * place // 50 + rng.choice([0, 0, 1, -1, 40])) \
                * FOOT // 100
            book.shot(f"{surface[:1]}-{number}", place * self.scale, level, surface)

    def runs(self):
        """By surface, in the order in which each comes first; downstream."""
        runs = {}
        for shot in self.reduced.shots:
            if shot.row.chainage is not None and shot.column:
                level = shot.elevation if shot.adjusted is None else shot.adjusted
                runs.setdefault(shot.row.rod_on, []).append(
                    {"point": shot.row.point, "chainage": shot.row.chainage, "level": level})
        for surface, shots in runs.items():
            shots.sort(key=lambda s: s["chainage"])
            falls_back = shots[-1]["level"] > shots[0]["level"]
            if len(shots) > 1:
                turned = self.outlet == "first" or (not self.outlet and falls_back)
                yield surface, shots[::-1] if turned else shots

    def leg(self, a, b):
        run = abs(a["chainage"] - b["chainage"])
        return Leg(a, b, run, a["level"] - b["level"], self.minimum,
                   Fraction(self.book.place(), run))


def compare_falls(program, seed, number):
    """What differs, and the files and options with which it does."""
    case = Falls(random.Random(f"fall/{seed}/{number}"))
    files = {"falls.csv": case.data}
    program.file("falls.csv", case.data)
    status, result, talk = program.json("fall", "--decimals", "9", *case.options,
                                        "falls.csv")
    runs = list(case.runs())
    if result is None:
        fine = not runs and status == 2 and "[no-legs]" in talk
        return [] if fine else [f"exit {status}: {talk[:300]}"], files, case.options
    if not runs:
        return [f"legs out of nothing, exit {status}"], files, case.options
    # A run on a pipe goes first.
    runs.sort(key=lambda run: run[0] not in PIPE)
    fails = any(section.within is False for section in case.reduced.sections)
    legs, totals = [], []
    for surface, shots in runs:
        made = [case.leg(a, b) for a, b in zip(shots, shots[1:])]
        judged = case.minimum is not None or surface in PIPE
        # Only of a laid pipe what the reading may be out is let pass, with a warning.
        fails |= judged and any(leg.verdict in ("flat", "level", "uphill") for leg in made)
        name = lambda shot: shot["point"]
        legs += [leg_fields(leg, name, case.unit) for leg in made]
        totals.append(leg_fields(case.leg(shots[0], shots[-1]), name, case.unit))
    wrong = compare_lists(legs, result["legs"], "leg")
    wrong = [*wrong, *compare_lists(totals, result["totals"], "total"),
             *differences(totals[0], result["total"], "total")]
    if status != int(fails):
        wrong.append(f"exit {status}, expected {int(fails)}: {talk[:300]}")
    return wrong, files, case.options


# -- two pegs --------------------------------------------------------------------------


def compare_pegs(program, seed, number):
    """The line of sight rises by e over a length: ((a2 - b2) - (a1 - b1)) over the same of
    the distances; readings of the second row are corrected by it, in whole nanometres."""
    rng = random.Random(f"peg/{seed}/{number}")
    unit = rng.choice(["ft", "m"])
    scale, place = (FOOT, FOOT // 1000) if unit == "ft" else (METRE, METRE // 1000)
    readings = [[rng.randrange(500, 9000) * place for _ in "ab"] for _ in "12"]
    readings[1][1] = readings[1][0] - readings[0][0] + readings[0][1] + \
        rng.randrange(-40, 41) * place
    lengths = [[rng.randrange(5, 300) * scale for _ in "ab"] for _ in "12"]
    if rng.random() < .5:
        lengths[0][1] = lengths[0][0]
    spread = (lengths[1][0] - lengths[1][1]) - (lengths[0][0] - lengths[0][1])
    rows = "".join(f"{n + 1},{a / scale:.3f},{b / scale:.3f},{da // scale},{db // scale}\n"
                   for n, ((a, b), (da, db)) in enumerate(zip(readings, lengths)))
    data = f"unit,{unit}\nsetup,a,b,distance a,distance b\n{rows}".encode()
    program.file("peg.csv", data)
    status, result, talk = program.json("peg", "--decimals", "9", "peg.csv")
    files = {"peg.csv": data}
    # Distances that tell nothing, or a line of sight that no level has.
    if spread == 0 or "[two-peg-too-steep]" in talk:
        return ([] if status == 2 else [f"exit {status}, expected 2"]), files, []
    if result is None:
        return [f"no result, exit {status}: {talk[:300]}"], files, []
    rise = Fraction((readings[1][0] - readings[1][1]) - (readings[0][0] - readings[0][1]),
                    spread)
    corrected = [length_as_shown(reading - nm(rise * run), unit)
                 for reading, run in zip(readings[1], lengths[1])]
    want = {"corrected": dict(zip("ab", corrected)),
            "collimation_per_100": length_as_shown(rise * 100 * scale, unit),
            "uncertainty_per_100": length_as_shown(
                Fraction(2 * place, abs(spread)) * 100 * scale, unit)}
    return list(differences(want, result, "peg")), files, []
