# SPDX-License-Identifier: MIT
"""Hold the program's drain plans against the reference: every number of the result."""
import json
import math
import random
from decimal import Decimal
from fractions import Fraction

import plans
from plan import Ground, Laid, Plan, Wrong, boards, deepest, dig, minimum_by_size, nm, velocity
from reduce import FOOT, INCH, METRE, Reduced, half_away, plain

SCALE = {"ft": FOOT, "ft-in": FOOT, "in": INCH, "m": METRE, "mm": METRE // 1000}


def places(value, count):
    """A number as it is shown, half away from zero."""
    if value is None:
        return None
    return Decimal(half_away(Fraction(value) * 10**count)).scaleb(-count)


def length_as_shown(value, unit):
    """In whole nanometres, and then in the unit with nine places."""
    value = nm(value)
    return None if value is None else places(Fraction(value, SCALE[unit]), 9)


def leg_fields(leg, name, unit):
    in_per_ft = lambda slope, count=4: places(None if slope is None else 12 * slope, count)
    return {
        "from": name(leg.upper), "to": name(leg.lower),
        "length": length_as_shown(leg.length, unit),
        "fall": length_as_shown(leg.fall, unit),
        "inches_per_foot": in_per_ft(leg.slope), "percent": places(100 * leg.slope, 4),
        "one_in": places(1 / leg.slope, 4) if leg.slope else None,
        "degrees": places(math.degrees(math.atan(leg.slope)), 4),
        "minimum_inches_per_foot": in_per_ft(leg.minimum),
        "uncertainty_inches_per_foot": in_per_ft(leg.uncertainty, 6),
        "verdict": leg.verdict, "within_reading": leg.within_reading}


class Case:
    """A plan, what goes with it on the command line, and what must come out."""

    def __init__(self, rng):
        self.rng = rng
        self.drain = plans.Drain(rng)
        self.data = plans.write_plan(self.drain, rng)
        self.files, self.options = {"plan.csv": self.data}, []
        self.hi = self.ground = self.laid = self.second = self.interval = None
        self.ground_book = self.laid_book = None
        self.minimum = rng.choice(plans.MINIMA) if rng.random() < .05 else None
        if self.minimum:
            self.options += ["--minimum", self.minimum]
        self.refused = self.plan = None
        try:
            self.plan = Plan(self.data, self.rules, self.minimum)
            self.draw()
        except Wrong as wrong:
            self.refused = wrong.args
        unit = rng.choice([None, None, None, *SCALE])
        if unit:
            self.options += ["-u", unit]
        self.unit = unit or (self.plan.unit if self.plan else "ft")

    @staticmethod
    def rules(name, size):
        return minimum_by_size(plans.RULES[name].encode(), size)

    def draw(self):
        rng, plan = self.rng, self.plan
        if rng.random() < .5:
            self.draw_hi()
        if rng.random() < .4:
            self.interval = rng.choice([5, 10, 25, 50]) * self.drain.scale // 2
            self.options += ["--interval", self.distance(self.interval)]
        self.use_anyway = rng.random() < .2
        if self.use_anyway:
            self.options.append("--use-anyway")
        if rng.random() < .5:
            book = plans.write_ground(plan, rng)
            self.ground_book = self.take("ground", book)
            self.ground = Ground(plan, self.ground_book)
        if rng.random() < .5:
            book = plans.write_laid(plan, rng)
            self.laid_book = self.take("laid", book)
        if self.laid_book and (self.use_anyway or not self.open_books()):
            self.laid = Laid(plan, self.laid_book, book.place())

    def take(self, name, book):
        data = book.data(self.rng.choice(["", "", "none", "setups"]))
        self.files[name + ".csv"] = data
        self.options += ["--" + name, name + ".csv"]
        return Reduced(data)

    def distance(self, value):
        metric = self.drain.scale == METRE
        return f"{Decimal(value) / self.drain.scale} {'m' if metric else 'ft'}"

    def draw_hi(self):
        rng, step = self.rng, plans.PLACE["mm"]
        top = max(station.out for station in self.plan.stations)
        self.hi = plans.rounded(top + rng.randrange(-2, 9) * FOOT, step)
        metres = lambda value: f"{Decimal(value) / METRE} m"
        if rng.random() < .5:
            self.options += ["--hi=" + metres(self.hi)]
            return
        back = rng.randrange(100, 3000) * step
        self.options += ["--benchmark=" + metres(self.hi - back), "--backsight=" + metres(back)]
        if rng.random() < .4:
            self.second = rng.randrange(-9, 10) * step
            other = 3100 * step - back
            self.options += ["--benchmark=" + metres(self.hi + self.second - other),
                             "--backsight=" + metres(other)]

    # -- what must come out ----------------------------------------------------------

    def length(self, value):
        return length_as_shown(value, self.unit)

    def lengths(self, values):
        return {key: self.length(value) for key, value in values.items()}

    def station(self, s):
        plan = self.plan
        tops = [plan.above_invert(of) for of in ("top of pipe", "trench bottom")]
        top, bottom = (None if above is None else s.out + above for above in tops)
        less = lambda a, b: None if a is None or b is None else a - b
        ground, between = self.ground.at(s.chainage) if self.ground else (None, False)
        hub = self.ground.hubs.get(s.chainage) if self.ground else None
        first = s is plan.stations[0] and s.fixed_in is None and not s.step
        laid = [shot for shot in (self.laid.shots if self.laid else [])
                if shot["chainage"] == s.chainage and not shot["comes_in"]]
        fields = self.lengths({
            "chainage": s.chainage, "invert": s.out, "invert_in": s.come_in,
            "top_of_pipe": top, "trench_bottom": bottom, "ground": ground,
            "cut": less(ground, s.out), "cut_to_trench": less(ground, bottom),
            "cover": less(ground, top),
            "cover_in": less(ground, top and top + s.step) if s.step else None, "hub": hub, "hub_cut": less(hub, s.out),
            "hub_cut_to_trench": less(hub, bottom),
            "board_above_hub": less(self.boards, nm(less(hub, s.out))),
            "laid": laid[0]["laid"] if laid else None,
            "deviation": laid[0]["deviation"] if laid else None})
        if first:
            del fields["invert_in"]
        fields["ground_interpolated"] = between
        fields["grade_rod"] = self.lengths({
            "invert": less(self.hi, s.out), "top_of_pipe": less(self.hi, top),
            "trench_bottom": less(self.hi, bottom)})
        comes_in = [s.come_in + above if s.step and above is not None else None
                    for above in map(plan.above_invert, SURFACES.values())]
        fields["grade_rod_in"] = self.lengths({
            name.replace(" ", "_"): less(self.hi, surface)
            for name, surface in zip(SURFACES.values(), comes_in)})
        if s.point is not None:
            fields["point"] = s.point
        return fields

    def expected(self):
        plan = self.plan
        self.sheet = plan.with_interval(self.interval)
        self.boards = self.ground and boards(plan, self.ground, self.sheet)
        yield "station", [self.station(s) for s in self.sheet]
        yield "leg", [leg_fields(leg, lambda s: s.point, self.unit) for leg in plan.legs]
        laid = self.laid
        yield "laid_shot", [{**self.lengths({key: shot[key] for key in (
            "chainage", "planned", "laid", "deviation")}), "line": shot["line"],
            "point": shot["point"], "rod_on": shot["rod_on"], "comes_in": shot["comes_in"],
            "out": shot["out"]}
            for shot in (laid.shots if laid else [])]
        yield "laid_leg", [leg_fields(leg, lambda shot: shot["point"], self.unit)
                           for leg in (laid.legs if laid else [])]
        yield "pond", [{"from": p["from"], "to": p["to"], **self.lengths(
            {"depth": p["depth"], "wet": p["wet"]})} for p in (laid.ponds if laid else [])]

    def budget(self):
        plan = self.plan
        fields = self.lengths({"available": plan.available, "needed": plan.needed,
                               "spare": plan.spare})
        fields["enough"] = None if plan.spare is None else plan.spare >= 0
        if fields["enough"] is False:
            would = plan.would_do()
            slope = would.get("slope")
            fields["would_do"] = {
                "raise_upper_end": self.length(would["raise_upper_end"]),
                "longest_route": self.length(would.get("longest_route")),
                "slope_inches_per_foot": None if slope is None else places(12 * slope, 4)}
        return fields

    def fails(self):
        """Whether a check fails."""
        plan, legs = self.plan, list(self.plan.legs)
        failed = plan.spare is not None and plan.spare < 0
        if self.laid:
            legs += self.laid.legs
            failed |= bool(self.laid.ponds) or any(s["out"] for s in self.laid.shots)
        failed |= any(leg.fails for leg in legs)
        return failed or self.benchmarks_differ() or self.cover_short() or self.open_books()

    def benchmarks_differ(self):
        allowed = self.plan.key_length("grade tolerance") or (
            5 * METRE // 1000 if self.drain.scale == METRE else INCH // 4)
        return self.second is not None and abs(self.second) > allowed

    def cover_short(self):
        least, above = self.plan.key_length("cover"), self.plan.above_invert("top of pipe")
        if least is None or above is None or not self.ground:
            return False
        stations = [s.chainage for s in self.plan.with_interval(self.interval)]
        for place in [*stations, *self.ground.shots]:
            ground, invert = self.ground.at(place)[0], self.plan.invert_at(place)
            steps = [s.step for s in self.plan.stations if s.chainage == place]
            if None not in (ground, invert) and ground - invert - max([0, *steps]) - above < least:
                return True
        return False

    def open_books(self):
        books = [book for book in (self.ground_book, self.laid_book) if book]
        return any(s.within is False for book in books for s in book.sections)


def differences(want, have, what):
    """Line by line where two results differ; keys that are not expected are passed over."""
    if isinstance(want, dict):
        for key, value in want.items():
            yield from differences(value, (have or {}).get(key), f"{what} {key}")
    elif want != have:
        yield f"{what}: expected {want}, given {have}"


def compare_lists(want, have, what):
    if len(want) != len(have):
        yield f"{what}: {len(want)} expected, {len(have)} given"
    for number, (a, b) in enumerate(zip(want, have)):
        yield from differences(a, b, f"{what} {number}")


def compare_result(case, status, result):
    wrong = []
    for what, wanted in case.expected():
        wrong += compare_lists(wanted, result[what + "s"], what)
    wrong += differences(case.budget(), result["fall"], "fall")
    wrong += differences(case.length(case.hi), result["hi"], "hi")
    wrong += differences(case.length(case.boards), result["boards_above_invert"], "boards")
    wrong += differences(case.length(case.second), result["second_benchmark_difference"],
                         "second benchmark")
    wrong += compare_flow(case, result)
    wrong += compare_footings(case, result)
    wrong += compare_depths(case, result)
    wrong += compare_warnings(case, result)
    if status != int(case.fails()):
        codes = [m["code"] for m in result["messages"] if m["severity"] == "failed"]
        wrong.append(f"exit {status}, expected {int(case.fails())}: {codes}")
    return wrong


def compare_flow(case, result):
    for leg, have in zip(case.plan.legs, result["legs"]):
        want, got = velocity(case.plan, leg), have["velocity_full"]
        if (want is None) != (got is None):
            yield f"velocity: expected {want}, given {got}"
        elif want and abs(want / SCALE[case.unit] - float(got)) > 2e-9 + 1e-12 * want:
            yield f"velocity: expected {want / SCALE[case.unit]}, given {got}"


def compare_footings(case, result):
    """The 45 degree line below a footing, cut by the lowest that is known of the trench."""
    below = case.plan.lowest()
    wanted = {s.point for s in case.plan.stations if s.footing[0] is not None and
              s.footing[0] - (s.out - below) > s.footing[1]}
    given = {c["where"] for c in result["cautions"] if c["kind"] == "footing"}
    if wanted != given:
        yield f"footings: expected {sorted(wanted)}, given {sorted(given)}"


def compare_depths(case, result):
    """Depths of trench from which a rule asks for something."""
    osha = plain(case.plan.keys.get("jurisdiction", "")) == "us osha"
    limits = [4 * FOOT, 5 * FOOT] if osha else [1200 * METRE // 1000]
    deep = case.ground and deepest(case.plan, case.ground, case.sheet)
    given = {c["limit"]: c["value"] for c in result["cautions"] if c["kind"] == "depth"}
    for limit in limits:
        want = case.length(deep) if deep and deep >= limit else None
        yield from differences(want, given.get(case.length(limit)), f"depth of {limit}")


def compare_warnings(case, result):
    """Grade rods that cannot be read, and slopes that two fixed inverts contradict."""
    plan, codes = case.plan, {m["code"] for m in result["messages"]}
    rods = [case.hi - invert - above for s in case.sheet if case.hi is not None
            for invert in {s.out, s.out + s.step}
            for above in map(plan.above_invert, SURFACES.values()) if above is not None]
    above, beyond = any(r < 0 for r in rods), any(r > plan.rod() for r in rods)
    yield from differences(above, "grade-above-sight" in codes, "above the line of sight")
    yield from differences(beyond, "grade-beyond-rod" in codes, "beyond the rod")
    yield from differences(case.benchmarks_differ(), "hi-differs" in codes,
                           "benchmarks that differ")
    given = {m["point"] for m in result["messages"] if m["code"] == "slope-disagrees"}
    for leg in plan.legs:
        if leg.upper.uniform is None or not leg.upper.written_slope:
            continue
        off = abs(plan.slope_from(leg.upper) - leg.upper.uniform) * leg.length
        warned = leg.upper.point in given
        if (off == 0 and warned) or (off > FOOT // 5 and not warned):
            yield f"slope at {leg.upper.point}: warned {warned}, off by {float(off)} nm"


def compare_case(program, case):
    for name, data in case.files.items():
        program.file(name, data)
    status, result, talk = program.json("drain", "--decimals", "9", *case.options, "plan.csv")
    if case.refused:
        if status == 2 and any(f"[{code}]" in talk for code in case.refused):
            return []
        return [f"exit {status}, expected 2 and {case.refused}: {talk.strip()[:300]}"]
    if result is None:
        return [f"no result, exit {status}: {talk.strip()[:600]}"]
    if case.open_books() and not case.use_anyway:
        shown = "sections" in result and "stations" not in result
        return [] if status == 1 and shown else [f"staked from an open book, exit {status}"]
    if "stations" not in result:
        return [f"no sheet, exit {status}: {talk.strip()[:600]}"]
    return compare_result(case, status, result) + list(compare_digging(program, case))


# -- one reading at a time -------------------------------------------------------------

SURFACES = {"trench": "trench bottom", "invert": "invert", "top": "top of pipe"}


def compare_digging(program, case):
    plan, rng = case.plan, case.rng
    known = [on for on, of in SURFACES.items() if plan.above_invert(of) is not None]
    if case.hi is None or rng.random() < .5:
        return
    on, lines, wanted = rng.choice(known), [], []
    within = 3 * METRE // 1000 if case.drain.scale == METRE else INCH // 8
    first, total = min(s.chainage for s in plan.stations), plan.total
    for _ in range(rng.randrange(1, 6)):
        place = first + total * rng.randrange(0, 101) // 100 // 1000 * 1000
        rod = nm(case.hi - plan.invert_at(place)) // METRE * METRE
        rod += rng.randrange(1000) * (METRE // 1000)
        if not 0 <= rod <= plan.rod():
            continue
        lines.append(f"{Decimal(place) / METRE} m, {Decimal(rod) / METRE} m")
        values = dig(plan, case.hi, place, SURFACES[on], rod, within)
        wanted.append({"at": case.length(place), "wanted": case.length(values[0]),
                       "difference": case.length(values[1]), "verdict": values[2]})
    hi = f"--hi={Decimal(case.hi) / METRE} m"
    done = program.run("dig", "-f", "json", "--decimals", "9", "-u", case.unit, hi, "--on",
                       on, "plan.csv", input=("\n".join(lines) + "\n").encode())
    given = [json.loads(line, parse_float=Decimal, parse_int=Decimal)
             for line in done.stdout.decode().splitlines()]
    yield from compare_lists(wanted, given, "dig")


def prepare(program):
    for name, text in plans.RULES.items():
        program.file(name, text.encode())


def compare(program, seed, number):
    """What differs, and the files and options with which it does."""
    case = Case(random.Random(f"plan/{seed}/{number}"))
    return compare_case(program, case), case.files, case.options
