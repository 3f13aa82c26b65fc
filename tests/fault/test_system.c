/* SPDX-License-Identifier: MIT */
/*
 * The system fails, at every call: what can be taken up again is; else the program ends
 * with status 3 and one message that names the file and the reason, and leaves what was
 * there before.
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

#include "trips.h"

#define TOLD_MOST 20

/* clang-format off */
/* What each kind of call may fail with. */
static const struct {
	enum fault_call call;
	int error;
	bool harmless; /* some of these calls need not succeed */
} failures[] = {
	{ FAULT_OPEN, EACCES, true }, { FAULT_OPEN, EMFILE, true }, { FAULT_OPEN, EIO, true },
	{ FAULT_READ, EIO, false },
	{ FAULT_WRITE, ENOSPC, false }, { FAULT_WRITE, EIO, false }, { FAULT_WRITE, EDQUOT, false },
	{ FAULT_WRITE, EFBIG, false },
	{ FAULT_FSYNC, EIO, true }, { FAULT_FSYNC, ENOSPC, true },
	{ FAULT_CLOSE, EIO, true }, { FAULT_CLOSE, ENOSPC, true },
	{ FAULT_RENAME, EIO, false }, { FAULT_RENAME, EACCES, false },
	{ FAULT_FSTAT, EIO, true }, { FAULT_STAT, EIO, true }, { FAULT_STAT, EACCES, true },
	{ FAULT_MKSTEMP, EACCES, false }, { FAULT_MKSTEMP, ENOSPC, false },
	{ FAULT_MKSTEMP, EROFS, false },
	{ FAULT_FLOCK, ENOLCK, true }, { FAULT_FLOCK, EIO, true },
	{ FAULT_READLINK, EIO, true }, { FAULT_ACCESS, EACCES, false },
};

/* Calls that a signal may interrupt before they have done anything. */
static const enum fault_call interruptible[] = {
	FAULT_OPEN, FAULT_READ, FAULT_WRITE, FAULT_FSYNC, FAULT_CLOSE, FAULT_RENAME,
	FAULT_MKSTEMP, FAULT_FCHMOD, FAULT_FLOCK,
};
/* clang-format on */

struct trial {
	const struct trip *trip;
	struct bytes before;
	struct outcome whole, got;
	unsigned long runs;
	int wrong;
};

static unsigned long all_runs;

static void begin_trial(struct trial *t, const struct trip *trip)
{
	*t = (struct trial){ .trip = trip };
	prepare(&trip->scene, &t->before);
	run(&trip->scene, NULL, &t->whole);
	assert_true(ended(&t->whole, 0));
}

static int end_trial(struct trial *t)
{
	all_runs += t->runs;
	free_outcome(&t->whole);
	free_outcome(&t->got);
	free(t->before.byte);
	return t->wrong;
}

static void tell(struct trial *t, const struct fault_plan *plan, const char *what)
{
	if (t->wrong++ >= TOLD_MOST)
		return;
	print_error("%s\n  %s %lu to %lu, errno %d, room %ld: %s (status %x)\n%s%s",
		    line_of(&t->trip->scene), fault_call_name(plan->call), plan->first,
		    plan->last, plan->number, (long)plan->room, what, t->got.status,
		    t->got.messages.byte, t->got.folder.byte);
}

/* One run under a plan.  False once the program does not come as far as that. */
static bool try_once(struct trial *t, const struct fault_plan *plan)
{
	prepare(&t->trip->scene, &t->before);
	run(&t->trip->scene, plan, &t->got);
	t->runs += fault->struck > 0;
	return fault->struck > 0;
}

/* -- what can be taken up again --------------------------------------------------- */

static void try_as_whole(struct trial *t, struct fault_plan plan, unsigned long times)
{
	for (plan.first = 1;; plan.first++) {
		plan.last = plan.first + times - 1;
		if (!try_once(t, &plan))
			return;
		if (!is_same(&t->got, &t->whole))
			tell(t, &plan, "not as without");
	}
}

static void interrupted_calls_are_taken_up_again(void **state)
{
	struct fault_plan plan = { .way = FAULT_ERROR, .number = EINTR, .room = -1 };
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < trip_count; i++) {
		struct trial t;

		begin_trial(&t, &trips[i]);
		for (size_t c = 0; c < sizeof interruptible / sizeof *interruptible;
		     c++) {
			plan.call = interruptible[c];
			try_as_whole(&t, plan, 1);
			if (plan.call != FAULT_CLOSE)
				try_as_whole(&t, plan, 3);
		}
		wrong += end_trial(&t);
	}
	assert_int_equal(wrong, 0);
}

