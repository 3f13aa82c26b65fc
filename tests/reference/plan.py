#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""An independent reckoning of drain plans, to hold the program against.

Written from the description of the plan alone.  Every value is an exact fraction of a
nanometre until the end; one that stands in a result is rounded once, by `nm`.

    python3 tests/reference/plan.py PLAN      prints inverts and legs
"""
import math
import os
import re
import sys
from fractions import Fraction

from reduce import (FOOT, INCH, METRE, UNIT, UNIT_WORDS, Refused,
                    chainage, half_away, keys_of, length, plain, run_unit, table_of)

# Outside and wall in inches: ASTM D1785 (schedule 40), D3034 (SDR 35).
PIPES = {
    "sch 40": {"1-1/2": (1.900, .145), "2": (2.375, .154), "3": (3.500, .216),
               "4": (4.500, .237), "6": (6.625, .280), "8": (8.625, .322),
               "10": (10.750, .365), "12": (12.750, .406)},
    "sdr 35": {"4": (4.215, .120), "6": (6.275, .180), "8": (8.400, .240),
               "10": (10.500, .300), "12": (12.500, .360)}}
COLUMNS = {
    "point": "point pt name", "chainage": "chainage ch distance run",
    "invert": "invert invertout flowline", "invert_in": "invertin", "slope": "slope",
    "step": "step manholedrop", "footing_bottom": "footingbottom",
    "footing_away": "footingaway", "hub_offset": "huboffset offset",
    "hub_side": "hubside side", "remarks": "remarks note notes description",
    "station": "station sta stn"}
MEANING = {alias: column for column, all_ in COLUMNS.items() for alias in all_.split()}
KEYS = ["drain", "datum", "unit", "pipe", "pipe outside", "pipe wall", "slope",
        "minimum slope", "rules", "bedding", "cover", "outlet", "grade tolerance", "rod",
        "jurisdiction"]
DRAWN_RODS = {"invert": 0, "top of pipe": 1, "inside top": 2}


class Wrong(Refused):
    """A plan without a result; names the codes of which one must be given."""


def nm(value):
    """A length of a result: whole nanometres."""
    return None if value is None else half_away(value)


def slope_of(text, comma=False):
    """A fall over a run, as a fraction."""
    text = plain(text).replace(",", ".") if comma else plain(text)
    match = re.fullmatch(r"([\d.]+) ?%", text)
    if match:
        return Fraction(match[1]) / 100
    match = re.fullmatch(r"1 ?(?::|in) ?([\d.]+)", text)
    if match:
        return 1 / Fraction(match[1])
    match = re.fullmatch(r"(.*?) ?(?:/|\bper\b) ?(ft|foot|m|in|mm)", text)
    if match:
        return Fraction(length(match[1], "ft"), UNIT.get(match[2], FOOT))
    match = re.fullmatch(r"(.*?) ?\bper\b ?(.*)", text)
    if match:
        return Fraction(length(match[1], "ft"), length(match[2], "ft"))
    raise Wrong("bare-slope")


# -- the file --------------------------------------------------------------------------


def header_of(row):
    columns = {}
    for place, cell in enumerate(row):
        meaning = MEANING.get(re.sub(r"[.()/_\-+ ]", "", plain(cell)))
        if meaning:
            columns.setdefault(meaning, place)
    station = columns.pop("station", None)
    if station is not None:
        columns["chainage" if "point" in columns else "point"] = station
    return columns if "point" in columns and {"chainage", "invert"} & set(columns) else None


class Station:
    """A row of the plan; `fixed` is the invert out that the row itself gives."""

    def __init__(self, line, cells, columns, unit, comma):
        def cell(column):
            place = columns.get(column, len(cells))
            return cells[place] if place < len(cells) else ""
        self.line, self.point = line, cell("point").removeprefix("'")
        self.name = re.sub(r" +", " ", plain(self.point))
        self.chainage = chainage(cell("chainage"), unit, comma)
        if self.chainage is None and re.fullmatch(r"\d+\+\d+(\.\d+)?", self.name):
            self.chainage = chainage(self.name, unit, comma)
        if self.chainage is None:
            raise Wrong("no-chainage")
        out = length(cell("invert"), unit, comma)
        self.fixed_in = length(cell("invert_in"), unit, comma)
        self.written_slope = cell("slope") or None
        self.footing = (length(cell("footing_bottom"), unit, comma),
                        length(cell("footing_away"), run_unit(unit), comma))
        self.set_step(out, length(cell("step"), unit, comma))
        self.out = self.come_in = self.uniform = None

    def set_step(self, out, written):
        self.step, self.fixed = written or 0, out
        if self.fixed_in is None:
            return
        if out is None:
            self.fixed = self.fixed_in - self.step
            return
        self.step = self.fixed_in - out
        if written is not None and written != self.step:
            raise Wrong("step-disagrees")
        if self.step < 0:
            raise Wrong("step-up")


class Leg:
    """From one station to the next one downstream, or a stretch of laid pipe."""

    def __init__(self, upper, lower, run, fall, minimum, uncertainty=None):
        self.upper, self.lower, self.length, self.fall = upper, lower, run, fall
        self.slope, self.minimum = Fraction(fall) / run, minimum
        self.uncertainty = uncertainty
        self.verdict = self.judge()
        bad = self.verdict in ("flat", "level", "uphill")
        self.within_reading = bad and uncertainty is not None and self.could_do()
        self.fails = bad and not (self.verdict == "flat" and self.within_reading)

    def could_do(self):
        """Would it do if the readings were out by all that they may be?"""
        best = self.slope + self.uncertainty
        return best > 0 if self.minimum is None else best >= self.minimum

    def judge(self):
        if self.slope <= 0:
            return "uphill" if self.slope else "level"
        if self.minimum is None:
            return None
        return "ok" if self.slope >= self.minimum else "flat"


class Plan:
    def __init__(self, data, rules=None, minimum=None):
        """`rules` reads a rules file; `minimum` goes before what the plan asks."""
        table, separator = table_of(data, header_of)
        at = next(i for i, (_, row) in enumerate(table) if header_of(row))
        columns, self.keys = header_of(table[at][1]), keys_of(table[:at], KEYS)
        unit = plain(self.keys.get("unit", "ft"))
        self.unit, self.comma = UNIT_WORDS.get(unit, unit), separator != ","
        rows = [Station(line, cells, columns, self.unit, self.comma)
                for line, cells in table[at + 1:] if any(cells) and not
                (cells[0].startswith("#") and not any(cells[1:]))]
        self.read_pipe()
        self.stations = self.downstream(rows)
        self.carry()
        self.read_minimum(rules, minimum)
        self.legs = [Leg(a, b, self.run(a, b), a.out - b.come_in, self.minimum)
                     for a, b in self.pairs()]
        self.budget()

    def pairs(self):
        return list(zip(self.stations, self.stations[1:]))

    @staticmethod
    def run(a, b):
        return abs(a.chainage - b.chainage)

    def key_length(self, name, unit=None):
        return length(self.keys.get(name, ""), unit or self.unit, self.comma)

    def read_pipe(self):
        outside, wall = self.key_length("pipe outside"), self.key_length("pipe wall")
        self.size = None
        match = re.fullmatch(r"([\d/ -]+?) ?(?:in|\") (.*)", plain(self.keys.get("pipe", "")))
        if match:
            listed = PIPES[match[2]][match[1].replace(" ", "-")]
            inches = [Fraction(str(value)) * INCH for value in listed]
            outside = inches[0] if outside is None else outside
            wall = inches[1] if wall is None else wall
            self.size = length(match[1] + " in", "ft")
        self.outside, self.wall = outside, wall
        self.pipe_known = outside is not None and wall is not None
        bedding = self.keys.get("bedding", "")
        self.bedding = 0 if plain(bedding) == "none" else self.key_length("bedding")

    def read_minimum(self, rules, minimum):
        own, file = self.keys.get("minimum slope"), self.keys.get("rules")
        if own and file:
            raise Wrong("minimum-twice")
        self.minimum = slope_of(own, self.comma) if own else None
        if minimum:
            self.minimum = slope_of(minimum)
        elif file:
            if self.size is None:
                raise Wrong("size-needed")
            self.minimum = rules(file, self.size)

    def downstream(self, rows):
        """The stations from the upper end to the outlet."""
        if len(rows) < 2:
            raise Wrong("one-station")
        runs = [b.chainage - a.chainage for a, b in zip(rows, rows[1:])]
        if any(run * runs[0] < 0 for run in runs):
            raise Wrong("chainage-order", "same-chainage")
        if 0 in runs:
            raise Wrong("same-chainage")
        outlet = plain(self.keys.get("outlet", ""))
        if not outlet:
            fixed = [row.fixed for row in rows if row.fixed is not None]
            if not fixed or fixed[0] == fixed[-1]:
                raise Wrong("no-outlet")
            outlet = "last" if fixed[0] > fixed[-1] else "first"
        return rows if outlet == "last" else rows[::-1]

    def carry(self):
        line = self.stations
        if line[-1].written_slope:
            raise Wrong("slope-at-outlet")
        places = [i for i, s in enumerate(line) if s.fixed is not None]
        if not places:
            raise Wrong("no-invert")
        for i in places:
            line[i].out = Fraction(line[i].fixed)
            line[i].come_in = line[i].out + line[i].step
        for first, last in zip(places, places[1:]):
            self.between(line[first:last + 1])
        for i in range(places[0] - 1, -1, -1):
            above, below = line[i], line[i + 1]
            above.out = below.come_in + self.slope_from(above) * self.run(above, below)
            above.come_in = above.out + above.step
        for i in range(places[-1] + 1, len(line)):
            above, below = line[i - 1], line[i]
            below.come_in = above.out - self.slope_from(above) * self.run(above, below)
            below.out = below.come_in - below.step

    def slope_from(self, station):
        text = station.written_slope or self.keys.get("slope")
        if not text:
            raise Wrong("no-slope")
        return slope_of(text, self.comma)

    def between(self, line):
        """Uniform over the pipe between two fixed inverts."""
        top, end, inner = line[0], line[-1], line[1:-1]
        drop = top.out - end.come_in - sum(s.step for s in inner)
        grade = drop / self.run(top, end)
        for above, below in zip(line, line[1:]):
            above.uniform = grade
            if below is not end:
                below.come_in = above.out - grade * self.run(above, below)
                below.out = below.come_in - below.step

    def budget(self):
        top, end = self.stations[0], self.stations[-1]
        self.steps = sum(s.step for s in self.stations[1:])
        self.total = self.run(top, end)
        self.available = top.out - end.out
        self.needed = self.spare = None
        if self.minimum is not None:
            self.needed = self.minimum * self.total + self.steps
            self.spare = self.available - self.needed

    def would_do(self):
        """What would make the fall enough, apart from another size: whole nanometres on
        the side where it is."""
        left = self.available - self.steps
        if left <= 0:
            return {"raise_upper_end": math.ceil(-self.spare)}
        return {"raise_upper_end": math.ceil(-self.spare),
                "slope": Fraction(math.floor(left)) / self.total,
                "longest_route": math.floor(left / self.minimum)}

    # -- surfaces at a place of the line ---------------------------------------------

    def invert_at(self, place):
        """The invert out at a chainage; None beyond the ends."""
        for station in self.stations:
            if station.chainage == place:
                return station.out
        for leg in self.legs:
            a, b = leg.upper, leg.lower
            if min(a.chainage, b.chainage) < place < max(a.chainage, b.chainage):
                return a.out - leg.slope * abs(place - a.chainage)
        return None

    def above_invert(self, surface):
        """How far a surface lies above the invert; None where it is not known."""
        if surface == "invert":
            return 0
        if surface == "top of pipe":
            return self.outside - self.wall if self.pipe_known else None
        if surface == "inside top":
            return self.outside - 2 * self.wall if self.pipe_known else None
        if self.wall is None or self.bedding is None:
            return None
        return -self.wall - self.bedding

    def rod(self):
        return self.key_length("rod", run_unit(self.unit)) or 25 * FOOT

    def lowest(self):
        """The lowest that is known of the trench, from the invert down."""
        return (self.wall or 0) + (self.bedding or 0)

    def with_interval(self, interval):
        """The stations and, between them, what stands at whole multiples of a length."""
        if not interval:
            return list(self.stations)
        ends = sorted(s.chainage for s in (self.stations[0], self.stations[-1]))
        taken = {s.chainage for s in self.stations}
        added = [self.added(place) for place in
                 range(ends[0] // interval * interval, ends[1] + 1, interval)
                 if ends[0] < place < ends[1] and place not in taken]
        first = self.stations[0].chainage
        return sorted(self.stations + added, key=lambda s: abs(s.chainage - first))

    def added(self, place):
        station = Station.__new__(Station)
        station.chainage, station.point, station.name = place, None, None
        station.out = station.come_in = self.invert_at(place)
        station.footing, station.step, station.fixed_in = (None, None), 0, None
        return station


def minimum_by_size(data, size):
    """The minimum slope of a rules file for a size of pipe."""
    is_header = lambda row: ("size up to" in [plain(c) for c in row] and
                             "minimum slope" in [plain(c) for c in row])
    table, _ = table_of(data, is_header)
    at = next(i for i, (_, row) in enumerate(table) if is_header(row))
    heads = [plain(cell) for cell in table[at][1]]
    smallest = keys_of(table[:at], ["smallest size"]).get("smallest size")
    rules = []
    for _, row in table[at + 1:]:
        if any(row):
            up_to = length(row[heads.index("size up to")], "in")
            rules.append((math.inf if up_to is None else up_to,
                          slope_of(row[heads.index("minimum slope")])))
    fitting = [rule for rule in rules if size <= rule[0]]
    if not fitting or (smallest and size < length(smallest, "in")):
        raise Wrong("no-rule-for-size")
    return min(fitting)[1]


# -- books that go with a plan ---------------------------------------------------------


def elevation_of(shot):
    return shot.elevation if shot.adjusted is None else shot.adjusted


def place_of(plan, shot):
    """The place of a shot on the line: by its name, failing that by its chainage."""
    named = [s for s in plan.stations if shot.row.name and s.name == shot.row.name] or \
        [s for s in plan.stations if s.step and shot.row.name in (s.name + " in",
                                                                  s.name + " out")]
    if named:
        if shot.row.chainage not in (None, named[0].chainage):
            raise Wrong("place-disagrees")
        return named[0].chainage
    return shot.row.chainage


class Ground:
    """Shots on the ground and on hubs, by chainage."""

    def __init__(self, plan, reduced):
        self.shots, self.hubs = {}, {}
        for shot in reduced.shots:
            surface = shot.row.rod_on or plain(reduced.book.keys.get("rod on", ""))
            place = place_of(plan, shot)
            if place is None or not shot.column:
                continue
            if surface in ("", "ground"):
                self.shots.setdefault(place, elevation_of(shot))
            elif surface == "hub":
                self.hubs.setdefault(place, elevation_of(shot))

    def at(self, place):
        """Elevation and whether it was interpolated; None, False where it is unknown."""
        if place in self.shots:
            return Fraction(self.shots[place]), False
        before = [p for p in self.shots if p < place]
        after = [p for p in self.shots if p > place]
        if not before or not after:
            return None, False
        a, b = max(before), min(after)
        share = Fraction(place - a, b - a)
        return self.shots[a] + share * (self.shots[b] - self.shots[a]), True


class Laid:
    """The pipe as it lies: shots turned into inverts, from the upper end down."""

    def __init__(self, plan, reduced, place_of_rod):
        self.plan, self.shots = plan, []
        for shot in reduced.shots:
            surface = shot.row.rod_on or plain(reduced.book.keys.get("rod on", ""))
            if surface in DRAWN_RODS and shot.column:
                self.take(shot, surface)
            elif not surface and shot.row.name not in reduced.book.known:
                raise Wrong("laid-without-rod-on")
        first = plan.stations[0].chainage
        self.shots.sort(key=lambda s: (abs(s["chainage"] - first), not s["comes_in"]))
        if not self.shots:
            raise Wrong("no-laid-shots")
        self.take_steps()
        self.legs = [self.leg(a, b, place_of_rod)
                     for a, b in zip(self.shots, self.shots[1:])
                     if a["chainage"] != b["chainage"]]
        self.ponds = list(self.find_ponds())[::-1]

    def take(self, shot, surface):
        plan, above = self.plan, self.plan.above_invert(surface)
        place = place_of(plan, shot)
        planned = None if place is None else plan.invert_at(place)
        if planned is None:
            return
        comes_in = [s for s in plan.stations
                    if s.step and s.chainage == place and shot.row.name.endswith(" in")]
        if comes_in:
            planned = comes_in[0].come_in
        if above is None:
            raise Wrong("pipe-needed")
        laid = elevation_of(shot) - above
        allowed = plan.key_length("grade tolerance")
        self.shots.append({
            "line": shot.row.line, "point": shot.row.point, "chainage": place,
            "rod_on": surface, "planned": planned, "laid": laid, "step": 0,
            "comes_in": bool(comes_in),
            "deviation": laid - planned,
            "out": None if allowed is None else abs(laid - planned) > allowed})

    def take_steps(self):
        """Planned steps between shots, but not where both of its pipes were shot."""
        for above, shot in zip(self.shots, self.shots[1:]):
            ends = [(above["chainage"], not above["comes_in"]),
                    (shot["chainage"], not shot["comes_in"])]
            if ends[0][0] == ends[1][0]:
                continue
            turn = 1 if ends[0][0] < ends[1][0] else -1
            low, high = ((turn * place, out) for place, out in ends)
            shot["step"] = sum(s.step for s in self.plan.stations
                               if low < (turn * s.chainage, True) <= high)

    def leg(self, a, b, place_of_rod):
        """No step is a fall of the pipe."""
        run = abs(a["chainage"] - b["chainage"])
        return Leg(a, b, run, a["laid"] - b["laid"] - b["step"], self.plan.minimum,
                   Fraction(place_of_rod, run))

    def find_ponds(self):
        """Walk up from the outlet, and keep the highest invert met so far."""
        walk = []
        for shot in reversed(self.shots):
            walk.append((shot, shot["laid"]))
            if shot["step"]:
                walk.append((shot, shot["laid"] + shot["step"]))
        holder, level, below = walk[0][0], walk[0][1], []
        for place, (shot, invert) in enumerate(walk[1:], 1):
            if invert < level:
                below.append((shot, invert))
                continue
            if below:
                yield self.pond(holder, level, below, (shot, invert))
            holder, level, below = shot, invert, []
        if below:
            yield self.pond(holder, level, below, None)

    @staticmethod
    def pond(holder, level, below, above):
        low = min(invert for _, invert in below)
        last, invert = below[-1]
        end = Fraction(last["chainage"])
        if above:
            share = Fraction(level - invert) / (above[1] - invert)
            end += share * (above[0]["chainage"] - last["chainage"])
        return {"from": (above or below[-1])[0]["point"], "to": holder["point"],
                "depth": level - low, "wet": abs(end - holder["chainage"]),
                "deepest": [shot["point"] for shot, invert in below if invert == low]}


def deepest(plan, ground, stations):
    """Of the trench below the ground: at the stations, and at what was shot between."""
    depths = []
    for place in [*(s.chainage for s in stations), *ground.shots]:
        top, invert = ground.at(place)[0], plan.invert_at(place)
        if None not in (top, invert):
            depths.append(top - invert + plan.lowest())
    return max(depths, default=None)


def boards(plan, ground, stations):
    """Above the invert: the next whole foot, or half metre, over the ground and hubs."""
    step = FOOT if run_unit(plan.unit) == "ft" else METRE // 2
    heights = [height - s.out for s in stations
               for height in (ground.at(s.chainage)[0], ground.hubs.get(s.chainage))
               if height is not None]
    return (max(max(heights), 0) // step + 1) * step if heights else None


# -- one reading while digging ---------------------------------------------------------


def dig(plan, hi, place, surface, rod, within):
    """Wanted reading, wanted - rod, verdict."""
    wanted = hi - plan.invert_at(place) - plan.above_invert(surface)
    difference = wanted - rod
    if abs(difference) <= within:
        verdict = "on grade"
    elif surface == "trench bottom":
        verdict = "dig" if difference > 0 else "over-dug"
    else:
        verdict = "lower" if difference > 0 else "raise"
    return wanted, difference, verdict


def velocity(plan, leg):
    """Manning, pipe full, n 0.013, in nanometres a second."""
    if not plan.pipe_known or leg.slope <= 0:
        return None
    radius = float((plan.outside - 2 * plan.wall) / 4) / FOOT
    return 1.486 / 0.013 * radius ** (2 / 3) * math.sqrt(leg.slope) * FOOT


def main():
    folder = os.path.dirname(sys.argv[1])

    def rules(name, size):
        with open(os.path.join(folder, name), "rb") as file:
            return minimum_by_size(file.read(), size)
    with open(sys.argv[1], "rb") as file:
        plan = Plan(file.read(), rules)
    feet = lambda value: f"{half_away(Fraction(nm(value), 30480)) / 1e4:.4f}"
    for s in plan.stations:
        print(s.point, feet(s.chainage), feet(s.come_in), feet(s.out), sep="\t")
    for leg in plan.legs:
        print(leg.upper.point, leg.lower.point, feet(leg.length), leg.slope, leg.verdict,
              sep="\t")


if __name__ == "__main__":
    main()
