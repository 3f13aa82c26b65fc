/* SPDX-License-Identifier: MIT */
/* Files, streams, a form, a record, answers line by line. */
#include "trips.h"

/* clang-format off */
const struct trip trips[] = {
	{ { LINE("reduce", "larch.csv", "-f", "csv") }, "standard output", NULL },
	{ { LINE("reduce", "larch.csv", "-f", "csv", "-o", "out/new.csv") }, "out/new.csv", NULL },
	{ { LINE("reduce", "larch.csv", "-f", "csv", "-o", "out/old.csv"),
	    .old_name = "out/old.csv", .old_file = "lines.txt" }, "out/old.csv", NULL },
	{ { LINE("reduce", "-", "-o", "out/new.txt"), .input = "larch.csv" }, "out/new.txt", NULL },
	{ { LINE("record", "--append", "out/site.csv", "larch-metres.csv"),
	    .old_name = "out/site.csv", .old_file = "site.csv" }, "standard output", "out/site.csv" },
	{ { LINE("record", "--append", "out/site.csv", "larch.csv", "-o", "out/page.txt") },
	    "out/page.txt", "out/site.csv" },
	{ { LINE("new", "book", "out/book.csv") }, "out/book.csv", NULL },
	{ { LINE("dig", "larch-plan.csv", "--hi", "102.65", "-o", "out/dig.txt"),
	    .input = "larch-dig.txt" }, "out/dig.txt", NULL },
	{ { LINE("convert", "-f", "csv", "-o", "out/lines.csv"), .input = "lines.txt" },
	    "out/lines.csv", NULL },
	{ { LINE("drain", "larch-plan.csv", "--ground", "larch-ground.csv", "-f", "json") },
	    "standard output", NULL },
	{ { LINE("reduce", "larch.csv", "-f", "csv", "-o", "out/new.csv", "--messages", "json") },
	    "out/new.csv", NULL },
};
/* clang-format on */

const size_t trip_count = sizeof trips / sizeof *trips;
