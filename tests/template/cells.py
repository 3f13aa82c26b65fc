"""cells.py place FORM.csv TYPED: the cells of a form into which TYPED is typed.

TYPED has keys and their values, then an empty line, a header and rows, all parted by TABs.
Each line of the answer is a cell (C9), a TAB and the text.

cells.py kept TYPED.cells SAVED.csv: do the cells of the saved file hold what was typed?

cells.py same A.csv B.csv: have the two files the same cells, numbers as numbers?
"""
import csv
import sys
from decimal import Decimal, InvalidOperation
from itertools import zip_longest


def read(name):
    with open(name, encoding="utf-8", newline="") as file:
        return [[cell.replace("\r\n", "\n") for cell in row] for row in csv.reader(file)]


def address(row, column):
    return chr(ord("A") + column) + str(row + 1)


def place(form, typed):
    form = read(form)
    keys = {row[1]: i for i, row in enumerate(form) if len(row) == 3}
    header = max(keys.values()) + 2
    column = {name: i for i, name in enumerate(form[header])}
    with open(typed, encoding="utf-8") as file:
        head, table = file.read().rstrip("\n").split("\n\n")
    for line in head.split("\n"):
        key, value = line.split("\t")
        print(address(keys[key], 2), value, sep="\t")
    names, *rows = (line.split("\t") for line in table.split("\n"))
    for i, row in enumerate(rows):
        for name, cell in zip(names, row):
            if cell:
                print(address(header + 1 + i, column[name]), cell, sep="\t")


def kept(typed, saved):
    saved = read(saved)
    lost = 0
    for line in open(typed, encoding="utf-8"):
        cell, text = line.rstrip("\n").split("\t")
        row, column = int(cell[1:]) - 1, ord(cell[0]) - ord("A")
        found = saved[row][column] if row < len(saved) else "nothing"
        if found != text:
            print(f"{cell}: {text} became {found}")
            lost += 1
    return lost


def value(cell):
    try:
        return Decimal(cell)
    except InvalidOperation:
        return cell


def same(a, b):
    a, b = read(a), read(b)
    differ = 0
    for i, rows in enumerate(zip_longest(a, b, fillvalue=[])):
        for j, (one, other) in enumerate(zip_longest(*rows, fillvalue="")):
            if one != other and value(one) != value(other):
                print(f"{address(i, j)}: {one!r} became {other!r}")
                differ += 1
    return differ


if __name__ == "__main__":
    work = {"place": place, "kept": kept, "same": same}[sys.argv[1]]
    sys.exit(1 if work(*sys.argv[2:]) else 0)
