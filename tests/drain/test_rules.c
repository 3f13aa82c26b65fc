/* SPDX-License-Identifier: MIT */
/* Rules files: the rule for a size, and the files that come with the program. */
#include "job.h"

#include <stdio.h>

#include "drain/rules.h"

#define HEAD "rule,Here\nsource,the office\nsize up to,minimum slope,remarks\n"

static struct rb_rules *read_text(struct job *job, const char *text)
{
	return rb_rules_read(job->arena, &job->findings, text, strlen(text));
}

#define IN(n) ((rb_length){ (n)*RB_INCH / 2 }) /* in half inches */
#define MM(n) ((rb_length){ (n)*RB_MILLIMETRE })

static void finds_the_rule_for_a_size(void **state)
{
	struct job job = job_new();
	struct rb_rules *rules =
		read_text(&job, HEAD ",1/16 in/ft,8 and larger\n"
				     "6 in,1/8 in/ft,\n2-1/2,1/4 in/ft,\n");
	/* clang-format off */
	const struct { rb_length size; int64_t one_in; } cases[] = {
		{ IN(3),  48 },  { IN(5), 48 },  { IN(6), 96 }, { IN(12), 96 }, { IN(13), 192 },
		{ IN(16), 192 }, { MM(65), 48 }, { MM(75), 96 }, { MM(150), 96 }, { MM(200), 192 },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	job_print(&job.findings);
	assert_non_null(rules);
	assert_string_equal(rules->name, "Here");
	assert_string_equal(rules->rule[2].remarks, "8 and larger");
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		const struct rb_rule *rule = rb_rules_find(rules, cases[i].size);

		if (rule &&
		    rule->minimum.run.nm == cases[i].one_in * rule->minimum.fall.nm)
			continue;
		print_error("row %zu\n", i);
		wrong++;
	}
	assert_int_equal(wrong, 0);
	job_end(&job);
}

static void speaks_only_of_its_sizes(void **state)
{
	struct job job = job_new();
	struct rb_rules *rules =
		read_text(&job, "rule,Sewers\nsmallest size,8 in\n"
				"size up to,minimum slope\n8 in,0.4%\n10 in,0.28%\n");
	struct rb_minimum minimum;
	const struct rb_finding *f;

	(void)state;
	assert_non_null(rules);
	assert_null(rb_rules_find(rules, IN(12)));
	assert_non_null(rb_rules_find(rules, IN(16)));
	assert_null(rb_rules_find(rules, IN(24)));
	assert_false(rb_minimum_by_rules(&job.findings, rules, IN(12), rb_in_file(),
					 &minimum));
	f = job_finding(&job.findings, RB_CODE_NO_RULE_FOR_SIZE);
	assert_non_null(f);
	assert_int_equal(f->argument[1].unit, RB_INCHES);
	assert_false(
		rb_minimum_by_rules(&job.findings, rules, NONE, rb_in_file(), &minimum));
	assert_true(job_found(&job.findings, RB_CODE_SIZE_NEEDED));
	assert_true(rb_minimum_by_rules(&job.findings, rules, IN(20), rb_in_file(),
					&minimum));
	assert_ptr_equal(minimum.rules, rules);
	assert_int_equal(minimum.rule->line, 5);
	job_end(&job);
}

static void bare_sizes_from_twenty_are_millimetres(void **state)
{
	struct job job = job_new();
	struct rb_rules *rules = read_text(&job, HEAD "100,1:40,\n4.5,1:48,\n15,1:60,\n");

	(void)state;
	assert_non_null(rules);
	assert_int_equal(rules->rule[0].up_to.nm, 100 * RB_MILLIMETRE);
	assert_int_equal(rules->rule[1].up_to.nm, 9 * RB_INCH / 2);
	assert_int_equal(rules->rule[2].up_to.nm, 15 * RB_INCH);
	job_end(&job);
}

/* Rules grow as they are read, and are kept by size whatever their order. */
static void long_files_are_whole(void **state)
{
	struct job job = job_new();
	char text[4000] = HEAD;
	struct rb_rules *rules;

	(void)state;
	for (int i = 0; i < 100; i++)
		snprintf(text + strlen(text), sizeof text - strlen(text),
			 "%d in,1:%d,row %d\n", 1 + 37 * i % 100, 48 + i, i);
	rules = read_text(&job, text);
	assert_non_null(rules);
	assert_int_equal(rules->rules, 100);
	for (uint32_t i = 0; i < 100; i++) {
		uint32_t row = rules->rule[i].line - 4;
		char remarks[12];

		snprintf(remarks, sizeof remarks, "row %u", row);
		assert_int_equal(rules->rule[i].up_to.nm, (i + 1) * RB_INCH);
		assert_int_equal(1 + 37 * row % 100, i + 1);
		assert_string_equal(rules->rule[i].remarks, remarks);
	}
	assert_string_equal(rules->file, "plan.csv");
	job_end(&job);
}

