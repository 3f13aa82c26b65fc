/* SPDX-License-Identifier: MIT */
/* The command lines that are run with a fault at every place. */
#include "scenes.h"

#include <stdlib.h>
#include <string.h>

/* clang-format off */
#define LINE(...) .word = { __VA_ARGS__, NULL }
#define BOOKS "larch.csv", "larch-metres.csv", "larch-ft-in.csv"
#define TODAY "--benchmark", "97.97", "--backsight", "4.68"
#define ALL_OF_A_DRAIN "larch-plan.csv", "--ground", "larch-ground.csv", "--laid", \
	"larch-laid.csv", TODAY, "--interval", "10", "--minimum", "1/4 in/ft"
#define RECORD .old_name = "out/site.csv", .old_file = "site.csv"
#define OLD(name) .old_name = name, .old_file = "lines.txt"

const struct scene scenes[] = {
{ LINE("new", "book") },
{ LINE("new", "plan", "out/plan.csv", "-u", "ft-in") },
{ LINE("new", "peg", "out/peg.csv", "-u", "m") },
{ LINE("new", "rules", "out/rules.csv") },
{ LINE("new", "book", "out/book.csv"), OLD("out/book.csv") },

{ LINE("reduce", "larch.csv") },
{ LINE("reduce", "larch.csv", "--steps", "-u", "ft-in") },
{ LINE("reduce", "larch.csv", "-f", "csv") },
{ LINE("reduce", "larch-ft-in.csv", "-f", "json") },
{ LINE("reduce", "larch-lengths.csv", "-f", "html", "--steps") },
{ LINE("reduce", "larch-metres.csv", "-f", "svg") },
{ LINE("reduce", "larch-slip.csv") },
{ LINE("reduce", "larch-slip.csv", "-f", "json", "--messages", "json") },
{ LINE("reduce", "larch-slip.csv", "-f", "html", "--adjust-anyway") },
{ LINE("reduce", "larch-sheet.csv", "--quiet", "--tolerance", "1/4 in") },
{ LINE("reduce", "larch.csv", "-f", "csv", "-o", "out/new.csv") },
{ LINE("reduce", "larch.csv", "-f", "html", "-o", "out/old.html"), OLD("out/old.html") },
{ LINE("reduce", "-", "--tolerance", "none", "--adjust", "distance"), .input = "larch.csv" },
{ LINE("reduce", "bad.csv") },
{ LINE("reduce", "bad.csv", "--messages", "json") },
{ LINE("reduce", "inches.csv", "--strict") },

{ LINE("fall", "larch-laid.csv") },
{ LINE("fall", "larch-laid.csv", "--minimum", "1/4 in/ft", "--steps") },
{ LINE("fall", "larch-laid-metres.csv", "--rules", "ipc.csv", "--size", "4 in", "-f", "json") },
{ LINE("fall", "larch-laid.csv", "--from", "HOUSE", "--to", "MH-1", "-f", "html", "--steps") },

{ LINE("drain", "larch-plan.csv") },
{ LINE("drain", ALL_OF_A_DRAIN) },
{ LINE("drain", ALL_OF_A_DRAIN, "--steps", "-o", "out/drain.txt") },
{ LINE("drain", ALL_OF_A_DRAIN, "-f", "csv") },
{ LINE("drain", ALL_OF_A_DRAIN, "-f", "json") },
{ LINE("drain", ALL_OF_A_DRAIN, "-f", "html") },
{ LINE("drain", ALL_OF_A_DRAIN, "-f", "svg") },
{ LINE("drain", "larch-plan-ft-in.csv", "--ground", "larch-ground-ft-in.csv", "--hi", "102'-7 3/4\"") },
{ LINE("drain", "ruled.csv", "--ground", "larch-ground.csv") },
{ LINE("drain", "larch-plan.csv", "--ground", "open.csv") },
{ LINE("drain", "larch-plan.csv", "--ground", "open.csv", "-f", "html") },
{ LINE("drain", "larch-plan.csv", "--ground", "open.csv", "-f", "json") },
{ LINE("drain", "--invert", "98.00", "--slope", "1/4 in/ft", "--length", "48", "--hi", "104.27") },

{ LINE("dig", "larch-plan.csv", "--hi", "102.65", "--at", "0+24", "--rod", "11.43", "--steps") },
{ LINE("dig", "larch-plan.csv", "--hi", "102.65", "--at", "0+24", "--rod", "11.43", "-f", "json") },
{ LINE("dig", "larch-plan.csv", "--hi", "102.65"), .input = "larch-dig.txt" },
{ LINE("dig", "larch-plan.csv", "--hi", "102.65", "-f", "json", "-o", "out/dig.json"), .input = "larch-dig.txt" },
{ LINE("dig", "--hub", "5.0", "--cut", "7.5", "--rod", "12.2") },

{ LINE("record", BOOKS) },
{ LINE("record", "larch.csv", "larch-laid.csv", "-f", "csv") },
{ LINE("record", "larch.csv", "-f", "json", "-u", "m") },
{ LINE("record", BOOKS, "-f", "html", "-o", "out/site.html") },
{ LINE("record", "--append", "out/site.csv", "larch.csv") },
{ LINE("record", "--append", "out/site.csv", "larch-metres.csv", "-o", "out/page.txt"), RECORD },
{ LINE("record", "--append", "out/site.csv", "larch-slip.csv", "-f", "json"), RECORD },
{ LINE("record", "--append", "out/site.csv", "bad.csv"), RECORD },

{ LINE("check", "larch-hand.csv", "--steps") },
{ LINE("check", "larch-hand.csv", "larch-hand-ft-in.csv", "--answers") },
{ LINE("check", "larch-hand.csv", "-f", "csv") },
{ LINE("check", "larch-hand-ft-in.csv", "-f", "json", "--answers") },
{ LINE("check", "larch-hand.csv", "larch-hand-ft-in.csv", "-f", "html") },
{ LINE("check", "--marks", "larch-hand.csv", "larch-hand-ft-in.csv") },
{ LINE("check", "--marks", "larch-hand.csv", "larch-hand-ft-in.csv", "-f", "csv") },
{ LINE("check", "--marks", "larch-hand.csv", "larch-hand-ft-in.csv", "-f", "json") },
{ LINE("check", "--marks", "larch-hand.csv", "-f", "html", "-o", "out/marks.html") },

{ LINE("peg", "level-2.csv", "--steps") },
{ LINE("peg", "level-2.csv", "--book", "larch-lengths.csv", "-f", "html") },
{ LINE("peg", "level-2.csv", "--book", "larch-lengths.csv", "-f", "json") },

{ LINE("convert", "5.29", "5'-3 1/2\"", "8'-6 3/4\" / 3", "--steps") },
{ LINE("convert", "5.29", "1.613 m", "-f", "csv") },
{ LINE("convert", "5.29", "1/10\"", "-f", "json") },
{ LINE("convert", "5.29", "1.613 m", "-f", "html", "--quiet") },
{ LINE("convert", "5-3", "5' * 3'") },
{ LINE("convert", "--table", "16") },
{ LINE("convert", "--table", "8", "-f", "html") },
{ LINE("convert"), .input = "lines.txt" },
{ LINE("convert", "-f", "csv", "-o", "out/lines.csv"), .input = "lines.txt" },
{ LINE("convert", "-f", "json", "--messages", "json"), .input = "refused.txt" },

{ LINE("practice", "--kind", "convert", "--seed", "7", "--answers") },
{ LINE("practice", "--kind", "loop", "--seed", "7", "--plant", "-f", "csv") },
{ LINE("practice", "--kind", "loop", "--seed", "7", "--answers", "--inverted", "-f", "html") },
{ LINE("practice", "--kind", "fall", "--seed", "7", "--answers", "-f", "json") },
{ LINE("practice", "--kind", "fall", "--seed", "7", "-f", "csv", "-o", "out/fall.csv") },
{ LINE("practice", "--kind", "loop", "--seed", "7", "--answers") },

{ LINE("--version") },
{ LINE("help") },
{ LINE("reduce", "--help") },
{ LINE("reduse", "larch.csv") },
{ LINE("reduce", "larch.csv", "--formt", "csv") },
{ LINE("drain", "larch-plan.csv", "--hi", "5-3") },
};
/* clang-format on */

