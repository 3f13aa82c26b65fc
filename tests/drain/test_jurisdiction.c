/* SPDX-License-Identifier: MIT */
/* Depth limits from a file of the user's, however its rows stand. */
#include "job.h"

#include "drain/jurisdiction.h"

static const struct rb_jurisdiction *read_text(struct job *job, const char *text)
{
	return rb_jurisdiction_read(job->arena, &job->findings, text, strlen(text));
}

/* clang-format off */
static const struct file_case {
	const char *what, *text;
	int64_t depth[4]; /* millimetres; 0: no more */
} files[] = {
	{ "in any order", "unit,m\ndepth,rule\n1.5,a\n1.2,b\n6,c\n1.4,d\n", { 1200, 1400, 1500, 6000 } },
	{ "columns turned round", "unit,mm\nrule,depth\na,1.5\nb,1.2\n", { 1200, 1500 } },
	{ "a comma as the point", "unit;m\ndepth;rule\n1,5;a\n", { 1500 } },
	{ "other names", "unit,m\ndepth,citation,text\n1.5,a,b\n", { 1500 } },
};

static const struct fault_case {
	const char *what, *text;
	enum rb_code code;
} faults[] = {
	{ "no depth",        "depth,rule\n4,a\n,b\n",          RB_CODE_LIMIT_WITHOUT_DEPTH },
	{ "a depth of text", "depth,rule\ndeep,a\n",           RB_CODE_NOT_A_READING },
	{ "two units",       "unit,ft,m\ndepth,rule\n4,a\n",  RB_CODE_UNIT_APART },
	{ "no such unit",    "unit,rods\ndepth,rule\n4,a\n",   RB_CODE_BAD_UNIT },
	{ "two rule columns", "depth,rule,citation\n4,a,b\n", RB_CODE_SAME_COLUMN_TWICE },
	{ "no rule column",  "depth,words\n4,a\n",             RB_CODE_NO_HEADER },
	{ "no depth column", "rule,words\n4,a\n",              RB_CODE_NO_HEADER },
};
/* clang-format on */

static bool has_depths(const struct rb_jurisdiction *j, const int64_t depth[4])
{
	size_t count = 0;

	while (count < 4 && depth[count])
		count++;
	for (size_t i = 0; j && i < count && i < j->limits; i++)
		if (j->limit[i].depth.nm != depth[i] * RB_MILLIMETRE)
			return false;
	return j && j->limits == count;
}

static void limits_stand_by_depth(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof files / sizeof *files; i++) {
		struct job job = job_new();
		const struct rb_jurisdiction *j = read_text(&job, files[i].text);

		if (!has_depths(j, files[i].depth)) {
			print_error("%s\n", files[i].what);
			job_print(&job.findings);
			wrong++;
		}
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

/* Two limits of one depth stay as they were written. */
static void limits_of_a_depth_keep_their_order(void **state)
{
	struct job job = job_new();
	const struct rb_jurisdiction *j =
		read_text(&job, "unit,m\ndepth,rule\n1.5,a\n1.2,b\n1.5,c\n1.2,d\n");

	(void)state;
	assert_non_null(j);
	assert_int_equal(j->limits, 4);
	assert_string_equal(j->limit[0].rule, "b");
	assert_string_equal(j->limit[1].rule, "d");
	assert_string_equal(j->limit[2].rule, "a");
	assert_string_equal(j->limit[3].rule, "c");
	job_end(&job);
}

static void faults_are_errors(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof faults / sizeof *faults; i++) {
		struct job job = job_new();

		if (read_text(&job, faults[i].text) ||
		    !job_found(&job.findings, faults[i].code)) {
			print_error("%s\n", faults[i].what);
			job_print(&job.findings);
			wrong++;
		}
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

static void all_is_kept_of_a_limit(void **state)
{
	struct job job = job_new();
	const struct rb_jurisdiction *j =
		read_text(&job, "jurisdiction,Our yard\nlocate,Yard rule 2\n"
				"depth,rule,asks for\n4,Yard rule 9,shoring\n");

	(void)state;
	assert_non_null(j);
	assert_string_equal(j->name, "Our yard");
	assert_string_equal(j->locate, "Yard rule 2");
	assert_int_equal(j->limit[0].depth.nm, 4 * RB_FOOT);
	assert_string_equal(j->limit[0].rule, "Yard rule 9");
	assert_string_equal(j->limit[0].asks, "shoring");
	job_end(&job);
}

/* The least depth decides, on whatever row it stands. */
static void a_long_file_is_kept_whole(void **state)
{
	struct job job = job_new();
	char text[2000] = "depth,rule\n";
	const struct rb_jurisdiction *j;

	(void)state;
	for (int i = 60; i > 0; i--)
		snprintf(text + strlen(text), sizeof text - strlen(text), "%d,r\n", i);
	j = read_text(&job, text);
	assert_non_null(j);
	assert_int_equal(j->limits, 60);
	assert_int_equal(j->limit[0].depth.nm, RB_FOOT);
	for (size_t i = 1; i < j->limits; i++)
		assert_true(j->limit[i - 1].depth.nm < j->limit[i].depth.nm);
	job_end(&job);
}

static void names_are_forgiving(void **state)
{
	static const char long_name[] =
		"us osha us osha us osha us osha us osha us osha us osha us osha us osha";

	(void)state;
	assert_string_equal(rb_jurisdiction_find(" US  Osha ")->name, "us osha");
	assert_null(rb_jurisdiction_find("us osha 2"));
	assert_null(rb_jurisdiction_find(long_name));
	for (size_t length = 60; length < sizeof long_name; length++) {
		char name[sizeof long_name] = "";

		memcpy(name, long_name, length);
		assert_null(rb_jurisdiction_find(name));
	}
}

/* Before every dig, and wherever it is: buried services come first, and a rule says so.
 */
static void each_has_a_rule_on_buried_services(void **state)
{
	static const char *const names[] = { "us osha", "alberta", "bc", "ontario",
					     "canada federal" };

	(void)state;
	for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
		const struct rb_jurisdiction *j = rb_jurisdiction_find(names[i]);

		assert_non_null(j);
		assert_string_not_equal(j->locate, "");
	}
	assert_string_not_equal(rb_jurisdiction_unset()->locate, "");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(limits_stand_by_depth),
		cmocka_unit_test(faults_are_errors),
		cmocka_unit_test(all_is_kept_of_a_limit),
		cmocka_unit_test(a_long_file_is_kept_whole),
		cmocka_unit_test(names_are_forgiving),
		cmocka_unit_test(limits_of_a_depth_keep_their_order),
		cmocka_unit_test(each_has_a_rule_on_buried_services),
	};

	return cmocka_run_group_tests_name("jurisdiction", tests, NULL, NULL);
}
