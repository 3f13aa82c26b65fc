/* SPDX-License-Identifier: MIT */
/* The commands, and which of them is meant. */
#include <string.h>
#include <unistd.h>

#ifdef __GLIBC__
#include <malloc.h>
#endif

#include "cli/command.h"
#include "cli/complaint.h"
#include "cli/help.h"
#include "cli/options.h"
#include "cli/stream.h"
#include "rodbook/version.h"

/* clang-format off */
static const struct rb_command commands[] = {
{ "new", "book|plan|peg|rules [FILE]", 1, 2, NULL,
	RB_TAKES_ALWAYS | RB_TAKES(UNIT),
	"write a form to fill in",
	"rodbook new book larch.csv -u ft-in\n", rb_run_new },
{ "reduce", "BOOK", 1, 1, "text|csv|json|html|svg",
	RB_TAKES_USUAL | RB_TAKES(STEPS) | RB_TAKES(TOLERANCE) | RB_TAKES(ADJUST) |
	RB_TAKES(ADJUST_ANYWAY),
	"elevations, closure and adjustment of a book",
	"rodbook reduce larch.csv\n"
	"rodbook reduce larch.csv --tolerance '1/4 in' -f csv -o reduced.csv\n", rb_run_reduce },
{ "fall", "BOOK", 1, 1, "text|json|html",
	RB_TAKES_USUAL | RB_TAKES(STEPS) | RB_TAKES(FROM) | RB_TAKES(TO) | RB_TAKES(LENGTH) |
	RB_TAKES(MINIMUM) | RB_TAKES(RULES) | RB_TAKES(SIZE) | RB_TAKES(OUTLET),
	"fall and slope from point to point of a book",
	"rodbook fall larch-laid.csv --minimum '1/4 in/ft'\n"
	"rodbook fall larch-laid.csv --from HOUSE --to MH-1 --rules ipc.csv --size 4\n",
	rb_run_fall },
{ "drain", "[PLAN]", 0, 1, "text|csv|json|html|svg",
	RB_TAKES_USUAL | RB_TAKES(STEPS) | RB_TAKES(GROUND) | RB_TAKES(LAID) | RB_TAKES(HI) |
	RB_TAKES(BENCHMARK) | RB_TAKES(BACKSIGHT) | RB_TAKES(INTERVAL) | RB_TAKES(USE_ANYWAY) |
	RB_TAKES(MINIMUM) | RB_TAKES(RULES) | RB_TAKES(SIZE) | RB_TAKES(INVERT) |
	RB_TAKES(SLOPE) | RB_TAKES(LENGTH) | RB_TAKES(OUTLET),
	"fall, inverts, grade rods, cuts, laid pipe",
	"rodbook drain larch-plan.csv\n"
	"rodbook drain larch-plan.csv --ground larch-ground.csv --interval 10 \\\n"
	"  --benchmark 97.97 --backsight 4.68\n"
	"rodbook drain larch-plan.csv --laid larch-laid.csv\n"
	"rodbook drain --invert 98.00 --slope '1/4 in/ft' --length 48 --hi 104.27\n",
	rb_run_drain },
{ "dig", "[PLAN]", 0, 1, "text|json",
	RB_TAKES_USUAL | RB_TAKES(STEPS) | RB_TAKES(HI) | RB_TAKES(BENCHMARK) |
	RB_TAKES(BACKSIGHT) | RB_TAKES(AT) | RB_TAKES(ROD) | RB_TAKES(ON) | RB_TAKES(WITHIN) |
	RB_TAKES(HUB) | RB_TAKES(CUT) | RB_TAKES(INVERT) | RB_TAKES(SLOPE) |
	RB_TAKES(LENGTH) | RB_TAKES(OUTLET),
	"one rod reading, one answer: dig 1 1/4 in",
	"rodbook dig larch-plan.csv --hi 102.65 --at 0+24 --rod 11.43\n"
	"rodbook dig larch-plan.csv --hi 102.65 --on top   (then lines: 0+24 10.80)\n"
	"rodbook dig --hub 5.0 --cut 7.5 --rod 12.2\n", rb_run_dig },
{ "record", "BOOK...", 1, RB_ANY_NUMBER, "text|csv|json|html",
	RB_TAKES_USUAL | RB_TAKES(APPEND),
	"the site record: all points, in one list",
	"rodbook record larch.csv larch-laid.csv\n"
	"rodbook record --append site.csv larch.csv\n"
	"rodbook record -f html -o site.html larch.csv larch-laid.csv\n", rb_run_record },
{ "check", "BOOK...", 1, RB_ANY_NUMBER, "text|csv|json|html",
	RB_TAKES_USUAL | RB_TAKES(STEPS) | RB_TAKES(MARKS) | RB_TAKES(ANSWERS),
	"first wrong line of a book reduced by hand",
	"rodbook check larch-hand.csv\n"
	"rodbook check --marks class/*.csv -f csv -o marks.csv\n", rb_run_check },
{ "peg", "FILE", 1, 1, "text|json|html",
	RB_TAKES_USUAL | RB_TAKES(BOOK),
	"two-peg test: is the level out of true?",
	"rodbook peg level-2.csv\n"
	"rodbook peg level-2.csv --book larch.csv\n", rb_run_peg },
{ "convert", "[LENGTH...]", 0, RB_ANY_NUMBER, "text|csv|json|html",
	RB_TAKES_USUAL | RB_TAKES(STEPS) | RB_TAKES(TABLE),
	"lengths, or arithmetic, in every notation",
	"rodbook convert 5.29 \"5'-3 1/2\\\"\" '1.613 m'\n"
	"rodbook convert --steps \"8'-6 3/4\\\" / 3\"\n"
	"rodbook convert   (then a length on each line: no quotes needed there)\n"
	"rodbook convert --table 16\n", rb_run_convert },
{ "practice", "--kind convert|loop|fall", 0, 0, "text|csv|json|html",
	RB_TAKES_ALWAYS | RB_TAKES(FORMAT) | RB_TAKES(OUTPUT) | RB_TAKES(UNIT) |
	RB_TAKES(FRACTION) | RB_TAKES(KIND) | RB_TAKES(SEED) | RB_TAKES(COUNT) |
	RB_TAKES(ANSWERS) | RB_TAKES(PLANT) | RB_TAKES(SETUPS) | RB_TAKES(INVERTED),
	"problems to work by hand, and their key",
	"rodbook practice --kind convert --seed 7\n"
	"rodbook practice --kind loop -u ft-in --seed 7 -f csv -o sheet.csv\n"
	"rodbook practice --kind loop -u ft-in --seed 7 --answers\n", rb_run_practice },
{ .name = NULL },
};
/* clang-format on */