/* A pipe or a terminal that another program has made not to wait. */
static void calls_that_would_wait_are_waited_for(void **state)
{
	struct fault_plan plan = { .way = FAULT_ERROR, .number = EAGAIN, .room = -1 };
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < trip_count; i++) {
		struct trial t;

		begin_trial(&t, &trips[i]);
		plan.call = FAULT_READ;
		try_as_whole(&t, plan, 2);
		plan.call = FAULT_WRITE;
		try_as_whole(&t, plan, 2);
		wrong += end_trial(&t);
	}
	assert_int_equal(wrong, 0);
}

static void short_reads_and_writes_go_on(void **state)
{
	static const enum fault_call calls[] = { FAULT_READ, FAULT_WRITE };
	struct fault_plan plan = { .way = FAULT_SHORT, .room = -1 };
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < trip_count * 2; i++) {
		struct trial t;

		plan.call = calls[i % 2];
		begin_trial(&t, &trips[i / 2]);
		plan.first = 1;
		plan.last = ULONG_MAX;
		try_once(&t, &plan);
		if (!is_same(&t.got, &t.whole))
			tell(&t, &plan, "not as without");
		plan.chunk = (uint32_t)(6 + stride_of(200, 200));
		try_as_whole(&t, plan, 1);
		plan.chunk = 0;
		wrong += end_trial(&t);
	}
	assert_int_equal(wrong, 0);
}

/* -- what cannot ------------------------------------------------------------------ */

/* The folder as it was before, or with the record, which is written first, as it will
 * be. */
static bool is_whole_folder(const struct trial *t)
{
	const struct bytes *got = &t->got.folder, *whole = &t->whole.folder;

	if (are_equal(got, &t->before))
		return true;
	return t->trip->also && got->length <= whole->length &&
	       !memcmp(whole->byte + whole->length - got->length, got->byte, got->length);
}

static bool is_beginning(const struct bytes *part, const struct bytes *all)
{
	return part->length <= all->length &&
	       !memcmp(part->byte, all->byte, part->length);
}

/* In the object, and nothing outside it. */
static bool is_said_in_json(const char *all, int error)
{
	const char *said = strstr(all, "\"system-failed\"");

	return said && strstr(said, strerror(error)) && all[0] == '{' &&
	       !strcmp(strrchr(all, '}'), "}\n") &&
	       !strstr(said + 1, "\"system-failed\"");
}

/* One message names what failed and why; there may be others, about the book. */
static bool is_said(const struct trial *t, int error)
{
	const char *all = t->got.messages.byte, *first = strstr(all, "rodbook: ");
	const char *end = first ? strchr(first, '\n') : NULL;
	struct bytes line = { (char *)first, end ? (size_t)(end - first) + 1 : 0, 0 };

	if (strstr(all, "\"messages\""))
		return is_said_in_json(all, error);
	return end && (first == all || first[-1] == '\n') &&
	       is_one_message(&line, strerror(error), NULL) && !strstr(end, "rodbook: ");
}

static const char *fault_of(const struct trial *t, int error, bool harmless)
{
	const struct outcome *got = &t->got;

	if (is_same(got, &t->whole))
		return harmless ? NULL : "nothing is said";
	if (!ended(got, 3))
		return "its end is neither 3 nor as without";
	if (!is_said(t, error))
		return "no message with the reason";
	if (!is_whole_folder(t))
		return "a file is half-written, left or lost";
	if (!is_beginning(&got->output, &t->whole.output))
		return "what is written is not the beginning of the result";
	return NULL;
}

static void try_failing(struct trial *t, struct fault_plan plan, bool harmless)
{
	for (plan.first = 1;; plan.first++) {
		const char *what;

		plan.last = plan.first;
		if (!try_once(t, &plan))
			return;
		what = fault_of(t, plan.number, harmless);
		if (what)
			tell(t, &plan, what);
	}
}

static void a_call_that_fails_is_told(void **state)
{
	struct fault_plan plan = { .way = FAULT_ERROR, .room = -1 };
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < trip_count; i++) {
		struct trial t;

		begin_trial(&t, &trips[i]);
		for (size_t f = 0; f < sizeof failures / sizeof *failures; f++) {
			plan.call = failures[f].call;
			plan.number = failures[f].error;
			try_failing(&t, plan, failures[f].harmless);
		}
		wrong += end_trial(&t);
	}
	assert_int_equal(wrong, 0);
}

/* The name of what is written is in the message: of the file behind which the room ends.
 */
static const char *name_of(const struct trip *trip, const struct outcome *got)
{
	const char *also = trip->also;

	return also && strstr(got->messages.byte, also) ? also : trip->writes;
}

