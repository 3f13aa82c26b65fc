/* SPDX-License-Identifier: MIT */
/*
 * Memory runs out at every place of every command: the program says so once, with status
 * 3, gives all memory back and leaves no file behind; or it did not need that memory, and
 * all is as without.
 *
 * Every call of malloc() and its kin fails, and of the blocks of the arenas some two
 * dozen to a command line; all of them with RODBOOK_FAULTS=all (make fault).
 * RODBOOK_SCENE=words takes only the command lines with these words.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <errno.h>
#include <limits.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>

#include "scenes.h"

#define TOLD_MOST 20

/* A scene, how it goes with all memory, and how it went without some of it. */
struct trial {
	const struct scene *scene;
	struct bytes before; /* what is in out/ when it begins */
	struct outcome whole, got;
	unsigned long runs, without; /* all, and those that ended with status 3 */
	int wrong;
};

static bool begins_with(const struct bytes *all, const struct bytes *part)
{
	return part->length <= all->length &&
	       !memcmp(all->byte, part->byte, part->length);
}

static bool ends_with(const struct bytes *all, const struct bytes *part)
{
	return part->length <= all->length &&
	       !memcmp(all->byte + all->length - part->length, part->byte, part->length);
}

/* May a part of the result be there?  Where each line is answered as it comes. */
static bool answers_lines(const struct scene *scene)
{
	return scene->input && strcmp(scene->input, "larch.csv") != 0;
}

/* Has the record been added to before memory ran out for the page?  Then it is whole. */
static bool has_added(const struct trial *t)
{
	return !strcmp(t->scene->word[0], "record") &&
	       !strcmp(t->scene->word[1], "--append");
}

/* One message, behind those about the lines that went before. */
static bool is_told(const struct trial *t)
{
	struct bytes before = t->got.messages, last = before;

	while (before.length && answers_lines(t->scene) &&
	       !begins_with(&t->whole.messages, &before))
		before.length--;
	if (!answers_lines(t->scene))
		before.length = 0;
	last.byte += before.length;
	last.length -= before.length;
	return is_one_message(&last, strerror(ENOMEM), NULL);
}

/* Memory may run out behind the result too, for the messages. */
static bool is_all_or_nothing(const struct trial *t)
{
	const struct bytes *output = &t->got.output;

	return !output->length || are_equal(output, &t->whole.output) ||
	       (answers_lines(t->scene) && begins_with(&t->whole.output, output));
}

static const char *fault_of(const struct trial *t)
{
	const struct outcome *got = &t->got;

	if (WIFSIGNALED(got->status))
		return "it crashes";
	if (fault->live)
		return "memory is not given back";
	if (is_same(got, &t->whole))
		return NULL;
	if (!ended(got, 3))
		return "its end is neither 3 nor as with all memory";
	if (!is_told(t))
		return "there is not one message that memory ran out";
	if (!is_all_or_nothing(t))
		return "a part of the result is written";
	if (!are_equal(&got->folder, &t->before) &&
	    !are_equal(&got->folder, &t->whole.folder) &&
	    !(has_added(t) && ends_with(&t->whole.folder, &got->folder)))
		return "a file is left, or changed";
	return NULL;
}

/* Where two texts part: what stands there with and without all memory. */
static void tell_difference(const struct bytes *whole, const struct bytes *got)
{
	size_t at = 0;

	while (at < whole->length && at < got->length && whole->byte[at] == got->byte[at])
		at++;
	if (at < whole->length || at < got->length)
		print_error("  ...%.60s\n  ...%.60s\n", whole->byte + at, got->byte + at);
}

static void tell(const struct trial *t, const struct fault_plan *plan, const char *what)
{
	print_error("%s\n  %s %lu%s: %s (status %x, live %ld)\n%s", line_of(t->scene),
		    fault_call_name(plan->call), plan->first,
		    plan->last == plan->first ? "" : " and on", what, t->got.status,
		    fault->live, t->got.messages.byte);
	if (t->got.status == t->whole.status)
		tell_difference(&t->whole.output, &t->got.output);
}

/* One run.  False once the program does not come as far as that. */
static bool try_once(struct trial *t, const struct fault_plan *plan)
{
	const char *what;

	prepare(t->scene, &t->before);
	run(t->scene, plan, &t->got);
	if (!fault->struck)
		return false;
	t->runs++;
	t->without += ended(&t->got, 3);
	what = fault_of(t);
	if (what && t->wrong++ < TOLD_MOST)
		tell(t, plan, what);
	return true;
}

/* The n-th call alone, and then that one and all after it. */
static void try_all(struct trial *t, enum fault_call call, unsigned long stride)
{
	struct fault_plan plan = { .call = call, .way = FAULT_ERROR, .room = -1 };
	bool came = true;

	for (unsigned long n = 1; came; n += stride) {
		plan.first = n;
		plan.last = n;
		came = try_once(t, &plan);
		plan.last = ULONG_MAX;
		came = came && try_once(t, &plan);
	}
}

