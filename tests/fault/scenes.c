/* SPDX-License-Identifier: MIT */
/* The command lines that are run with a fault at every place. */
#include "scenes.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* clang-format off */
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
{ LINE("new", "book", "out/book.csv", "--messages", "json"), OLD("out/book.csv") },
{ LINE("new", "book", "out/book.csv", "--messages", "json") },
{ LINE("new", "boko", "--messages", "json") },

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
{ LINE("reduce", "larch.csv", "--messages", "json", "-o", "out/new.txt") },
{ LINE("reduce", "inches.csv", "--strict") },
{ LINE("reduce", "wild.csv") },
{ LINE("reduce", "wild.csv", "-f", "json", "--quiet") },
{ LINE("reduce", "many.csv") },
{ LINE("reduce", "many.csv", "--messages", "json", "--quiet") },
{ LINE("reduce", "unmeasured.csv") },
{ LINE("reduce", "long.csv", "-f", "csv", "-o", "out/long.csv") },
{ LINE("reduce", "long.csv", "-f", "html", "--steps", "-o", "out/long.html") },

{ LINE("fall", "larch-laid.csv") },
{ LINE("fall", "larch-laid.csv", "--minimum", "1/4 in/ft", "--steps") },
{ LINE("fall", "larch-laid-metres.csv", "--rules", "ipc.csv", "--size", "4 in", "-f", "json") },
{ LINE("fall", "larch-ground.csv", "-f", "html", "-o", "out/fall.html") },
{ LINE("fall", "larch-laid.csv", "--from", "HOUS", "--to", "MH-9") },
{ LINE("fall", "larch-laid.csv", "--from", "HOUSE", "--to", "MH-1", "-f", "html", "--steps") },
{ LINE("fall", "shared.csv") },

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
{ LINE("drain", "larch-plan.csv", "--ground", "open.csv", "--use-anyway", "-f", "json") },
{ LINE("drain", "bad-plan.csv") },
{ LINE("drain", "larch-plan.csv", "--interval", "3", "--minimum", "2%", "-f", "csv") },
{ LINE("drain", "--invert", "98.00", "--slope", "1/4 in/ft", "--length", "48", "--hi", "104.27") },

{ LINE("dig", "larch-plan.csv", "--hi", "102.65", "--at", "0+24", "--rod", "11.43", "--steps") },
{ LINE("dig", "larch-plan.csv", "--hi", "102.65", "--at", "0+24", "--rod", "11.43", "-f", "json") },
{ LINE("dig", "larch-plan.csv", "--hi", "102.65"), .input = "larch-dig.txt" },
{ LINE("dig", "larch-plan.csv", "--hi", "102.65", "-f", "json", "-o", "out/dig.json"), .input = "larch-dig.txt" },
{ LINE("dig", "larch-plan.csv", TODAY, "--benchmark", "98", "--backsight", "4.7", "--steps"), .input = "larch-dig.txt" },
{ LINE("dig", "larch-plan.csv", "--hi", "102.65"), .input = "refused.txt" },
{ LINE("dig", "larch-plan.csv", "--hi", "102.65", "--messages", "json"), .input = "refused.txt" },
{ LINE("dig", "--hub", "5.0", "--cut", "7.5", "--rod", "12.2") },

{ LINE("record", BOOKS) },
{ LINE("record", "larch.csv", "larch-laid.csv", "-f", "csv") },
{ LINE("record", "larch.csv", "-f", "json", "-u", "m") },
{ LINE("record", BOOKS, "-f", "html", "-o", "out/site.html") },
{ LINE("record", "--append", "out/site.csv", "larch.csv") },
{ LINE("record", "--append", "out/site.csv", "larch-metres.csv", "-o", "out/page.txt"), RECORD },
{ LINE("record", "--append", "out/site.csv", "larch-slip.csv", "-f", "json"), RECORD },
{ LINE("record", "--append", "out/site.csv", "bad.csv"), RECORD },
{ LINE("record", "--append", "out/site.csv", "larch.csv", "wild.csv"), RECORD },
{ LINE("record", "wild.csv", "larch-sheet.csv", "-f", "json", "--messages", "json") },
{ LINE("record", "long.csv", "-f", "csv", "-o", "out/record.csv") },

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
{ LINE("peg", "bad.csv") },
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

/* A book that takes more than a block here and there, and one with more faults than are
 * told one by one. */
static void write_long_files(void)
{
	char text[8192];
	size_t used = (size_t)snprintf(
		text, sizeof text,
		"tolerance,0.02 ft\npoint,known elevation,backsight,foresight,remarks\n"
		"BM-1,100.00,5.00,,\n");

	for (int i = 1; i <= 40; i++)
		used += (size_t)snprintf(text + used, sizeof text - used,
					 "TP-%d,,5.%02d,5.%02d,a remark of some length\n",
					 i, 10 + i, 10 + i);
	used += (size_t)snprintf(text + used, sizeof text - used, "BM-1,,,5.00,\n");
	put_file("long.csv", text, used);
	used = (size_t)snprintf(text, sizeof text,
				"point,known elevation,backsight,foresight\n");
	for (int i = 1; i <= 60; i++)
		used += (size_t)snprintf(text + used, sizeof text - used,
					 "MH-%d,,%d-Mar,O.%02d\n", i, i % 28 + 1, i);
	put_file("many.csv", text, used);
}

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
		{ "wild.csv", /* Windows-1252, semicolons, a remark of two lines */
		  "Caf\xe9 lateral;;;;;;\nproject;Caf\xe9;;;;;\ntoleranse;0,02 ft;;;;;\n"
		  "point;known elevation;backsight;intermediate;foresight;remarks;odd\n"
		  "BM 1;100,00;4,27;;;\"two\nlines\";x\nTP-1;;5,11;;6,03;;\n"
		  "ceiling;;;-3,04;;;\nTP1;;;5,30;;;\nTP-1;;;5,21;;=1+1;\n"
		  "BM 1;;;;3,36;;\nBM-1 nail;;;;3,36;;\n" },
		{ "unmeasured.csv", "tolerance,0.05 ft sqrt(mi)\n"
				    "point,known elevation,backsight,foresight\n"
				    "BM-1,100.00,4.27,\nTP-1,,5.11,6.03\nBM-1,,,3.36\n" },
		{ "shared.csv", /* two sections from one setup, and a shot without a name
				 */
		  "tolerance,0.02 ft\npoint,known elevation,bs,is,fs,chainage\n"
		  "BM-1,100.00,4.27,,,\nA,,,5.00,,0+10\n,,,5.20,,0+20\n"
		  "BM-2,99.00,,,5.27,\nBM-3,98.00,,,6.27,\n" },
		{ "bad-plan.csv", "drain,D\npipe,9 in nothing\nslope,48\ncolour,red\n"
				  "rules,none.csv\npoint,chainage,invert,slope\n"
				  "A,0+00,95,\nA,0+00,94,flat\nB,x,5-Mar,1/4 in/ft\n" },
	};
	const struct scene first = { LINE("record", "--append", "out/site.csv",
					  "larch.csv") };
	struct outcome made = { .status = 0 };
	struct bytes site = { NULL, 0, 0 };

	if (runs_begin(state))
		return -1;
	for (size_t i = 0; i < sizeof files / sizeof *files; i++)
		put_file(files[i].name, files[i].text, strlen(files[i].text));
	write_long_files();
	prepare(&first, &made.folder);
	run(&first, NULL, &made);
	get_file("out/site.csv", &site);
	put_file("site.csv", site.byte, site.length);
	free(site.byte);
	free_outcome(&made);
	return 0;
}
