/* SPDX-License-Identifier: MIT */
/* Command lines that are taken, and those that are refused, with the words for it. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "cli/options.h"

/* clang-format off */
static const struct rb_command reduce = {
	"reduce", "BOOK", 1, 1, "text|csv|json", RB_TAKES_USUAL | RB_TAKES(TOLERANCE), "", "", NULL
};
static const struct rb_command dig = {
	"dig", "[PLAN]", 0, 2, NULL,
	RB_TAKES(HI) | RB_TAKES(BENCHMARK) | RB_TAKES(SEED) | RB_TAKES(HELP), "", "", NULL
};

/* Words are parted by "|"; complaint NULL: the line is taken. */
static const struct refusal {
	const struct rb_command *command;
	const char *words, *complaint;
} refusals[] = {
	{ &reduce, "a.csv",                        NULL },
	{ &reduce, "-",                            NULL },
	{ &reduce, "-f|json|a.csv",                NULL },
	{ &reduce, "-fjson|a.csv",                 NULL },
	{ &reduce, "-f=json|a.csv",                NULL },
	{ &reduce, "a.csv|--format=csv",           NULL },
	{ &reduce, "--tolerance|1/4 in|a.csv",     NULL },
	{ &reduce, "-o|-|a.csv",                   NULL },
	{ &reduce, "--|-a.csv",                    NULL },
	{ &reduce, "--decimals|0|a.csv",           NULL },
	{ &reduce, "--decimals|9|a.csv",           NULL },
	{ &reduce, "-h|--nonsense",                NULL },
	{ &dig,    "",                             NULL },
	{ &dig,    "--hi=-0.42",                   NULL },
	{ &dig,    "--benchmark|1|--benchmark|2",  NULL },
	{ &dig,    "--seed|4294967295",            NULL },
	{ &reduce, "",                             "something is missing: rodbook reduce BOOK" },
	{ &reduce, "a.csv|b.csv",                  "nothing is known to do with 'b.csv'" },
	{ &reduce, "--tolerence|1|a.csv",          "there is no option '--tolerence'; did you mean '--tolerance'?" },
	{ &reduce, "--qiuet|a.csv",                "did you mean '--quiet'?" },
	{ &reduce, "-quiet|a.csv",                 "there is no option '-quiet'; did you mean '--quiet'?" },
	{ &reduce, "--tol|1|a.csv",                "there is no option '--tol'\n" },
	{ &reduce, "--slope|2%|a.csv",             "'--slope' here; it belongs to other commands" },
	{ &reduce, "-x|a.csv",                     "there is no option '-x'\n" },
	{ &reduce, "--\x1b[2J|a.csv",              "there is no option '--\\x1b[2J'" },
	{ &reduce, "-f|html|a.csv",                "--format takes one of text, csv, json, not 'html'" },
	{ &reduce, "-f|jsn|a.csv",                 "not 'jsn'; did you mean 'json'?" },
	{ &reduce, "-u|feet|a.csv",                "--unit takes one of ft, ft-in, in, m, mm, not 'feet'" },
	{ &reduce, "--format=|a.csv",              "--format takes one of" },
	{ &reduce, "--output=|a.csv",              "--output takes a file, not ''" },
	{ &reduce, "--decimals|10|a.csv",          "--decimals takes a whole number from 0 to 9, not '10'" },
	{ &reduce, "--decimals|2.5|a.csv",         "a whole number from 0 to 9" },
	{ &reduce, "--decimals=-1|a.csv",          "a whole number from 0 to 9" },
	{ &reduce, "--decimals|99999999999999999999|a.csv", "a whole number from 0 to 9" },
	{ &reduce, "--quiet=yes|a.csv",            "--quiet takes no value" },
	{ &reduce, "a.csv|-o",                     "--output needs a value" },
	{ &reduce, "-o|--quiet|a.csv",             "--output needs a value (one that begins with - goes behind a =)" },
	{ &reduce, "-u|ft|-u|m|a.csv",             "--unit is given twice" },
	{ &dig,    "--benchmark|1|--benchmark|2|--benchmark|3", "--benchmark is given too often" },
	{ &dig,    "--seed|4294967296",            "a whole number from 0 to 4294967295" },
};
/* clang-format on */

