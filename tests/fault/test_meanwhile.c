/* SPDX-License-Identifier: MIT */
/*
 * Others are at work meanwhile: a signal ends the program at any call, another program
 * writes to the file that is read or to the record that is added to.  Nothing
 * half-written is left, nothing half old and half new is taken for a book, and nobody's
 * lines are lost.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "scenes.h"

#define TOLD_MOST 20
#define CHANGED   "changed meanwhile"

/* clang-format off */
static const struct scene writes_new = { LINE("reduce", "larch.csv", "-f", "csv", "-o", "out/new.csv") };
static const struct scene writes_old = { LINE("reduce", "larch.csv", "-f", "csv", "-o", "out/old.csv"),
	.old_name = "out/old.csv", .old_file = "lines.txt" };
static const struct scene makes_form = { LINE("new", "book", "out/book.csv") };
static const struct scene answers = { LINE("convert", "-o", "out/lines.txt"), .input = "lines.txt" };
static const struct scene adds = { LINE("record", "--append", "out/site.csv", "larch-metres.csv"),
	.old_name = "out/site.csv", .old_file = "site.csv" };
static const struct scene begins = { LINE("record", "--append", "out/site.csv", "larch.csv") };
static const struct scene reads = { LINE("reduce", "out/book.csv", "-f", "csv"),
	.old_name = "out/book.csv", .old_file = "book-before.csv" };
/* clang-format on */

static unsigned long runs;
static int wrong;

static void tell(const struct scene *scene, const struct fault_plan *plan,
		 const struct outcome *got, const char *what)
{
	if (wrong++ < TOLD_MOST)
		print_error("%s\n  %s %lu, number %d: %s (status %x)\n%s%s",
			    line_of(scene), fault_call_name(plan->call), plan->first,
			    plan->number, what, got->status, got->messages.byte,
			    got->folder.byte);
}

/* Do it at every call of every kind, one after another. */
static void at_every_call(const struct scene *scene, struct fault_plan plan,
			  const char *(*fault_of)(const struct fault_plan *plan,
						  const struct outcome *got,
						  const void *self),
			  const void *self)
{
	struct bytes before = { NULL, 0, 0 };
	struct outcome got = { .status = 0 };

	plan.room = -1;
	for (int call = FAULT_OPEN; call < FAULT_CALLS; call++)
		for (plan.first = 1;; plan.first++) {
			const char *what;

			plan.call = (enum fault_call)call;
			plan.last = plan.first;
			prepare(scene, &before);
			run(scene, &plan, &got);
			if (!fault->struck)
				break;
			runs++;
			what = fault_of(&plan, &got, self);
			if (what)
				tell(scene, &plan, &got, what);
		}
	free(before.byte);
	free_outcome(&got);
}

/* -- signals ---------------------------------------------------------------------- */

struct end {
	struct bytes before;
	struct outcome whole;
};

static const char *fault_of_end(const struct fault_plan *plan, const struct outcome *got,
				const void *self)
{
	const struct end *end = self;

	if (!WIFSIGNALED(got->status) || WTERMSIG(got->status) != plan->number)
		return "it goes on";
	if (!are_equal(&got->folder, &end->before) &&
	    !are_equal(&got->folder, &end->whole.folder))
		return "something half-written is left";
	return NULL;
}

static void a_signal_leaves_nothing_half_written(void **state)
{
	static const int signals[] = { SIGTERM, SIGINT, SIGHUP, SIGQUIT };
	static const struct scene *const scene[] = { &writes_new, &writes_old,
						     &makes_form, &answers,
						     &adds,       &begins };

	(void)state;
	wrong = 0;
	for (size_t i = 0; i < sizeof scene / sizeof *scene; i++) {
		struct end end = { .before = { NULL, 0, 0 } };

		prepare(scene[i], &end.before);
		run(scene[i], NULL, &end.whole);
		for (size_t s = 0; s < sizeof signals / sizeof *signals; s++)
			at_every_call(scene[i],
				      (struct fault_plan){ .way = FAULT_SIGNAL,
							   .number = signals[s] },
				      fault_of_end, &end);
		free_outcome(&end.whole);
		free(end.before.byte);
	}
	assert_int_equal(wrong, 0);
}

/* -- the file that is read --------------------------------------------------------- */

/* A book before and after: longer, shorter, or as long with another reading. */
static const char head[] = "point,known elevation,backsight,foresight\n";
static const char before_rows[] =
	"BM-1,100.00,4.27,\nTP-1,,5.11,6.03\nTP-2,,4.90,3.52\nBM-1,,,4.74\n";

static const struct change {
	const char *name;
	const char *rows;
	bool beside; /* written beside it and renamed, else into it */
} changes[] = {
	{ "grows",
	  "BM-1,100.00,4.27,\nTP-1,,5.11,6.03\nTP-2,,4.90,3.52\nBM-1,,,4.74\n"
	  "MH-9,,4.00,5.00\nBM-1,,,3.00\n",
	  false },
	{ "shrinks", "BM-1,100.00,4.27,\nTP-1,,5.11,6.03\n", false },
	{ "is written over",
	  "BM-1,200.00,4.37,\nTP-1,,5.12,6.13\nTP-2,,4.91,3.53\nBM-1,,,4.84\n", false },
	{ "is replaced", "BM-1,200.00,4.37,\nBM-1,,,4.37\n", true },
};
static const struct change *change;

static void put_rows(const char *name, const char *rows)
{
	char text[1024];
	int length = snprintf(text, sizeof text, "%s%s", head, rows);

	put_file(name, text, (size_t)length);
}

