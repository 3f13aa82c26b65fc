# SPDX-License-Identifier: MIT
"""Plant one slip in a book that closes; the program must name it among the suspects.

A slip is made in the text of a cell, as a hand would make it.  Books whose section still
closes with the slip in it are drawn again.  At least 97 of 100 must be found.
"""
import random
from decimal import Decimal
from fractions import Fraction

from reduce import half_away

LOOK_ALIKES = ["06", "08", "17", "27", "35", "38", "49", "56", "68"]
LEAST_FOUND = 97  # of 100


class Loop:
    """A line of levels between two benchmarks, in hundredths, eighths or millimetres."""

    def __init__(self, rng, unit, high=False):
        self.rng, self.unit = rng, unit
        self.per = {"ft": 100, "ft-in": 96, "m": 1000}[unit]
        top = {"ft": 1200, "ft-in": 1150, "m": 3900}[unit]
        count = rng.randrange(3, 9)
        draw = lambda: rng.randrange(self.per // 3, top)
        self.bs = [draw() for _ in range(count)]
        self.fs = [draw() for _ in range(count)]
        if high:
            self.fs = [rng.randrange(20, 690) for _ in range(count)]
        self.start = 100 * self.per + rng.randrange(self.per)
        self.allowed = {"ft": 2, "ft-in": 2, "m": 5}[unit]
        end = self.start + sum(self.bs) - sum(self.fs)
        self.finish = end + rng.randrange(-1, 2) * (1 + rng.randrange(self.allowed) // 2)

    def text(self, value):
        if self.unit == "ft":
            return f"{value // 100}.{value % 100:02d}"
        if self.unit == "m":
            return f"{value // 1000}.{value % 1000:03d}"
        feet, inches = divmod(Fraction(value, 8), 12)
        part = inches - int(inches)
        return f"{feet}'-{int(inches)}{f' {part}' if part else ''}\""

    def cells(self):
        """(row, column) of every number that enters the misclosure, with its text."""
        found = {(0, "known_elevation"): self.text(self.start),
                 (len(self.bs), "known_elevation"): self.text(self.finish)}
        for i, (bs, fs) in enumerate(zip(self.bs, self.fs)):
            found[i, "backsight"] = self.text(bs)
            found[i + 1, "foresight"] = self.text(fs)
        return found

    def write(self, cells):
        tolerance = {"ft": "0.02 ft", "ft-in": '1/4 in', "m": "5 mm"}[self.unit]
        lines = [f"unit,{self.unit}", f"tolerance,{tolerance}",
                 "point,known elevation,backsight,foresight"]
        for row in range(len(self.bs) + 1):
            values = [cells.get((row, c), "") for c in
                      ("known_elevation", "backsight", "foresight")]
            lines.append(",".join([f"P-{row}"] + values))
        return ("\n".join(lines) + "\n").encode()


def parts_of(text):
    """5'-3 1/2" as 5, 3 and ' 1/2"'."""
    feet, rest = text.split("'-", 1)
    inches = rest.partition(" ")[0].strip('"')
    return int(feet), int(inches), rest[len(inches):]


def exchanged(loop, text):
    """Two neighbouring digits; in feet and inches, the feet and the inches."""
    if loop.unit == "ft-in":
        feet, inches, rest = parts_of(text)
        return f"{inches}'-{feet}{rest}" if feet < 12 else None
    places = [i for i, letter in enumerate(text) if letter.isdigit()]
    a, b = loop.rng.choice(list(zip(places, places[1:])))
    letters = list(text)
    letters[a], letters[b] = letters[b], letters[a]
    return "".join(letters)


def look_alike(loop, text):
    whole = text.partition(" ")[0]
    choices = [text[:i] + pair[1 - pair.index(digit)] + text[i + 1:]
               for i, digit in enumerate(whole) for pair in LOOK_ALIKES if digit in pair]
    return loop.rng.choice(choices) if choices else None


def wrong_mark(loop, text, inches, decimal):
    sign = loop.rng.choice([1, -1])
    if loop.unit == "ft-in":
        feet, had, rest = parts_of(text)
        total = 12 * feet + had + sign * inches
        return f"{total // 12}'-{total % 12}{rest}" if total >= 0 else None
    value = Decimal(text) + sign * decimal
    return str(value) if value >= 0 else None


def whole_foot(loop, text):
    metric = loop.rng.choice([Decimal(1), Decimal("0.1")])
    return wrong_mark(loop, text, 12, Decimal(1) if loop.unit == "ft" else metric)


def tenth(loop, text):
    return wrong_mark(loop, text, 1, Decimal("0.1" if loop.unit == "ft" else "0.01"))


def fraction_dropped(loop, text):
    return text.partition(" ")[0] + '"' if " " in text else None


def signed(loop, text):
    return "(" + text + ")" if loop.unit == "ft-in" else "-" + text


KINDS = {"digits exchanged": exchanged, "a whole foot": whole_foot, "a tenth": tenth,
         "look-alike": look_alike,
         "fraction dropped": fraction_dropped, "sign": signed}


class Planted:
    def __init__(self, loop, cells, where, true):
        self.data, self.where = loop.write(cells), where
        self.line = where[0] + 4 if where else None
        self.true, self.loop = true, loop


def plant_cell(rng, kind, unit):
    """A slip of one cell; a known elevation where the kind is that."""
    loop = Loop(rng, unit)
    cells = loop.cells()
    elevation = kind == "known elevation"
    where = rng.choice([w for w in cells if (w[1] == "known_elevation") == elevation])
    maker = rng.choice([exchanged, whole_foot, look_alike]) if elevation else KINDS[kind]
    text = maker(loop, cells[where])
    if text is None or text == cells[where]:
        return None
    true = cells[where]
    return Planted(loop, {**cells, where: text}, where, true)


def plant_columns(rng, unit):
    loop = Loop(rng, unit)
    row = rng.randrange(1, len(loop.bs))
    cells = loop.cells()
    true = cells[row, "foresight"]
    back = cells[row, "backsight"]
    cells[row, "foresight"], cells[row, "backsight"] = back, true
    return Planted(loop, cells, (row, "backsight"), back)


def plant_inches(rng):
    """A reading of whole inches, booked as if the inches were the decimals."""
    loop = Loop(rng, "ft")
    cells = loop.cells()
    where = rng.choice([w for w in cells if w[1] != "known_elevation"])
    feet, inches = rng.randrange(1, 12), rng.randrange(1, 12)
    exact = round((feet + inches / 12) * 100)
    side, at = (loop.bs, where[0]) if where[1] == "backsight" else (loop.fs, where[0] - 1)
    change = exact - side[at]
    loop.finish += change if where[1] == "backsight" else -change
    side[at] = exact
    cells = loop.cells()
    cells[where] = f"{feet}.{inches}"
    return Planted(loop, cells, where, f"{feet}'-{inches}\"")


def plant_rod(rng):
    """Every sight above 7 ft reads too much by one constant."""
    loop = Loop(rng, "ft", high=True)
    lacking, cells = rng.randrange(5, 120), loop.cells()
    for i, value in enumerate(loop.bs):
        if value > 700:
            cells[i, "backsight"] = loop.text(value + lacking)
    return Planted(loop, cells, None, None) if max(loop.bs) > 700 else None


def draw(rng, kind):
    unit = rng.choice(["ft", "ft", "ft-in", "m"])
    if kind == "rod":
        return plant_rod(rng)
    if kind == "columns":
        return plant_columns(rng, unit)
    if kind == "inches":
        return plant_inches(rng)
    return plant_cell(rng, kind, "ft-in" if kind == "fraction dropped" else unit)


def number_of(loop, text):
    """A reading as the result shows it: feet or metres, four places."""
    if "'" not in text:
        return Decimal(text)
    feet, inches, rest = parts_of(text)
    exact = feet + (inches + Fraction(rest.strip(' "') or 0)) / 12
    return Decimal(half_away(exact * 10000)).scaleb(-4)


def place_of(planted, suspects):
    for place, suspect in enumerate(suspects, 1):
        if planted.where is None:
            if suspect["maybe"] is None:
                return place
        elif suspect["line"] == planted.line and suspect["column"] == planted.where[1] and \
                suspect["maybe"] == number_of(planted.loop, planted.true):
            return place
    return 0


def plant_kind(program, kind, count, seed):
    places, drawn = [], 0
    while len(places) < count and drawn < 20 * count:
        rng = random.Random(f"{seed}/{kind}/{drawn}")
        drawn += 1
        planted = draw(rng, kind)
        if not planted:
            continue
        path = program.file("planted.csv", planted.data)
        _, result, _ = program.reduce(path)
        if not result or result["sections"][0]["within_tolerance"]:
            continue
        places.append(place_of(planted, result["sections"][0]["suspects"]))
    return places


def plant(program, count, seed):
    """How many kinds are found too seldom."""
    poor = 0
    for kind in list(KINDS) + ["columns", "inches", "known elevation", "rod"]:
        places = plant_kind(program, kind, count, seed)
        found = sum(place > 0 for place in places)
        first = sum(0 < place <= 5 for place in places)
        poor += 100 * found < LEAST_FOUND * len(places) or not places
        print(f"slips: {kind}: {found} of {len(places)} named, {first} in the first five")
    return poor