static void rows_of_remarks_are_passed_over(void **state)
{
	struct job job = job_new();
	struct rb_rules *rules =
		read_text(&job, HEAD ",,from memory\n20,1:40,\n19,1:48,\n,,end\n");

	(void)state;
	assert_non_null(rules);
	assert_int_equal(rules->rules, 2);
	assert_int_equal(rules->rule[0].up_to.nm, 20 * RB_MILLIMETRE); /* 19 are inches */
	assert_int_equal(rules->rule[1].up_to.nm, 19 * RB_INCH);
	job_end(&job);
}

/* clang-format off */
static const struct { const char *text; enum rb_code code; uint32_t line; int32_t cell; } faults[] = {
	{ HEAD "4 in,,\n",                 RB_CODE_RULE_WITHOUT_SLOPE, 4, 1 },
	{ HEAD "4 in,1:48,\n4 in,1:96,\n", RB_CODE_RULE_SIZE_TWICE, 5, 0 },
	{ HEAD "4 in,1:48,\n100 mm,1:96,\n", RB_CODE_RULE_SIZE_TWICE, 5, 0 },
	{ HEAD ",1:48,\n,1:96,\n",         RB_CODE_RULE_SIZE_TWICE, 5, 0 },
	{ "smallest size,75,mm\n" HEAD "4 in,1:48,\n", RB_CODE_UNIT_APART, 1, 2 },
	{ HEAD "big,1:48,\n",              RB_CODE_BAD_PIPE_SIZE, 4, 0 },
	{ HEAD "4 in,-1%,\n",              RB_CODE_SLOPE_NOT_DOWN, 4, 1 },
	{ HEAD "4 in,0%,\n",               RB_CODE_SLOPE_NOT_DOWN, 4, 1 },
	{ HEAD "4 in,2,\n",                RB_CODE_SLOPE_BARE, 4, 1 },
	{ "size up to,slope,minimum slope\n4 in,1:48,1:48\n", RB_CODE_SAME_COLUMN_TWICE, 1, 2 },
	{ HEAD,                            RB_CODE_NO_RULES, 0, RB_WHOLE_ROW },
};
/* clang-format on */

