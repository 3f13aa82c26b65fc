/* SPDX-License-Identifier: MIT */
/*
 * runs.h - the program, run in a folder of its own, with or without a fault.
 *
 * A run is a process of its own that calls the program's main().  What it leaves in the
 * folder out/ is emptied before the next run.
 */
#ifndef RB_TESTS_FAULT_RUNS_H
#define RB_TESTS_FAULT_RUNS_H

#include <stddef.h>

#include "fault.h"

#define WORDS_MOST 24

struct scene {
	const char *word[WORDS_MOST]; /* the command line behind the program's name */
	const char *input;            /* the file on standard input; NULL: none */
	const char *old_name;         /* a file that is there before, in out/, */
	const char *old_file;         /* and what it is a copy of; NULL: there is none */
	void (*in_child)(void);       /* done just before the program begins; NULL */
};

struct bytes {
	char *byte;
	size_t length, room;
};

struct outcome {
	int status;            /* as waitpid() gives it */
	struct bytes output;   /* standard output */
	struct bytes messages; /* standard error */
	struct bytes folder; /* every file in out/: its name, its length, what it holds */
};

/* Make the folder, with copies of the samples, and go into it; the other way round.  Both
 * return 0, or -1 at a failure: for cmocka's groups. */
int runs_begin(void **state);
int runs_end(void **state);

/* Empty out/ and put there what is to be there before; *folder says what that is. */
void prepare(const struct scene *scene, struct bytes *folder);

/* Run a scene, prepared, under a plan (NULL: none).  What came of the plan is in `fault`
 * afterwards. */
void run(const struct scene *scene, const struct fault_plan *plan,
	 struct outcome *outcome);

/* As whom the program runs from now on: nobody, if these tests may do that. */
bool run_as_nobody(bool nobody);

/* From now on what is reached does not count for the coverage: where the program has no
 * rights or not enough room to write down what it was. */
void runs_are_not_counted(void);

/*
 * How far apart the places of a fault are to be, of so many: RODBOOK_FAULTS=all is every
 * place, =few a handful (where a run is slow, under a sanitizer), =100 at least a hundred
 * (to measure the coverage), else at most `most`.
 */
unsigned long stride_of(unsigned long places, unsigned long most);

/* Look into out/ now. */
void look(struct bytes *folder);

void put_file(const char *name, const char *text, size_t length);
void get_file(const char *name, struct bytes *bytes);

bool are_equal(const struct bytes *a, const struct bytes *b);
bool is_same(const struct outcome *a, const struct outcome *b);
bool ended(const struct outcome *outcome, int status); /* by itself, with that status */

/* Is it one line of messages, and does it hold these words (NULL: any)? */
bool is_one_message(const struct bytes *messages, const char *words, const char *more);

void free_outcome(struct outcome *outcome);

/* The words of a scene's command line, for the one who reads what went wrong. */
const char *line_of(const struct scene *scene);

#endif