const size_t scene_count = sizeof scenes / sizeof *scenes;

int scenes_begin(void **state)
{
	static const struct {
		const char *name, *text;
	} files[] = {
		{ "lines.txt", "5.29\n5'-3 1/2\"\n\n2' + 5'-3\"\n1/10\"\n" },
		{ "refused.txt", "5.29\n5-3\n5' * 3'\n1.613 m" },
		{ "bad.csv",
		  "point,known elevation,backsight,foresight,colour\n"
		  "BM-1,100.00,4.27,,red\nTP-1,,5.11,5-Mar,\nBM-1,,,5.5.5,\n" },
		{ "inches.csv", "unit,ft-in\npoint,known elevation,backsight,foresight\n"
				"BM-1,100'-0\",\"4'-3 1/10\"\"\",\nTP-1,,5'-1\",6'-0\"\n"
				"BM-1,,,\"3'-4 1/10\"\"\"\n" },
		{ "open.csv",
		  "tolerance,0.02 ft\n"
		  "point,known elevation,backsight,foresight,chainage\nBM-1,100.00,4.27,,\n"
		  "MH-1,,5.11,6.03,0+48\nBM-1,,,4.35,\n" },
		{ "ruled.csv", "rules,rules/ipc.csv\njurisdiction,jurisdiction.csv\n"
			       "pipe,4 in sch 40\noutlet,last\npoint,chainage,invert\n"
			       "HOUSE,0+00,92.00\nMAIN,0+48,91.00\n" },
	};
	const struct scene first = { LINE("record", "--append", "out/site.csv",
					  "larch.csv") };
	struct outcome made = { .status = 0 };
	struct bytes site = { NULL, 0, 0 };

	if (runs_begin(state))
		return -1;
	for (size_t i = 0; i < sizeof files / sizeof *files; i++)
		put_file(files[i].name, files[i].text, strlen(files[i].text));
	prepare(&first, &made.folder);
	run(&first, NULL, &made);
	get_file("out/site.csv", &site);
	put_file("site.csv", site.byte, site.length);
	free(site.byte);
	free_outcome(&made);
	return 0;
}
