# SPDX-License-Identifier: MIT
"""Random drain plans, with the ground over them and the pipe as it was laid.

A drain is thought out first, in whole nanometres, and then written as a plan: either way
along the line, with few or many fixed inverts, in any notation.  A few plans are spoilt on
purpose: the program must refuse what the reference refuses.
"""
from fractions import Fraction
from types import SimpleNamespace

import books
from plan import INCH, PIPES, Plan, nm
from reduce import FOOT, METRE, half_away, run_unit

SLOPES = {
    '1/4 in/ft': (1, 48), '1/4"/ft': (1, 48), ".25 in per ft": (1, 48), "2%": (2, 100),
    "1:48": (1, 48), "1 in 50": (1, 50), "0.0208 ft/ft": (208, 10000),
    "20 mm/m": (1, 50), "2 in per 8 ft": (1, 48), "1/8 in/ft": (1, 96),
    "1/16 in / ft": (1, 192), "1.5 %": (15, 1000), "1:80": (1, 80), "1 in 60": (1, 60),
    "3/8 in per ft": (1, 32), "0.4%": (4, 1000), "1:7": (1, 7), "12.5 mm/m": (1, 80)}
MINIMA = ["1/4 in/ft", "1/8 in/ft", "1/16 in/ft", "1%", "2%", "1:80", "1 in 60", "20 mm/m"]
RULES = {
    "by-size.csv": "rule,By size\n\nsize up to,minimum slope\n2-1/2 in,1/4 in/ft\n"
                   "6 in,1/8 in/ft\n,1/16 in/ft\n",
    "small.csv": "rule,Small pipes\n\nsize up to,minimum slope,remarks\n3 in,1 in 50,\n",
    "large.csv": "rule,Sewers\nsmallest size,8 in\n\nsize up to,minimum slope\n8 in,0.40%\n"
                 "10 in,0.28%\n12 in,0.22%\n"}
HEADINGS = {
    "point": ["point", "Pt", "NAME"], "chainage": ["chainage", "CH", "distance", "Station"],
    "invert": ["invert", "Invert out", "flow line"], "invert_in": ["invert in", "INVERT IN"],
    "slope": ["slope", "Slope"], "step": ["step", "manhole drop"],
    "footing_bottom": ["footing bottom"], "footing_away": ["footing away"],
    "remarks": ["remarks", "notes"]}