static void faults_name_their_cell(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof faults / sizeof *faults; i++) {
		struct job job = job_new();
		struct rb_rules *rules = read_text(&job, faults[i].text);
		const struct rb_finding *f = job_finding(&job.findings, faults[i].code);

		if (rules || !f || f->place.line != faults[i].line ||
		    f->place.cell != faults[i].cell) {
			print_error("row %zu\n", i);
			job_print(&job.findings);
			wrong++;
		}
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

/* Of many rules for one size each but the first is told, with the line of the first; a
 * size that was refused is none. */
static void each_rule_for_one_size_names_the_first(void **state)
{
	struct job job = job_new();
	uint32_t line = 6;

	(void)state;
	assert_null(read_text(&job, HEAD "4 in,1:48,\n3 in,1:48,\n100 mm,1:96,\n"
					 "4 in,1:48,\nbig,1:48,\nhuge,1:48,\n"));
	assert_int_equal(job.findings.of_code[RB_CODE_RULE_SIZE_TWICE], 2);
	for (size_t i = 0; i < job.findings.count; i++) {
		const struct rb_finding *f = job.findings.item[i];

		if (f->code != RB_CODE_RULE_SIZE_TWICE)
			continue;
		assert_int_equal(f->place.line, line++);
		assert_int_equal(f->argument[0].count, 4);
	}
	job_end(&job);
}

static void nameless_rules_are_noted(void **state)
{
	struct job job = job_new();

	(void)state;
	assert_non_null(read_text(&job, "size up to,minimum slope\n4 in,1:48\n"));
	assert_true(job_found(&job.findings, RB_CODE_RULE_UNNAMED));
	job_end(&job);
}

/* Its two columns in any order. */
static void the_slope_may_stand_first(void **state)
{
	struct job job = job_new();
	struct rb_rules *rules =
		read_text(&job, "rule,Here\nminimum slope,size up to\n1/4 in/ft,4 in\n");

	(void)state;
	assert_non_null(rules);
	assert_int_equal(rules->rule[0].up_to.nm, 4 * RB_INCH);
	job_end(&job);
}

/* A sheet with semicolons has decimal commas. */
static void semicolons_have_decimal_commas(void **state)
{
	struct job job = job_new();
	struct rb_rules *rules =
		read_text(&job, "rule;Here\nsize up to;minimum slope\n100 mm;1,65%\n");

	(void)state;
	job_print(&job.findings);
	assert_non_null(rules);
	assert_int_equal(rb_slope_compare(rules->rule[0].minimum,
					  (rb_slope){ { 165 }, { 10000 } }),
			 0);
	job_end(&job);
}

/* -- the files of samples/rules -- */

static size_t read_file(const char *name, char *text, size_t room)
{
	char path[200];
	FILE *file;
	size_t length = 0;

	snprintf(path, sizeof path, "samples/rules/%s", name);
	file = fopen(path, "rb");
	if (!file)
		return 0;
	length = fread(text, 1, room - 1, file);
	text[length] = '\0';
	fclose(file);
	return length;
}

/* The slope that each file gives for a size, as fall over run in the rule's own words;
 * what was seen and how stands in the file. */
/* clang-format off */
static const struct {
	const char *file;
	int64_t size; /* nanometres */
	int64_t fall, run; /* 0: the rule does not speak of the size */
} published[] = {
	{ "ipc.csv",        5 * RB_INCH / 2,     1,   48 },
	{ "ipc.csv",        3 * RB_INCH,         1,   96 },
	{ "ipc.csv",        6 * RB_INCH,         1,   96 },
	{ "ipc.csv",        8 * RB_INCH,         1,  192 },
	{ "irc.csv",        5 * RB_INCH / 2,     1,   48 },
	{ "irc.csv",        3 * RB_INCH,         1,   96 },
	{ "upc.csv",        4 * RB_INCH,         2,  100 },
	{ "upc-approved.csv", 3 * RB_INCH,       2,  100 },
	{ "upc-approved.csv", 4 * RB_INCH,       1,  100 },
	{ "nspc.csv",       2 * RB_INCH,         1,   48 },
	{ "nspc.csv",       3 * RB_INCH,         1,   96 },
	{ "ontario.csv",    3 * RB_INCH,         1,   50 },
	{ "ontario.csv",   75 * RB_MILLIMETRE,   1,   50 },
	{ "ontario.csv",    4 * RB_INCH,         0,    0 },
	{ "npc-canada.csv", 3 * RB_INCH,         1,   50 },
	{ "ten-states.csv", 6 * RB_INCH,         0,    0 },
	{ "ten-states.csv", 8 * RB_INCH,        40, 10000 },
	{ "ten-states.csv", 24 * RB_INCH,        8, 10000 },
	{ "uk-h-small-flow.csv", 100 * RB_MILLIMETRE, 1, 40 },
	{ "uk-h.csv",     100 * RB_MILLIMETRE,   1,   80 },
	{ "uk-h.csv",     150 * RB_MILLIMETRE,   1,  150 },
	{ "as-nzs.csv",    65 * RB_MILLIMETRE, 250, 10000 },
	{ "as-nzs.csv",   100 * RB_MILLIMETRE, 165, 10000 },
	{ "as-nzs.csv",   225 * RB_MILLIMETRE,  65, 10000 },
};
/* clang-format on */

static void samples_give_the_published_slopes(void **state)
{
	static char text[4096];
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof published / sizeof *published; i++) {
		struct job job = job_new();
		size_t length = read_file(published[i].file, text, sizeof text);
		struct rb_rules *rules =
			rb_rules_read(job.arena, &job.findings, text, length);
		const struct rb_rule *rule =
			rules ? rb_rules_find(rules, (rb_length){ published[i].size })
			      : NULL;
		bool same =
			published[i].run
				? rule && rb_slope_compare(
						  rule->minimum,
						  (rb_slope){ { published[i].fall },
							      { published[i].run } }) == 0
				: rules && !rule;

		if (!same || job.findings.count || !*rules->source || !*rules->edition ||
		    !*rules->read) {
			print_error("row %zu, %s\n", i, published[i].file);
			job_print(&job.findings);
			wrong++;
		}
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

/* 100 mm is no 3.9370". */
static void a_size_in_millimetres_is_named_so(void **state)
{
	struct job job = job_new();
	struct rb_rules *rules =
		read_text(&job, "rule,Drains\nsize up to,minimum slope\n75 mm,2%\n");
	const struct rb_finding *f;
	struct rb_minimum minimum;

	(void)state;
	assert_false(rb_minimum_by_rules(&job.findings, rules,
					 rb_length_of(100 * RB_MILLIMETRE), rb_in_file(),
					 &minimum));
	f = job_finding(&job.findings, RB_CODE_NO_RULE_FOR_SIZE);
	assert_non_null(f);
	assert_int_equal(f->argument[1].unit, RB_MILLIMETRES);
	job_end(&job);
}

/* One of the two columns is no header. */
static void a_header_has_size_and_slope(void **state)
{
	static const char *const texts[] = { "rule,R\nsize up to,remarks\n4 in,x\n",
					     "rule,R\nminimum slope,remarks\n1%,x\n" };

	(void)state;
	for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
		struct job job = job_new();

		assert_null(read_text(&job, texts[i]));
		assert_true(job_found(&job.findings, RB_CODE_NO_HEADER));
		job_end(&job);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_header_has_size_and_slope),
		cmocka_unit_test(finds_the_rule_for_a_size),
		cmocka_unit_test(speaks_only_of_its_sizes),
		cmocka_unit_test(bare_sizes_from_twenty_are_millimetres),
		cmocka_unit_test(long_files_are_whole),
		cmocka_unit_test(rows_of_remarks_are_passed_over),
		cmocka_unit_test(faults_name_their_cell),
		cmocka_unit_test(each_rule_for_one_size_names_the_first),
		cmocka_unit_test(nameless_rules_are_noted),
		cmocka_unit_test(the_slope_may_stand_first),
		cmocka_unit_test(semicolons_have_decimal_commas),
		cmocka_unit_test(samples_give_the_published_slopes),
		cmocka_unit_test(a_size_in_millimetres_is_named_so),
	};

	return cmocka_run_group_tests_name("rules", tests, NULL, NULL);
}
