# SPDX-License-Identifier: MIT
"""Random books that are right: every notation, order and habit that a book may have.

A book is observed first, in whole nanometres, as a list of rows, and then written: the
same observations in any column order, under any alias, in any notation.
"""
import csv
import io
from fractions import Fraction

from reduce import FOOT, INCH, METRE, half_away

STEP = {"ft": FOOT // 100, "ft-in": INCH // 8, "in": INCH // 4, "m": METRE // 1000,
        "mm": METRE // 1000}
TOLERANCES = {
    "ft": ["0.02 ft", "0.05", "1/4 in", "0.01 ft sqrt(setups)", "0.05 ft sqrt(mi)",
           "0.02√n", "0.3 ft √M"],
    "ft-in": ["1/4 in", "0.02 ft", '1/8"', "1/8 in sqrt(setups)", "0.1 ft sqrt(mi)"],
    "in": ["1/4", '1/2"', "0.02 ft", "1/8 in sqrt(setups)"],
    "m": ["5 mm", "0.004", "12 mm sqrt(km)", "12mm√km", "3 mm sqrt(setups)", "24 mm √K"],
    "mm": ["5", "5 mm", "12 mm sqrt(km)", "2 √n"]}


class Observed:
    """The rows of a book, and what the observer knows of the points."""

    def __init__(self, rng):
        self.rng, self.rows = rng, []
        self.unit = rng.choice(["ft", "ft", "ft", "ft-in", "ft-in", "in", "m", "m", "mm"])
        thousandths = self.unit == "ft" and rng.random() < .2
        self.step = STEP[self.unit] // (10 if thousandths else 1)
        self.rod = 13 * FOOT if rng.random() < .3 else 25 * FOOT
        self.with_runs = rng.random() < .6
        self.known, self.elevation, self.serial, self.typed = {}, {}, 0, set()
        self.hi, self.station = None, 0
        self.with_stations = rng.random() < .2
        self.with_chainage = not self.with_stations and rng.random() < .2

    def name(self, kind):
        self.serial += 1
        return f"{kind}-{self.serial}"

    def reading(self, low=1, high=90):
        if self.unit == "ft" and self.rng.random() < .05:
            return self.rng.randrange(16 * high) * (INCH // 16)
        if self.unit == "ft" and self.rng.random() < .01:
            return self.rng.randrange(100, 2500) * METRE // 1000
        value = self.rng.randrange(low, high) * FOOT // 10
        return value // self.step * self.step + self.rng.randrange(10) * self.step

    def possible(self, value):
        return abs(value) <= self.rod

    def row(self, name, **sights):
        row = {"point": name, **sights}
        if self.with_runs:
            if "bs" in sights:
                row["bs_run"] = self.rng.randrange(10, 200)
            if "fs" in sights or "is" in sights:
                row["fs_run"] = self.rng.randrange(10, 200)
        if name in self.known and name not in self.typed and name:
            row["known"] = self.known[name]
            self.typed.add(name)
        if "fs" in sights or "is" in sights:
            if self.rng.random() < .1:
                row["dip"] = self.reading()
            if self.with_chainage and self.rng.random() < .5:
                row["chainage"] = self.rng.randrange(2000)
            if self.rng.random() < .2:
                row["rod_on"] = self.rng.choice(["ground", "hub", "invert", "rim"])
        if self.rng.random() < .1:
            row["remarks"] = self.rng.choice(["rim, south side", "nail", "4\" pipe"])
        self.rows.append(row)
        return row

    def benchmark(self, elevation):
        name = self.name("BM")
        self.known[name] = elevation
        return name

    def backsight(self, name):
        """Join the row of the foresight before it, mostly."""
        value = self.reading()
        if self.rng.random() < .03:
            value = -value
        last = self.rows[-1] if self.rows else {}
        if last.get("point") == name and "fs" in last and self.rng.random() < .6:
            last["bs"] = value
            if self.with_runs:
                last["bs_run"] = self.rng.randrange(10, 200)
        else:
            self.row(name, bs=value)
        self.hi = self.known.get(name, self.elevation.get(name)) + value

    def sight(self, name, column, value=None):
        value = self.reading() if value is None else value
        if name and name not in self.known:
            self.elevation[name] = self.hi - value
        self.row(name, **{column: value})

    def side_shots(self, most):
        for _ in range(self.rng.randrange(most + 1)):
            name = self.rng.choice([self.name("MH"), self.next_station(), "", "ground"])
            column = "fs" if name and self.rng.random() < .25 else "is"
            value = self.reading()
            self.sight(name, column, -value if self.rng.random() < .1 else value)

    def next_station(self):
        """1+00, then +25 or 1+25: the hundreds are those last written."""
        if not self.with_stations:
            return self.name("MH")
        before, self.station = self.station, self.station + self.rng.choice([10, 25, 50])
        if before and before // 100 == self.station // 100 and self.rng.random() < .6:
            return f"+{self.station % 100:02d}"
        return f"{self.station // 100}+{self.station % 100:02d}"

    def keepers_sums(self):
        self.rows.append({"point": self.rng.choice(["sum", "Total"]),
                          "bs": self.reading(), "fs": self.reading()})

    def check(self):
        """An intermediate sight onto a point that has an elevation already."""
        name = self.rng.choice(list(self.elevation) + list(self.known))
        if "+" in name:
            return
        known = self.known.get(name, self.elevation.get(name))
        value = ((self.hi - known) // self.step + self.rng.randrange(3)) * self.step
        if self.possible(value) and value > 0 and not name.startswith("ground"):
            self.row(name, **{"is": value})

    def spur(self, name):
        """Off the chain: from a turning point, and back to it."""
        self.backsight(name)
        self.side_shots(2)
        if self.rng.random() < .5:
            turn = self.name("SP")
            self.sight(turn, "fs")
            self.backsight(turn)
        self.sight(self.name("MH"), "is")

    def section(self, start, setups, close):
        at = start
        for number in range(1, setups + 1):
            if at != start and self.rng.random() < .1:
                self.spur(at)
            self.backsight(at)
            self.side_shots(3)
            if self.rng.random() < .1:
                self.check()
            if number < setups or not close:
                at = self.name("TP")
                self.sight(at, "fs" if self.rng.random() < .95 or not close else "is")
                if number < setups and self.rng.random() < .15:
                    self.side_shots(2)
        return self.end(start) if close else at

    def end(self, start):
        error = self.rng.choice([0, 0, 1, 1, -1, 2, -2, 3, -5, 40]) * self.step
        others = [name for name in [*self.known, start] if self.rng.random() < .5]
        others = [name for name in others if name in self.known]
        for name in others:
            value = self.hi - self.known[name] - error
            if 0 < value and self.possible(value):
                self.sight(name, "fs", value)
                return name
        value = self.reading()
        name = self.benchmark(self.hi - value - error)
        self.sight(name, "fs", value)
        return name


    def between(self, at, last):
        """What may stand between a section and the next; gives where that one starts."""
        rng = self.rng
        if rng.random() < .2:
            self.side_shots(2)
        turning_points = [name for name in self.elevation if name.startswith("TP")]
        if turning_points and rng.random() < .1:
            self.spur(rng.choice(turning_points))
        elif not last and rng.random() < .1:
            at = self.name("TP")
            self.sight(at, "fs")
        elif not last and rng.random() < .1:
            at = rng.choice(list(self.known))
        if rng.random() < .05:
            self.keepers_sums()
        return at


def observe(rng):
    book = Observed(rng)
    at = book.benchmark(book.rng.randrange(-20, 600) * FOOT // book.step * book.step)
    if rng.random() < .2:
        book.row(at)
    sections = rng.choice([1, 1, 1, 2, 3])
    for number in range(sections):
        last = number == sections - 1
        open_end = last and at in book.known and rng.random() < .15
        at = book.section(at, rng.randrange(1, 6), not open_end)
        if not open_end:
            at = book.between(at, last)
    return book


# -- writing ---------------------------------------------------------------------------


def trimmed(value, scale, places=6):
    """The decimal number, with no more places than it needs; None if it needs more."""
    digits = Fraction(value, scale) * 10**places
    if digits.denominator != 1:
        return None
    whole, part = divmod(abs(int(digits)), 10**places)
    text = f"{whole}.{part:0{places}d}".rstrip("0").rstrip(".")
    return text


def fraction_of(value, rng, glyphs):
    """The inches of a value, as whole inches and a fraction."""
    inches, rest = divmod(value, INCH)
    part = Fraction(rest, INCH)
    if part == 0:
        return f"{inches}"
    text = f"{part.numerator}/{part.denominator}"
    text = glyphs.get(text, text) if rng.random() < .5 else text
    if inches == 0:
        return text
    return f"{inches}{rng.choice([' ', ' ', '-'])}{text}"


class Writer:
    def __init__(self, book, rng):
        self.book, self.rng, self.unit = book, rng, book.unit
        self.separator = rng.choice([",", ",", ",", ";", "\t"])
        self.comma = self.separator != "," and rng.random() < .5
        self.encoding = rng.choice(["utf-8", "utf-8", "utf-8-sig", "cp1252", "ascii"])
        self.newline = rng.choice(["\n", "\n", "\r\n", "\r"])
        self.typographic = self.encoding != "ascii" and rng.random() < .5
        self.padding = rng.choice([0, 0, 0, 3])

    def marks(self):
        if not self.typographic:
            return "'", '"', {}
        glyphs = {"1/2": "½", "1/4": "¼", "3/4": "¾"}
        if self.encoding == "cp1252":
            return "’", "”", glyphs
        glyphs.update({"1/8": "⅛", "3/8": "⅜", "5/8": "⅝", "7/8": "⅞"})
        return self.rng.choice(["’′'"]), self.rng.choice("”″\""), glyphs

    def feet_inches(self, value):
        foot, inch, glyphs = self.marks()
        foot = self.rng.choice(foot)
        feet, rest = divmod(value, FOOT)
        inches = fraction_of(rest, self.rng, glyphs)
        plain_fraction = "/" in inches and " " not in inches and "-" not in inches
        forms = [f"{feet}{foot}-{inches}{inch}", f"{feet}{foot} {inches}{inch}",
                 f"{feet} ft {inches} in", f"{feet}{foot}{inches}{inch}"]
        if rest % INCH == 0 or trimmed(rest, INCH):
            forms.append(f"{feet} feet {trimmed(rest, INCH)} inches")
            forms.append(f"{feet}{foot} {trimmed(rest, INCH)}{inch}")
        if self.unit == "ft-in" and not plain_fraction and "½¼¾⅛⅜⅝⅞".find(inches[0]) < 0:
            forms.append(f"{feet}-{inches}")
        if feet == 0:
            forms.append(f"{inches}{inch}")
        return self.rng.choice(forms)

    def point(self, text):
        return text.replace(".", ",") if self.comma else text

    def bare(self, value, scale):
        text = trimmed(value, scale)
        return text and self.point(text)

    def from_formula(self, value):
        """Feet as a sheet works them out from inches: rounded or cut off."""
        places = self.rng.choice([6, 8, 14])
        exact = Fraction(value, FOOT) * 10**places
        whole = self.rng.choice([exact.__floor__(), half_away(exact)])
        return self.point(f"{whole // 10**places}.{whole % 10**places:0{places}d}")

    def magnitude(self, value):
        rng, unit = self.rng, self.unit
        forms = []
        if unit == "ft":
            text = self.bare(value, FOOT)
            forms = [text, text, text, text and text + " ft", text and text + "'"]
            if value % (INCH // 64) == 0 and (text is None or rng.random() < .3):
                forms += [self.feet_inches(value), self.from_formula(value)]
        elif unit == "ft-in":
            forms = [self.feet_inches(value)]
        elif unit == "in":
            inches = fraction_of(value, rng, self.marks()[2])
            forms = [self.bare(value, INCH), inches, inches + '"', inches + " in"]
        else:
            bare = self.bare(value, METRE if unit == "m" else METRE // 1000)
            forms = [bare, bare, bare, self.bare(value, METRE) + " m",
                     self.bare(value, METRE // 1000) + " mm",
                     self.bare(value, METRE // 100) + " cm"]
        exact = self.point(trimmed(value, METRE, 9)) + " m"
        return rng.choice([form for form in forms if form] or [exact])

    def reading(self, value):
        if value >= 0:
            return self.magnitude(value)
        text = self.magnitude(-value)
        forms = [f"({text})", f"inv {text}", f"{text} inv"]
        return self.rng.choice(forms if self.unit == "ft-in" else forms + ["-" + text])

    def elevation(self, value):
        if self.unit == "ft-in" and value % FOOT == 0:
            return str(value // FOOT)
        return ("-" if value < 0 else "") + self.magnitude(abs(value))

    def chainage(self, count):
        whole = f"{count // 100}+{count % 100:02d}"
        metres = self.unit in ("m", "mm")
        return self.rng.choice([str(count), whole, f"{count} {'m' if metres else 'ft'}"])

    def name(self, text):
        """The same name, as it is typed the next time."""
        if self.rng.random() < .9 or not text.isascii() or not self.typographic:
            return text
        return self.rng.choice([text.lower(), text.upper(), text.replace("-", "–")])

    def cell(self, column, value):
        if value is None:
            return ""
        if column in ("bs", "is", "fs", "dip"):
            return self.reading(value)
        if column == "known":
            return self.elevation(value)
        if column == "chainage":
            return self.chainage(value)
        return self.name(value) if column == "point" else str(value)

    def csv_cell(self, text):
        awkward = self.separator in text or "\n" in text or text.startswith('"')
        if not awkward and ('"' not in text or self.rng.random() < .5):
            return text
        return '"' + text.replace('"', '""') + '"'

    def line(self, cells):
        return self.separator.join(self.csv_cell(c) for c in cells) + \
            self.separator * self.padding + self.newline


ALIASES = {
    "point": ["point", "Pt", "NAME", "Station", "sta."], "known": [
        "known elevation", "benchmark", "BM", "bm elevation"],
    "bs": ["backsight", "BS", "bs+", "+", "+s", "BS (+)"],
    "is": ["intermediate", "IS", "ifs", "ss", "side shot", "intermediate sight"],
    "fs": ["foresight", "FS", "fs-", "-", "-S", "fs(-)"],
    "bs_run": ["backsight distance", "BS dist"],
    "fs_run": ["foresight distance", "fs dist"],
    "chainage": ["chainage", "CH", "run", "Distance"],
    "dip": ["measure down", "dip"], "rod_on": ["rod on", "surface"],
    "remarks": ["remarks", "Notes", "description"]}


def write(book, rng):
    """The bytes of the book, and the number of the line of its first row."""
    w = Writer(book, rng)
    used = {column for row in book.rows for column in row}
    columns = ["point"] + [c for c in ALIASES if c != "point" and
                           (c in used or c in ("known", "bs", "fs"))]
    if rng.random() < .3:
        rng.shuffle(columns)
    out, sep = [], w.separator
    if rng.random() < .05:
        out.append(f"sep={sep}" + w.newline)
    keys = [("project", "Larch Street"), ("date", "17 March 2026"), ("unit", book.unit)]
    if book.rod != 25 * FOOT:
        keys.append(("rod", "13 ft"))
    if rng.random() < .85:
        kinds = [t for t in TOLERANCES[book.unit]
                 if book.with_runs or not ("mi" in t or "k" in t.lower() or "M" in t)]
        text = rng.choice(kinds)
        if w.encoding in ("ascii", "cp1252"):
            text = "0.02 ft" if "√" in text else text
        keys.append(("tolerance", w.point(text)))
    adjust = rng.choice(["setups", None, None, "none", "distance"])
    if adjust and (adjust != "distance" or book.with_runs):
        keys.append(("adjust", adjust))
    rng.shuffle(keys)
    for key, value in keys:
        key = rng.choice([key, key.upper(), key.title()])
        out.append(w.line(rng.choice([[key, value], [key + ":", value],
                                      [f"{key}: {value}"], [key, "", value]])))
    if rng.random() < .2:
        out.append(sep * len(columns) + w.newline)
    names = {c: rng.choice(ALIASES[c]) for c in columns}
    if "chainage" in columns and not names["point"].lower().startswith("sta") and \
            rng.random() < .3:
        names["chainage"] = "station"
    opens = book.rows[0]
    if len(book.known) == 1 and "bs" in opens and "known" in opens and rng.random() < .5:
        names["known"] = rng.choice(["elevation", "Elev.", "RL", "reduced level"])
    out.append(w.line([names[c] for c in columns]))
    for row in book.rows:
        if rng.random() < .03:
            out.append(sep * (len(columns) - 1) + w.newline)
        if rng.random() < .02:
            out.append("# moved the level" + w.newline)
        out.append(w.line([w.cell(c, row.get(c)) for c in columns]))
    text = "".join(out)
    return text.encode(w.encoding)