#define WORDS 12

static int split(char *words, char **argv)
{
	int argc = 0;

	while (*words && argc < WORDS) {
		size_t length = strcspn(words, "|");
		bool more = words[length];

		argv[argc++] = words;
		words[length] = '\0';
		words += length + more;
	}
	return argc;
}

struct said {
	char text[1024];
	size_t used;
};

static bool hear(void *self, const char *bytes, size_t length)
{
	struct said *said = self;

	if (length >= sizeof said->text - said->used)
		return false;
	memcpy(said->text + said->used, bytes, length);
	said->used += length;
	return true;
}

/* Parse words that are parted by "|"; they must outlive the command line. */
static bool parse(struct rb_command_line *line, const struct rb_command *command,
		  char *words, struct said *said)
{
	static char *argv[WORDS];
	struct rb_sink sink;
	bool taken;

	*said = (struct said){ "", 0 };
	rb_sink_init(&sink, hear, said);
	taken = rb_options_parse(line, command, split(words, argv), argv, &sink);
	rb_sink_flush(&sink);
	return taken;
}

static void takes_or_refuses(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof refusals / sizeof *refusals; i++) {
		const struct refusal *r = &refusals[i];
		struct rb_command_line line;
		struct said said;
		char words[128];
		bool taken;

		strcpy(words, r->words);
		taken = parse(&line, r->command, words, &said);
		if (r->complaint ? !taken && strstr(said.text, r->complaint)
				 : taken && !said.used)
			continue;
		print_error("row %zu, \"%s\": %s, said \"%s\"\n", i, r->words,
			    taken ? "taken" : "refused", said.text);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void keeps_what_was_given(void **state)
{
	char words[] = "-u|ft-in|first.csv|--benchmark=-0.42|--benchmark|7|--|--last.csv";
	struct rb_command command = dig;
	struct rb_command_line line;
	struct said said;

	(void)state;
	command.takes |= RB_TAKES(UNIT) | RB_TAKES(FORMAT);
	assert_true(parse(&line, &command, words, &said));
	assert_int_equal(rb_given_unit(&line, RB_FEET), RB_FEET_INCHES);
	assert_int_equal(line.option[RB_OPTION_BENCHMARK].times, 2);
	assert_string_equal(line.option[RB_OPTION_BENCHMARK].text[0], "-0.42");
	assert_string_equal(line.option[RB_OPTION_BENCHMARK].text[1], "7");
	assert_int_equal(line.files, 2);
	assert_string_equal(line.file[0], "first.csv");
	assert_string_equal(line.file[1], "--last.csv");
	assert_false(rb_given(&line, RB_OPTION_FORMAT));
	assert_int_equal(rb_given_number(&line, RB_OPTION_FORMAT, 7), 7);
}

/* A command that does not write every format still numbers them as all others do. */
static void numbers_a_choice_by_the_whole_table(void **state)
{
	char words[] = "-f|json";
	struct rb_command command = dig;
	struct rb_command_line line;
	struct said said;

	(void)state;
	command.takes |= RB_TAKES(FORMAT);
	command.formats = "text|json";
	assert_true(parse(&line, &command, words, &said));
	assert_int_equal(line.option[RB_OPTION_FORMAT].number, RB_FORMAT_JSON);
}

/* The table is indexed by the enum: a forgotten row would be a hole. */
static void has_a_row_for_each_option(void **state)
{
	(void)state;
	for (enum rb_option i = 0; i < RB_OPTIONS; i++) {
		const struct rb_option_row *row = rb_option_row(i);

		assert_non_null(row->name);
		assert_non_null(row->words);
		assert_true(row->kind == RB_FLAG || row->value);
		assert_true(row->kind != RB_WORDS || row->accepts);
		assert_true(row->most >= 1 && row->most <= RB_GIVEN_MOST);
		for (enum rb_option other = 0; other < i; other++)
			assert_string_not_equal(row->name, rb_option_row(other)->name);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(takes_or_refuses),
		cmocka_unit_test(keeps_what_was_given),
		cmocka_unit_test(numbers_a_choice_by_the_whole_table),
		cmocka_unit_test(has_a_row_for_each_option),
	};

	return cmocka_run_group_tests_name("options", tests, NULL, NULL);
}