static void the_disk_fills_at_any_byte(void **state)
{
	struct fault_plan plan = { .way = FAULT_NONE, .full = ENOSPC };
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < trip_count; i++) {
		struct trial t;
		bool full = true;

		begin_trial(&t, &trips[i]);
		for (plan.room = 0; full;
		     plan.room += (int64_t)stride_of(
			     t.whole.folder.length + t.whole.output.length, 700)) {
			const char *what;

			full = try_once(&t, &plan);
			what = full ? fault_of(&t, ENOSPC, false) : NULL;
			if (full && !what &&
			    !strstr(t.got.messages.byte, name_of(t.trip, &t.got)))
				what = "the file is not named";
			if (what)
				tell(&t, &plan, what);
		}
		wrong += end_trial(&t);
	}
	assert_int_equal(wrong, 0);
}

static void a_reader_that_leaves_ends_it_quietly(void **state)
{
	struct fault_plan plan = { .way = FAULT_NONE, .full = EPIPE };
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < trip_count; i++) {
		struct trial t;
		bool left = !strcmp(trips[i].writes, "standard output") && !trips[i].also;

		begin_trial(&t, &trips[i]);
		for (plan.room = 0; left;
		     plan.room += (int64_t)stride_of(t.whole.output.length, 200)) {
			left = try_once(&t, &plan);
			if (t.got.status != t.whole.status ||
			    !are_equal(&t.got.messages, &t.whole.messages))
				tell(&t, &plan, "not quiet");
		}
		wrong += end_trial(&t);
	}
	assert_int_equal(wrong, 0);
}

/* Nobody leaves a file: there it is a failure as any other. */
static void a_broken_pipe_is_no_excuse_for_half_a_file(void **state)
{
	struct fault_plan plan = {
		.call = FAULT_WRITE, .way = FAULT_ERROR, .number = EPIPE, .room = -1
	};
	struct trial t;

	(void)state;
	begin_trial(&t, &trips[2]);
	try_failing(&t, plan, false);
	assert_true(t.runs > 0);
	assert_int_equal(end_trial(&t), 0);
}

/* One fault in each trip, to be told where it strikes; on how many trips it did. */
static size_t strike_each(const struct fault_plan *plan)
{
	size_t struck = 0;
	int wrong = 0;

	for (size_t i = 0; i < trip_count; i++) {
		struct trial t;
		const char *what = NULL;

		begin_trial(&t, &trips[i]);
		if (try_once(&t, plan)) {
			what = fault_of(&t, EIO, false);
			struck++;
		}
		if (what)
			tell(&t, plan, what);
		wrong += end_trial(&t);
	}
	assert_int_equal(wrong, 0);
	return struck;
}

static void a_write_that_takes_nothing_does_not_hang(void **state)
{
	const struct fault_plan plan = { .call = FAULT_WRITE,
					 .way = FAULT_NOTHING,
					 .first = 1,
					 .last = ULONG_MAX,
					 .room = -1 };

	(void)state;
	assert_int_equal(strike_each(&plan), trip_count);
}

/* What cannot be made safe is not called done: the first of its synchronisations is that
 * of the file. */
static void a_file_that_does_not_reach_the_disk_is_told(void **state)
{
	const struct fault_plan plan = { .call = FAULT_FSYNC,
					 .first = 1,
					 .last = 1,
					 .way = FAULT_ERROR,
					 .number = EIO,
					 .room = -1 };

	(void)state;
	assert_true(strike_each(&plan) > 0);
}

/* On a stick or a share that keeps no modes a result is written all the same. */
static void a_mode_that_is_refused_costs_nothing_but_the_mode(void **state)
{
	struct fault_plan plan = { .call = FAULT_FCHMOD,
				   .first = 1,
				   .last = 1,
				   .way = FAULT_ERROR,
				   .number = EPERM,
				   .room = -1 };
	struct trial t;

	(void)state;
	begin_trial(&t, &trips[1]);
	assert_true(try_once(&t, &plan));
	assert_true(ended(&t.got, 0));
	assert_non_null(strstr(t.got.folder.byte, "out/new.csv, mode 100600"));
	assert_int_equal(end_trial(&t), 0);
}

static int leave(void **state)
{
	print_message("system: %lu faults\n", all_runs);
	return runs_end(state);
}

int __wrap_main(void);
int __wrap_main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(interrupted_calls_are_taken_up_again),
		cmocka_unit_test(calls_that_would_wait_are_waited_for),
		cmocka_unit_test(short_reads_and_writes_go_on),
		cmocka_unit_test(a_call_that_fails_is_told),
		cmocka_unit_test(the_disk_fills_at_any_byte),
		cmocka_unit_test(a_reader_that_leaves_ends_it_quietly),
		cmocka_unit_test(a_broken_pipe_is_no_excuse_for_half_a_file),
		cmocka_unit_test(a_write_that_takes_nothing_does_not_hang),
		cmocka_unit_test(a_file_that_does_not_reach_the_disk_is_told),
		cmocka_unit_test(a_mode_that_is_refused_costs_nothing_but_the_mode),
	};

	return cmocka_run_group_tests_name("fault system", tests, scenes_begin, leave);
}
