#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""An independent reduction of level notes, to hold the program against.

Short and slow on purpose: whole nanometres and fractions, no table shared with the
program, written from the description of the book alone.  It reads books that are right;
what is refused, and how, is tested elsewhere.

    python3 tests/reference/reduce.py BOOK      prints points and sections
"""
import csv
import io
import re
import sys
from fractions import Fraction

FOOT, INCH, METRE = 304800000, 25400000, 10**9
UNIT = {"ft": FOOT, "in": INCH, "ft-in": FOOT, "m": METRE, "mm": 10**6}
SUFFIX = {"'": FOOT, "ft": FOOT, "foot": FOOT, "feet": FOOT, '"': INCH, "in": INCH,
          "inch": INCH, "inches": INCH, "m": METRE, "cm": 10**7, "mm": 10**6}
VULGAR = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8",
          "⅞": "7/8"}


class Refused(Exception):
    """This book has no result."""


def half_away(value):
    """The nearest whole number, half away from zero."""
    value = Fraction(value)
    whole = (2 * abs(value.numerator) + value.denominator) // (2 * value.denominator)
    return whole if value >= 0 else -whole


# -- lengths ---------------------------------------------------------------------------


def plain(text):
    """Typographic marks as the plain ones that were meant."""
    for marks, mark in (("’‘′´`ʹʼ＇", "'"), ("”“″ʺ＂", '"'), ("−–—‐‑", "-"),
                        ("\u00a0\u202f\u2009\u200a", " "), ("⁄∕", "/")):
        text = re.sub("[" + marks + "]", mark, text)
    for sign, digits in VULGAR.items():
        text = text.replace(sign, " " + digits)
    return re.sub(r"\s+", " ", text.replace("''", '"')).strip().lower()


def decimal(text):
    return Fraction(text)


NUMBER = r"(?:\d+\.?\d*|\.\d+)"
AND_PART = r"(?:[ -]+(?P<n>\d+)/(?P<d>\d+))?"
INCHES = rf"(?:(?P<whole>{NUMBER}){AND_PART}|(?P<n0>\d+)/(?P<d0>\d+))"
FEET_INCHES = re.compile(rf"(?:(?P<feet>\d+) ?(?:'|ft\.?|feet|foot))[ -]*(?:{INCHES} ?"
                         rf"(?:\"|in\.?|inch|inches)?)?")
ONLY_INCHES = re.compile(rf"{INCHES} ?(?:\"|in\.?|inch|inches)")
BARE_INCHES = re.compile(INCHES)
DASHES = re.compile(rf"(?P<feet>\d+) ?- ?(?P<whole>{NUMBER}){AND_PART}\"?")
MARKED = re.compile(rf"({NUMBER}) ?('|\"|[a-z]+)\.?")


def inches_of(match):
    part = match.groupdict()
    if part.get("n0"):
        return Fraction(int(part["n0"]), int(part["d0"]))
    value = decimal(part["whole"]) if part["whole"] else Fraction(0)
    return value + (Fraction(int(part["n"]), int(part["d"])) if part["n"] else 0)


def sixtyfourth(text):
    """Six or more decimals of a foot that are a 64th of an inch, rounded or cut off."""
    places = len(text.partition(".")[2])
    value, part = decimal(text), Fraction(1, 768)
    count = half_away(value / part)
    if places < 6:
        return value
    exact = count * part * 10**places
    if value * 10**places in (half_away(exact), exact.numerator // exact.denominator):
        return count * part
    return value


def magnitude(text, unit):
    if re.fullmatch(NUMBER, text):
        value = sixtyfourth(text) if UNIT[unit] == FOOT else decimal(text)
        return value * UNIT[unit]
    match = MARKED.fullmatch(text)
    if match and match[2] in SUFFIX:
        scale = SUFFIX[match[2]]
        return (sixtyfourth(match[1]) if scale == FOOT else decimal(match[1])) * scale
    match = FEET_INCHES.fullmatch(text) or (unit == "ft-in" and DASHES.fullmatch(text))
    if match:
        return int(match["feet"]) * FOOT + inches_of(match) * INCH
    match = ONLY_INCHES.fullmatch(text) or (unit == "in" and BARE_INCHES.fullmatch(text))
    if match:
        return inches_of(match) * INCH
    raise Refused("not a length: " + text)


def length(text, unit, comma=False):
    """A length in nanometres, or None for an empty cell."""
    text = plain(text)
    if not text:
        return None
    if comma:
        text = re.sub(r"(\d),(\d)", r"\1.\2", text)
    text = text.replace(",", "")
    inverted = re.fullmatch(r"\((.*)\)|inv\.? ?(.*)|(.*?) ?inv\.?|-(.*)", text)
    if inverted:
        text = next(group for group in inverted.groups() if group is not None).strip()
    value = magnitude(text, unit)
    if value.denominator != 1:
        raise Refused("finer than a nanometre: " + text)
    return -int(value) if inverted else int(value)


def run_unit(unit):
    return "m" if unit in ("m", "mm") else "ft"


def chainage(text, unit, comma):
    match = re.fullmatch(r"(\d+)\+(\d+)([.,]\d+)?", plain(text))
    if not match:
        return length(text, run_unit(unit), comma)
    after = Fraction(match[2] + (match[3] or "").replace(",", "."))
    return int((int(match[1]) * 10**len(match[2]) + after) * UNIT[run_unit(unit)])


ROOTS = {"mi": ("length", 5280 * FOOT), "m": ("length", 5280 * FOOT),
         "miles": ("length", 5280 * FOOT), "km": ("length", 1000 * METRE),
         "k": ("length", 1000 * METRE), "setups": ("setups", 1), "n": ("setups", 1)}


def tolerance_of(text, unit, comma):
    match = re.fullmatch(r"(.*?) ?(?:sqrt ?\(? ?|√ ?\(?)([a-z]+)\)?", plain(text))
    if not match:
        return length(text, unit, comma), None
    return length(match[1], unit, comma), ROOTS[match[2]]


# -- the file --------------------------------------------------------------------------

COLUMNS = {
    "point": "point pt name", "known": "knownelevation benchmark bm bmelevation",
    "bs": "backsight bs", "fs": "foresight fs",
    "is": "intermediate is ifs ss sideshot intermediatesight intermediateforesight",
    "bs_run": "backsightdistance bsdist", "fs_run": "foresightdistance fsdist",
    "chainage": "chainage ch distance run", "dip": "measuredown dip",
    "rod_on": "rodon surface", "hi": "heightofinstrument hi",
    "elevation": "elevation elev rl reducedlevel",
    "remarks": "remarks note notes description", "unit": "unit",
    "station": "station sta stn"}
AS_WRITTEN = {"+": "bs", "-": "fs", "+s": "bs", "-s": "fs"}
MEANING = {alias: column for column, all_ in COLUMNS.items() for alias in all_.split()}
KEYS = ("project date crew student instrument rod weather datum unit tolerance adjust "
        "collimation decimals").split() + ["sight limit", "balance limit", "rod on"]
UNIT_WORDS = {"feet": "ft", "decimal feet": "ft", "foot": "ft", "inches": "in",
              "feet and inches": "ft-in", "metres": "m", "meters": "m",
              "millimetres": "mm", "millimeters": "mm"}


def heading(cell):
    cell = plain(cell)
    return AS_WRITTEN.get(cell) or MEANING.get(re.sub(r"[.()/_\-+ ]", "", cell))


def header_of(row):
    columns = {}
    for place, cell in enumerate(row):
        if heading(cell):
            columns.setdefault(heading(cell), place)
    station = columns.pop("station", None)
    if station is not None:
        columns["chainage" if "point" in columns else "point"] = station
    return columns if "point" in columns and {"bs", "is", "fs"} & set(columns) else None


def table_of(data, is_header=header_of):
    """Lines with the number of the line on which each begins, and the separator."""
    data = data.removeprefix(b"\xef\xbb\xbf")
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError:
        text = data.decode("cp1252")
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    for separator in ",;\t":
        reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator)
        rows, begin = [], 1
        for row in reader:
            rows.append((begin, [cell.strip() for cell in row]))
            begin = reader.line_num + 1
        if any(is_header(row) for _, row in rows):
            return rows, separator
    raise Refused("no header")


def keys_of(rows, names=KEYS):
    keys = {}
    for _, row in rows:
        for place, cell in enumerate(row):
            name, colon, value = plain(cell).partition(":")
            if name.strip() not in names:
                continue
            if not value.strip():
                value = next((c for c in row[place + 1:] if c), "")
            else:
                value = cell.partition(":")[2]
            keys.setdefault(name.strip(), value.strip())
    return keys


class Row:
    """A place where the rod stood."""


def station_name(name, hundreds):
    """+10 takes the hundreds last written: after 1+00 it is 1+10."""
    whole = re.fullmatch(r"(\d+)\+\d\d(\.\d+)?", name)
    if whole:
        hundreds[:] = [whole[1]]
    return hundreds[0] + name if re.fullmatch(r"\+\d\d(\.\d+)?", name) else name


def row_of(line, cells, columns, unit, comma, hundreds):
    row, r = Row(), lambda column: (cells[columns[column]]
                                    if columns.get(column, 99) < len(cells) else "")
    unit = UNIT_WORDS.get(plain(r("unit")), plain(r("unit"))) or unit
    row.line, row.point = line, r("point").removeprefix("'")
    row.name = station_name(re.sub(r" +", " ", plain(row.point)), hundreds)
    if row.name in ("sum", "total", "misclosure", "closure"):
        return None
    row.remarks, row.rod_on = r("remarks"), plain(r("rod_on"))
    for column in ("bs", "is", "fs", "dip", "known", "elevation"):
        if column != "elevation" or "known" not in columns:
            setattr(row, column, length(r(column), unit, comma))
        else:
            row.elevation = None
    row.bs_run = length(r("bs_run"), run_unit(unit), comma)
    row.fs_run = length(r("fs_run"), run_unit(unit), comma)
    row.chainage = chainage(r("chainage"), unit, comma)
    if row.chainage is None and re.fullmatch(r"\d+\+\d+(\.\d+)?", row.name):
        row.chainage = chainage(row.name, unit, comma)
    row.sights = sum(getattr(row, c) is not None for c in ("bs", "is", "fs"))
    return row


class Book:
    def __init__(self, data):
        table, separator = table_of(data)
        at = next(i for i, (_, row) in enumerate(table) if header_of(row))
        self.columns, self.keys = header_of(table[at][1]), keys_of(table[:at])
        unit = plain(self.keys.get("unit", "ft"))
        self.unit = UNIT_WORDS.get(unit, unit)
        self.adjust = plain(self.keys.get("adjust", "setups"))
        comma = separator != ","
        self.tolerance = (tolerance_of(self.keys["tolerance"], self.unit, comma)
                          if "tolerance" in self.keys else None)
        body = [(line, cells) for line, cells in table[at + 1:] if any(cells) and not
                (cells[0].startswith("#") and not any(cells[1:]))]
        hundreds = [""]
        rows = [row_of(line, cells, self.columns, self.unit, comma, hundreds)
                for line, cells in body]
        self.rows = [row for row in rows if row]
        self.known, self.typed = {}, {}
        for row in self.rows:
            self.typed.setdefault(row.name, row.point)
        for row in self.rows:
            if row.known is not None:
                if self.known.setdefault(row.name, row.known) != row.known:
                    raise Refused("two known elevations")
        first = next((row for row in self.rows if row.sights), None)
        if "known" not in self.columns and first and first.elevation is not None:
            self.known[first.name] = first.elevation
        self.sighted = [row for row in self.rows if row.sights]


# -- rules 3 to 9 ----------------------------------------------------------------------


class Shot:
    """An entry of the reduced book: a sight onto a point, its backsight, or both."""

    def __init__(self, row, setup=None, column=None):
        self.row, self.setup, self.column = row, setup, column
        self.backsight_row = self.opens = None
        self.kind = self.elevation = None
        self.reading = getattr(row, column) if column else None


class Setup:
    def __init__(self, shot):
        self.shot, self.sights, self.via, self.root = shot, [], None, self
        self.number = 0


def shots_and_setups(book):
    """Rule 9: a backsight joins the entry of the sight just before it onto its point."""
    shots, setups = [], []
    for row in book.sighted:
        if row.is_ is not None and (row.bs is not None or row.fs is not None):
            raise Refused("sights together")
        for column in ("is_", "fs"):
            if getattr(row, column) is not None:
                if not setups:
                    raise Refused("before any backsight")
                shots.append(Shot(row, setups[-1], column))
                setups[-1].sights.append(shots[-1])
        if row.bs is not None:
            last = shots[-1] if shots else None
            if not (last and last.backsight_row is None and last.column
                    and last.row.name == row.name and row.name
                    and (last.row is row or last.column == "fs")):
                last = Shot(row, setups[-1] if setups else None)
                shots.append(last)
            last.backsight_row = row
            last.opens = Setup(last)
            last.opens.number = len(setups)
            setups.append(last.opens)
    return shots, setups


def surface_of(book, row):
    """On what the rod stood; where nothing is said of it, on the ground."""
    return (row.rod_on or plain(book.keys.get("rod on", ""))).strip().lower() or "ground"


def carry(book, shots, setups):
    reached, seen = {}, set()
    for setup in setups:
        name = setup.shot.row.name
        if name in book.known:
            start = book.known[name]
        elif name in reached:
            setup.via = reached[name]
            setup.root = setup.via.setup.root
            start = setup.via.elevation
        else:
            raise Refused("not reached: " + name)
        if setup.shot.elevation is None:
            setup.shot.elevation = start
        setup.start = start
        setup.hi = start + setup.shot.backsight_row.bs
        for shot in setup.sights:
            shot.elevation = setup.hi - shot.reading
            place = shot.row.name, surface_of(book, shot.row)
            shot.seen_before = shot.row.name and place in seen
            seen.add(place)
            hung_on = reached.get(shot.row.name)
            # A check from elsewhere is no place to hang a setup on.
            if shot.row.name and not (hung_on and hung_on.column == "fs" and
                                      shot.column == "is_"):
                reached[shot.row.name] = shot


SURFACE = re.compile(r"ground|cl|spot|gl|\(.*\)|\[.*\]")


def last_foresight(setup):
    return next((s for s in reversed(setup.sights) if s.column == "fs"), None)


def name_kinds(book, shots, setups):
    turned = {id(setup.via) for setup in setups if setup.via}
    turning_points = {setup.via.row.name for setup in setups if setup.via}
    for shot in shots:
        name = shot.row.name
        known = name in book.known
        if id(shot) in turned:
            shot.kind = "turning point"
        elif not shot.column:
            shot.kind = "benchmark" if known else "turning point"
        elif known:
            shot.kind = "benchmark" if shot.column == "fs" else "check"
        elif ends_the_line(book, shot, turned):
            shot.kind = "end"
        elif (shot.seen_before and name not in turning_points
              and not SURFACE.fullmatch(name)):
            shot.kind = "check"
        else:
            shot.kind = "intermediate"


def ends_the_line(book, shot, turned):
    """The foresight that ends its setup, with nothing hung on it, and nothing closed."""
    sights = shot.setup.sights
    return (shot is last_foresight(shot.setup)
            and not any(s.column == "fs" and s.row.name in book.known for s in sights)
            and not any(id(s) in turned for s in sights))


# -- sections --------------------------------------------------------------------------


class Section:
    def __init__(self, book, end, last):
        self.end, self.chain = end, [last]
        while self.chain[0].via:
            self.chain.insert(0, self.chain[0].via.setup)
        self.start_name = self.chain[0].shot.row
        self.closed = bool(end) and end.row.name in book.known
        turns = [s.via for s in self.chain[1:]] + ([end] if end else [])
        self.sum_bs = sum(s.shot.backsight_row.bs for s in self.chain)
        self.sum_fs = sum(s.reading for s in turns)
        self.runs = [self.run(setup, turn) for setup, turn in zip(self.chain, turns)]
        complete = len(turns) == len(self.chain) and None not in self.runs
        self.length = sum(self.runs) if complete else None
        self.misclosure = (end.elevation - book.known[end.row.name] if self.closed
                           else None)
        self.judge(book)

    @staticmethod
    def run(setup, turn):
        back, fore = setup.shot.backsight_row.bs_run, turn.row.fs_run
        return None if back is None or fore is None else back + fore

    def judge(self, book):
        self.within = self.allowed_squared = None
        if book.tolerance:
            coefficient, root = book.tolerance
            measure = Fraction(1)
            if root and root[0] == "length" and self.length is not None:
                measure = Fraction(self.length, root[1])
            elif root and root[0] == "setups":
                measure = Fraction(len(self.chain))
            self.allowed_squared = coefficient**2 * measure
            if self.closed:
                self.within = self.misclosure**2 <= self.allowed_squared
        self.adjusted = bool(self.within) and book.adjust != "none"

    def correction(self, k, by_distance):
        if by_distance:
            share = Fraction(sum(self.runs[:k]), self.length)
        else:
            share = Fraction(k, len(self.chain))
        return half_away(-self.misclosure * share)


def sections_of(book, setups):
    sections = []
    for setup in setups:
        for shot in setup.sights:
            if shot.column == "fs" and shot.row.name in book.known and shot.kind == \
                    "benchmark":
                sections.append(Section(book, shot, setup))
    closed = {id(s.chain[0]) for s in sections}
    for root in [s for s in setups if s.root is s and id(s) not in closed]:
        last = [s for s in setups if s.root is root][-1]
        sections.append(Section(book, last_foresight(last), last))
    return sorted(sections, key=lambda s: s.chain[-1].number)


def correct(book, shots, setups, sections):
    shift = {}
    for section in sections:
        for k, setup in enumerate(section.chain, 1):
            if section.adjusted:
                by_distance = book.adjust == "distance"
                shift.setdefault(id(setup), section.correction(k, by_distance))
            else:
                shift.setdefault(id(setup), None)
    for setup in setups:
        if id(setup) not in shift:
            shift[id(setup)] = shift[id(setup.via.setup)] if setup.via else None
    adjusted = {id(s.chain[0]): s.adjusted for s in reversed(sections)}
    for shot in shots:
        if shot.column:
            shot.correction = shift[id(shot.setup)]
        elif shot.opens.via:
            shot.correction = shift[id(shot.opens.via.setup)]
        else:
            shot.correction = 0 if adjusted.get(id(shot.opens)) else None
        shot.adjusted = (None if shot.correction is None
                         else shot.elevation + shot.correction)


class Reduced:
    def __init__(self, data):
        self.book = Book(data)
        for row in self.book.rows:
            row.is_ = getattr(row, "is")
        self.shots, self.setups = shots_and_setups(self.book)
        carry(self.book, self.shots, self.setups)
        name_kinds(self.book, self.shots, self.setups)
        self.sections = sections_of(self.book, self.setups)
        correct(self.book, self.shots, self.setups, self.sections)


def main():
    with open(sys.argv[1], "rb") as file:
        reduced = Reduced(file.read())
    feet = lambda nm: "-" if nm is None else f"{half_away(Fraction(nm, 30480)) / 1e4:.4f}"
    for shot in reduced.shots:
        print(shot.row.line, shot.row.point, shot.kind, feet(shot.elevation),
              feet(shot.correction), feet(shot.adjusted), sep="\t")
    for s in reduced.sections:
        print(s.start_name.point, s.end and s.end.row.point, len(s.chain), feet(s.sum_bs),
              feet(s.sum_fs), feet(s.misclosure), s.within, sep="\t")


if __name__ == "__main__":
    main()