static const struct rb_command *find(const char *name)
{
	for (const struct rb_command *c = commands; c->name; c++)
		if (!strcmp(c->name, name))
			return c;
	return NULL;
}

/* The words behind the command's name, and then the command itself. */
static enum rb_exit run(const struct rb_command *command, int argc, char **argv)
{
	struct rb_command_line line = { .command = command };
	struct rb_stream stream;

	rb_stream_open(&stream, STDERR_FILENO);
	if (!rb_options_parse(&line, command, argc, argv, &stream.sink))
		return rb_stream_close(&stream, RB_EXIT_INPUT);
	if (!rb_given(&line, RB_OPTION_HELP))
		return command->run(&line);
	rb_stream_open(&stream, STDOUT_FILENO);
	rb_help_command(&stream.sink, command);
	return rb_stream_close(&stream, RB_EXIT_HOLDS);
}

/* Words of the program itself: no command was named. */
static enum rb_exit answer(const char *word)
{
	struct rb_stream stream;

	rb_stream_open(&stream, STDOUT_FILENO);
	if (!word)
		rb_help_first(&stream.sink);
	else if (!strcmp(word, "--version"))
		rb_sink_text(&stream.sink, "rodbook " RB_VERSION "\n");
	else
		rb_help_all(&stream.sink, commands);
	return rb_stream_close(&stream, RB_EXIT_HOLDS);
}

static bool asks_for_words(const char *word)
{
	return !word || !strcmp(word, "-h") || !strcmp(word, "--help") ||
	       !strcmp(word, "help") || !strcmp(word, "--version");
}

/* What one stage of a long book gives back, the next one takes: handed to the system in
 * between, each page of it would be cleared and charged twice. */
static void keep_memory(void)
{
#ifdef __GLIBC__
	mallopt(M_MMAP_MAX, 0);
	mallopt(M_TRIM_THRESHOLD, -1);
#endif
}

int main(int argc, char **argv)
{
	const char *word = argc > 1 ? argv[1] : NULL;
	const struct rb_command *command = word ? find(word) : NULL;
	struct rb_stream stream;

	keep_memory();
	rb_streams_prepare();
	if (asks_for_words(word))
		return (int)answer(word);
	if (command)
		return (int)run(command, argc - 2, argv + 2);
	rb_stream_open(&stream, STDERR_FILENO);
	rb_complain_command(commands, word, &stream.sink);
	return (int)rb_stream_close(&stream, RB_EXIT_INPUT);
}