PLACE = {"ft": FOOT // 100, "ft-in": INCH // 8, "in": INCH // 8, "m": METRE // 1000,
         "mm": METRE // 1000}


def rounded(value, step):
    return half_away(Fraction(value, step)) * step


class Drain:
    """Stations from the upper end to the outlet, as dictionaries."""

    def __init__(self, rng):
        self.rng = rng
        self.unit = rng.choice(["ft", "ft", "ft-in", "ft-in", "in", "m", "m", "mm"])
        self.step = PLACE[self.unit]
        self.scale = METRE if self.unit in ("m", "mm") else FOOT
        count = rng.choice([2, 2, 3, 3, 4, 5, 6, 8])
        self.whole = rng.random() < .7
        at = 0 if rng.random() < .6 else self.chainage(1, 400)
        self.stations, level = [], rng.randrange(-10, 600) * self.scale // 5
        self.upward = rng.random() < .5
        runs = [self.chainage(3, 60) for _ in range(count - 1)]
        for number in range(count):
            station = {"point": f"S-{number}", "chainage": at, "step": 0, "slope": None}
            if number and rng.random() < .2:
                station["step"] = rng.randrange(1, 30) * self.step
            station["in"] = level
            level -= station["step"]
            station["out"] = level
            if number < count - 1:
                station["slope"] = rng.choice(list(SLOPES))
                over, under = SLOPES[station["slope"]]
                level = level - Fraction(over, under) * runs[number]
                at += runs[number]
            self.stations.append(station)
        if self.upward:
            self.turn_round()

    def turn_round(self):
        """Chainage counted from the outlet."""
        total = self.stations[0]["chainage"] + self.stations[-1]["chainage"]
        for station in self.stations:
            station["chainage"] = total - station["chainage"]

    def chainage(self, low, high):
        if self.whole:
            return self.rng.randrange(low, high) * self.scale
        return self.rng.randrange(low * 100, high * 100) * (self.scale // 100)


def fix(drain, rng):
    """Which inverts the plan gives, and where it still has to give slopes."""
    line, last = drain.stations, len(drain.stations) - 1
    fixed = rng.choice([[0], [last], [0, last], [0, last], [rng.randrange(last + 1)],
                        rng.sample(range(last + 1), min(3, last + 1)),
                        rng.sample(range(last + 1), 2)])
    for number in sorted(fixed):
        station = line[number]
        station["fixed"] = rounded(station["out"], drain.step)
        if rng.random() < .07:
            station["fixed"] += rng.randrange(-200, 200) * drain.step
    first, end = min(fixed), max(fixed)
    common = rng.choice(list(SLOPES)) if rng.random() < .4 else None
    for number, station in enumerate(line[:-1]):
        if first <= number < end:
            keep = rng.random() < .15
        else:
            keep = not common or rng.random() < .5
        station["written"] = station["slope"] if keep else ""
    return common


def row_of(drain, station, rng):
    row = {"point": station["point"], "chainage": station["chainage"],
           "slope": station.get("written", ""), "invert": station.get("fixed")}
    if station["step"]:
        row["step"] = station["step"]
    fixed = station.get("fixed")
    if fixed is not None and rng.random() < .25:
        row["invert_in"] = fixed + station["step"]
        kind = rng.random()
        if kind < .4 and station["step"]:
            row["step"] = None
        elif kind < .7:
            row["invert"] = None
    if rng.random() < .15:
        row["footing_bottom"] = rounded(station["out"] + rng.randrange(-3, 6) * drain.scale
                                        // 3, drain.step)
        row["footing_away"] = rng.randrange(1, 40) * drain.scale // 10
    if rng.random() < .05:
        row["remarks"] = "rim, south side"
    return row


class Sheet:
    """Keys and rows, written as a hand or a spreadsheet would."""

    def __init__(self, unit, rng):
        self.rng, self.unit = rng, unit
        self.writer = books.Writer(SimpleNamespace(unit=unit), rng)
        self.metric = unit in ("m", "mm")

    def distance(self, value):
        """A chainage: 0+50, 50, 15.2 m; two digits after the plus count in hundreds."""
        scale = METRE if self.metric else FOOT
        text = books.trimmed(value, scale)
        forms = [self.writer.point(text), f"{text} {'m' if self.metric else 'ft'}"]
        whole, part = divmod(value, 100 * scale)
        rest = books.trimmed(part, scale)
        if len(rest.partition(".")[0]) == 2:
            forms.append(f"{whole // 1}+{rest}")
        return self.writer.point(self.rng.choice(forms))

    def cell(self, column, value):
        if value is None or value == "":
            return ""
        if column == "invert" or column == "invert_in" or column == "footing_bottom":
            return self.writer.elevation(value)
        if column == "step":
            return self.writer.magnitude(value)
        if column in ("chainage", "footing_away"):
            return self.distance(value)
        return self.writer.point(value) if column == "slope" else str(value)

    def text(self, keys, columns, rows):
        w, rng = self.writer, self.rng
        rng.shuffle(keys)
        out = [w.line(rng.choice([[key, value], [key.title() + ":", value]]))
               for key, value in keys]
        if rng.random() < .3:
            rng.shuffle(columns)
        names = [rng.choice(HEADINGS[column]) for column in columns]
        if rng.random() < .2:
            out.append(w.separator * len(columns) + w.newline)
        out.append(w.line(names))
        for row in rows:
            out.append(w.line([self.cell(c, row.get(c)) for c in columns]))
        return "".join(out).encode(w.encoding, "replace")


def pipe_keys(sheet, rng):
    """The pipe from the table, or as measured, or nothing said."""
    w, kind = sheet.writer, rng.random()
    if kind < .25:
        return []
    if kind < .7:
        name = rng.choice(list(PIPES))
        return [("pipe", f"{rng.choice(list(PIPES[name]))} in {name}")]
    outside = rng.randrange(100, 320) * METRE // 1000
    keys = [("pipe outside", w.point(f"{outside // 10**6} mm"))]
    if rng.random() < .9:
        keys.append(("pipe wall", w.point(f"{rng.randrange(20, 200) / 10} mm")))
    return keys


def plan_keys(drain, common, sheet, rng):
    w = sheet.writer
    keys = [("drain", "Larch Street"), ("unit", drain.unit)] + pipe_keys(sheet, rng)
    first_out = drain.rows_end == "last"
    if rng.random() < .85:
        keys.append(("outlet", "last" if first_out else "first"))
    if common:
        keys.append(("slope", w.point(common)))
    judged = rng.random()
    if judged < .5:
        keys.append(("minimum slope", rng.choice(MINIMA)))
    elif judged < .65:
        keys.append(("rules", rng.choice(list(RULES))))
    if rng.random() < .6:
        keys.append(("bedding", rng.choice(["none", "4 in", "100 mm", '6"', "0.5 ft"])))
    if rng.random() < .3:
        keys.append(("cover", rng.choice(["18 in", "2 ft", "600 mm", "1'-6\""])))
    if rng.random() < .2:
        keys.append(("rod", "13 ft" if drain.scale == FOOT else "4 m"))
    if rng.random() < .3:
        keys.append(("jurisdiction", "us osha"))
    if rng.random() < .6:
        keys.append(("grade tolerance", rng.choice(['1/4 in', "6 mm", "0.02 ft"])))
    return keys


def write_plan(drain, rng):
    common = fix(drain, rng)
    rows = [row_of(drain, station, rng) for station in drain.stations]
    drain.rows_end = "last"
    if rng.random() < .5:
        rows.reverse()
        drain.rows_end = "first"
    sheet = Sheet(drain.unit, rng)
    keys = plan_keys(drain, common, sheet, rng)
    if rng.random() < .06:
        spoil(rows, keys, rng)
    used = {column for row in rows for column, value in row.items() if value is not None}
    columns = [c for c in HEADINGS if c in used or c in ("invert", "slope")]
    return sheet.text(keys, columns, rows)


def spoil(rows, keys, rng):
    """What no plan may have; some of it is harmless in the plan at hand."""
    row = rng.choice(rows)
    kind = rng.randrange(6)
    if kind == 0:
        row["slope"] = "1%"
    elif kind == 1:
        row["slope"] = ""
    elif kind == 2:
        row["invert"] = row["invert_in"] = None
    elif kind == 3:
        row["chainage"] = rows[0]["chainage"]
    elif kind == 4 and row.get("invert_in") is not None:
        row["invert_in"] -= FOOT
    else:
        keys[:] = [key for key in keys if key[0] != "slope"]


# -- books that go with a plan ---------------------------------------------------------


class Levelled:
    """A book of one loop, or of two setups, onto given elevations."""

    def __init__(self, unit, rng, top):
        self.unit, self.rng = unit, rng
        self.step = PLACE[unit]
        self.hi = rounded(top + rng.randrange(1, 6) * FOOT, self.step)
        back = rng.randrange(100, 900) * self.step
        self.known, self.rows = self.hi - back, []
        self.rows.append(["BM", None, self.known, back, None, None, ""])

    def shot(self, name, chainage, elevation, surface):
        reading = rounded(self.hi - elevation, self.step)
        if 0 < reading < 20 * FOOT:
            self.rows.append([name, chainage, None, None, reading, None, surface])

    def turn(self, surface):
        fore, back = (self.rng.randrange(50, 900) * self.step for _ in range(2))
        self.rows.append(["TP-1", None, None, back, None, fore, surface])
        self.hi += back - fore

    def close(self):
        error = self.rng.choice([0, 0, 1, -1, 1, 2, -60]) * self.step
        self.rows.append(["BM", None, None, None, None, self.hi - self.known - error, ""])

    def exact(self, value):
        """One place of the rod throughout: the same in every cell."""
        if self.unit in ("ft-in", "in"):
            part = Fraction(value % INCH, INCH)
            return f"{value // INCH}{f' {part}' if part else ''}\""
        places = {"ft": 2, "m": 3, "mm": 0}[self.unit]
        scale = {"ft": FOOT, "m": METRE, "mm": METRE // 1000}[self.unit]
        sign, count = "-" if value < 0 else "", abs(value) // (scale // 10**places)
        whole, part = divmod(count, 10**places)
        return f"{sign}{whole}.{part:0{places}d}" if places else f"{sign}{whole}"

    def place(self):
        """One place of the rod: of inches, the finest fraction that was read."""
        if self.unit not in ("ft-in", "in"):
            return self.step
        readings = [reading for row in self.rows for reading in row[3:6] if reading]
        return INCH // max(Fraction(r, INCH).denominator for r in readings)

    def chainage(self, value):
        metric = self.unit in ("m", "mm")
        exact = books.trimmed(value, METRE if metric else FOOT, 9)
        return exact or books.trimmed(value, FOOT if metric else METRE, 9) + \
            (" ft" if metric else " m")

    def elevation(self, value):
        if self.unit not in ("ft-in", "in"):
            return self.exact(value)
        text = self.exact(abs(value))
        return '"' + ("-" if value < 0 else "") + text.replace('"', '""') + '"'

    def cells(self, row):
        name, chainage, known, *readings, surface = row
        quoted = ['"' + self.exact(r).replace('"', '""') + '"' if r is not None else ""
                  for r in readings]
        return ",".join([name, "" if chainage is None else self.chainage(chainage),
                         "" if known is None else self.elevation(known), *quoted, surface])

    def data(self, adjust):
        tolerance = {"ft": "0.02", "ft-in": '1/4 in', "in": "1/4", "m": "0.003", "mm": "3"}
        lines = [f"unit,{self.unit}"]
        if self.rng.random() < .8:
            lines.append("tolerance," + tolerance[self.unit])
        if adjust:
            lines.append("adjust," + adjust)
        lines.append("point,chainage,known elevation,backsight,intermediate,foresight,rod on")
        return ("\n".join(lines + [self.cells(row) for row in self.rows]) + "\n").encode()


def book_unit(unit, rng):
    return unit if rng.random() < .8 else rng.choice(list(PLACE))


def places_on(plan, rng, share):
    """Stations by name, and places between them by chainage."""
    for station in plan.stations:
        if rng.random() < share:
            both = rng.random() < .3
            if rng.random() < .7:
                yield station.point, station.chainage if both else None, station.chainage
            else:
                yield f"J-{nm(station.chainage) % 997}", station.chainage, station.chainage
    for leg in plan.legs:
        low = min(leg.upper.chainage, leg.lower.chainage)
        for number in range(rng.choice([0, 0, 1, 2, 3])):
            inside = low + leg.length * (number + 1) // 5 // 1000 * 1000
            if inside > low:
                yield f"Q-{inside % 9973}-{number}", inside, inside


def write_ground(plan, rng):
    top = max(station.out for station in plan.stations)
    book = Levelled(book_unit(plan.unit, rng), rng, top + 8 * FOOT)
    turned = False
    for name, chainage, place in places_on(plan, rng, .8):
        level = plan.invert_at(place) + rng.randrange(150, 800) * FOOT // 100
        book.shot(name, chainage, level, rng.choice(["ground", "", "ground"]))
        if name.startswith("S-") and rng.random() < .4:
            book.shot(name, None, level + rng.randrange(100) * FOOT // 100, "hub")
        if not turned and rng.random() < .15:
            turned = True
            book.turn("")
    book.close()
    return book


def write_laid(plan, rng):
    top = max(station.out for station in plan.stations)
    book = Levelled(book_unit(plan.unit, rng), rng, top + 3 * FOOT)
    surfaces = ["invert"] + ["top of pipe", "inside top"] * plan.pipe_known
    rough = rng.choice([1, 1, 3, 30])
    for name, chainage, place in places_on(plan, rng, .8):
        surface = rng.choice(surfaces)
        level = plan.invert_at(place) + plan.above_invert(surface)
        book.shot(name, chainage, level + rng.randrange(-rough, rough + 1) * book.step,
                  surface)
    for station in plan.stations:
        if station.step and rng.random() < .4:
            level = station.come_in + rng.randrange(-rough, rough + 1) * book.step
            book.shot(station.point + " in", None, level, "invert")
    book.close()
    return book