static void change_book(void)
{
	if (!change->beside) {
		put_rows("out/book.csv", change->rows);
		return;
	}
	put_rows("out/other", change->rows);
	rename("out/other", "out/book.csv");
}

struct readings {
	struct outcome before, after;
};

static bool is_result_of(const struct outcome *got, const struct outcome *of)
{
	return got->status == of->status && are_equal(&got->output, &of->output);
}

static const char *fault_of_reading(const struct fault_plan *plan,
				    const struct outcome *got, const void *self)
{
	const struct readings *readings = self;

	(void)plan;
	if (is_result_of(got, &readings->before) || is_result_of(got, &readings->after))
		return NULL;
	if (ended(got, 3) && !got->output.length &&
	    is_one_message(&got->messages, "out/book.csv", CHANGED))
		return NULL;
	return "half of the old book and half of the new one";
}

static void a_book_is_the_old_one_or_the_new_one(void **state)
{
	struct readings readings = { .before = { .status = 0 } };
	struct fault_plan plan = { .way = FAULT_MEANWHILE,
				   .meanwhile = change_book,
				   .chunk = 16 };
	struct bytes folder = { NULL, 0, 0 };

	(void)state;
	wrong = 0;
	put_rows("book-before.csv", before_rows);
	prepare(&reads, &folder);
	run(&reads, NULL, &readings.before);
	for (change = changes; change < changes + sizeof changes / sizeof *changes;
	     change++) {
		struct scene after = reads;

		put_rows("book-after.csv", change->rows);
		after.old_file = "book-after.csv";
		prepare(&after, &folder);
		run(&after, NULL, &readings.after);
		at_every_call(&reads, plan, fault_of_reading, &readings);
	}
	free_outcome(&readings.before);
	free_outcome(&readings.after);
	free(folder.byte);
	assert_int_equal(wrong, 0);
}

/* Standard input is a file too, where the shell opened one. */
static void a_book_on_standard_input_is_watched_too(void **state)
{
	const struct scene scene = { .word = { "reduce", "-", NULL },
				     .input = "out/book.csv",
				     .old_name = "out/book.csv",
				     .old_file = "book-before.csv" };
	const struct fault_plan plan = { .call = FAULT_READ,
					 .first = 2,
					 .last = 2,
					 .way = FAULT_MEANWHILE,
					 .meanwhile = change_book,
					 .chunk = 16,
					 .room = -1 };
	struct outcome got = { .status = 0 };
	struct bytes folder = { NULL, 0, 0 };

	(void)state;
	change = &changes[2];
	put_rows("book-before.csv", before_rows);
	prepare(&scene, &folder);
	run(&scene, &plan, &got);
	assert_true(ended(&got, 3));
	assert_true(is_one_message(&got.messages, "rodbook: -: ", CHANGED));
	free_outcome(&got);
	free(folder.byte);
}

/* -- the record that is added to ---------------------------------------------------- */

#define THEIRS "# theirs\n"

/* Another program, which heeds no lock, adds a line. */
static void add_line(void)
{
	int fd = open("out/site.csv", O_WRONLY | O_APPEND | O_CREAT, 0666);
	const char *line = THEIRS;

	if (fd >= 0 && write(fd, line, strlen(line)) < 0)
		abort();
	close(fd);
}

/* And another writes it anew and puts it in place. */
static void replace_record(void)
{
	struct bytes old = { NULL, 0, 0 };

	if (!access("out/site.csv", F_OK))
		get_file("out/site.csv", &old);
	put_file("out/theirs", old.byte ? old.byte : "", old.length);
	free(old.byte);
	rename("out/theirs", "out/site.csv");
	add_line();
}

/* Their line is there, whatever came of ours: but where they come in between the last
 * look and the renaming, which no system call does at once. */
static const char *fault_of_adding(const struct fault_plan *plan,
				   const struct outcome *got, const void *self)
{
	const struct outcome *whole = self;
	bool both = plan->call == FAULT_RENAME;

	if (!both && !strstr(got->folder.byte, THEIRS))
		return "their line is lost";
	if (strstr(got->folder.byte, "out/.rodbook"))
		return "something is left beside it";
	if (ended(got, 3))
		return is_one_message(&got->messages, "out/site.csv", CHANGED)
			       ? NULL
			       : "no message";
	/* A record that ends in a line of theirs is read with it or not at all. */
	return got->status == whole->status || ended(got, 2) ? NULL : "another end";
}

static void nobodys_lines_are_lost_from_a_record(void **state)
{
	static const struct scene *const scene[] = { &adds, &begins };
	static void (*const others[])(void) = { add_line, replace_record };

	(void)state;
	wrong = 0;
	for (size_t i = 0; i < sizeof scene / sizeof *scene * 2; i++) {
		struct outcome whole = { .status = 0 };
		struct bytes before = { NULL, 0, 0 };

		prepare(scene[i / 2], &before);
		run(scene[i / 2], NULL, &whole);
		at_every_call(scene[i / 2],
			      (struct fault_plan){ .way = FAULT_MEANWHILE,
						   .meanwhile = others[i % 2] },
			      fault_of_adding, &whole);
		free_outcome(&whole);
		free(before.byte);
	}
	assert_int_equal(wrong, 0);
}

static int leave(void **state)
{
	print_message("meanwhile: %lu runs\n", runs);
	return runs_end(state);
}

int __wrap_main(void);
int __wrap_main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_signal_leaves_nothing_half_written),
		cmocka_unit_test(a_book_is_the_old_one_or_the_new_one),
		cmocka_unit_test(a_book_on_standard_input_is_watched_too),
		cmocka_unit_test(nobodys_lines_are_lost_from_a_record),
	};

	return cmocka_run_group_tests_name("fault meanwhile", tests, scenes_begin, leave);
}