static void run_whole(struct trial *t)
{
	prepare(t->scene, &t->before);
	run(t->scene, NULL, &t->whole);
	assert_int_equal(fault->live, 0);
	assert_true(ended(&t->whole, 0) || ended(&t->whole, 1) || ended(&t->whole, 2));
}

#define SOME 23 /* blocks of a command line that fail: there are a thousand or so */
#define ALL  ULONG_MAX /* where something went wrong once */

struct tally {
	unsigned long runs, without;
	int wrong;
};

static void fail_all(const struct scene *scene, unsigned long most, struct tally *tally)
{
	struct trial t = { .scene = scene };
	unsigned long blocks, calls;

	run_whole(&t);
	blocks = stride_of(fault->count[FAULT_ARENA], most);
	calls = stride_of(fault->count[FAULT_MEMORY], ALL);
	try_all(&t, FAULT_ARENA, blocks);
	try_all(&t, FAULT_MEMORY, calls);
	tally->runs += t.runs;
	tally->without += t.without;
	tally->wrong += t.wrong;
	free_outcome(&t.whole);
	free_outcome(&t.got);
	free(t.before.byte);
}

static void print_tally(const char *command, struct tally *tally)
{
	if (tally->runs)
		print_message("%s: %lu faults, %lu ended it\n", command, tally->runs,
			      tally->without);
	tally->runs = tally->without = 0;
}

static void memory_runs_out_anywhere(void **state)
{
	const char *command = scenes[0].word[0], *only = getenv("RODBOOK_SCENE");
	struct tally tally = { 0, 0, 0 };

	(void)state;
	for (size_t i = 0; i < scene_count; i++) {
		if (strcmp(command, scenes[i].word[0]) != 0)
			print_tally(command, &tally);
		command = scenes[i].word[0];
		if (!only || strstr(line_of(&scenes[i]), only))
			fail_all(&scenes[i], SOME, &tally);
	}
	print_tally(command, &tally);
	assert_int_equal(tally.wrong, 0);
}

/* -- what once went wrong: every call of one command line -------------------------- */

static void fail_every_call_of(const char *words)
{
	struct tally tally = { 0, 0, 0 };

	for (size_t i = 0; i < scene_count; i++)
		if (!strcmp(line_of(&scenes[i]), words))
			fail_all(&scenes[i], ALL, &tally);
	assert_true(tally.runs > 0);
	assert_int_equal(tally.wrong, 0);
}

static void the_rules_of_a_plan_are_not_forgotten(void **state)
{
	(void)state;
	fail_every_call_of("drain ruled.csv --ground larch-ground.csv");
}

static void nobody_digs_by_half_an_answer(void **state)
{
	(void)state;
	fail_every_call_of("dig larch-plan.csv --hi 102.65");
	fail_every_call_of("dig --hub 5.0 --cut 7.5 --rod 12.2");
}

static void a_line_without_memory_is_not_the_end_of_the_lines(void **state)
{
	(void)state;
	fail_every_call_of("convert");
	fail_every_call_of("convert -f json --messages json");
}

static void a_message_does_not_lose_its_words(void **state)
{
	(void)state;
	fail_every_call_of("reduce bad.csv");
	fail_every_call_of("reduce bad.csv --messages json");
	fail_every_call_of("convert 5-3 5' * 3'");
}

static void a_table_does_not_lose_its_caption(void **state)
{
	(void)state;
	fail_every_call_of("fall larch-laid.csv");
	fail_every_call_of(
		"drain --invert 98.00 --slope 1/4 in/ft --length 48 --hi 104.27");
}

static void a_picture_does_not_lose_its_words(void **state)
{
	(void)state;
	fail_every_call_of("reduce larch-metres.csv -f svg");
}

static void a_page_without_memory_is_not_written(void **state)
{
	(void)state;
	fail_every_call_of("convert --table 8 -f html");
	fail_every_call_of("practice --kind loop --seed 7 --answers");
}

static void no_section_or_shot_is_forgotten(void **state)
{
	(void)state;
	fail_every_call_of("fall shared.csv");
}

static void several_files_tell_it_once(void **state)
{
	(void)state;
	fail_every_call_of("check --marks larch-hand.csv larch-hand-ft-in.csv -f csv");
}

int __wrap_main(void);
int __wrap_main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(memory_runs_out_anywhere),
		cmocka_unit_test(the_rules_of_a_plan_are_not_forgotten),
		cmocka_unit_test(nobody_digs_by_half_an_answer),
		cmocka_unit_test(a_line_without_memory_is_not_the_end_of_the_lines),
		cmocka_unit_test(a_message_does_not_lose_its_words),
		cmocka_unit_test(a_table_does_not_lose_its_caption),
		cmocka_unit_test(a_picture_does_not_lose_its_words),
		cmocka_unit_test(a_page_without_memory_is_not_written),
		cmocka_unit_test(no_section_or_shot_is_forgotten),
		cmocka_unit_test(several_files_tell_it_once),
	};

	return cmocka_run_group_tests_name("fault memory", tests, scenes_begin, runs_end);
}
