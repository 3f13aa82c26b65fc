/* SPDX-License-Identifier: MIT */
/*
 * job.h - what every command does around its own work.
 *
 * A job reads its files, each with its own list of findings; the command makes a result
 * from them; the job writes the result, then the findings and the verdict, and knows with
 * which status the program ends.  An error in a file, or a failure of the system, and
 * there is no result.
 */
#ifndef RB_CLI_JOB_H
#define RB_CLI_JOB_H

#include "cli/input.h"
#include "cli/options.h"
#include "cli/output.h"
#include "rodbook/finding.h"

struct rb_job_file {
	struct rb_input input;
	struct rb_findings findings;
	bool told; /* what was found, before the end of the job */
	struct rb_job_file *next;
};

struct rb_job {
	const struct rb_command_line *line;
	struct rb_arena *arena; /* NULL: there was no memory for it */
	struct rb_job_file *first, **last;
	enum rb_exit status; /* RB_EXIT_SYSTEM or RB_EXIT_INPUT once that is known */
	bool no_memory;      /* it ran out, and that was said */
	bool refused; /* the command line was, and that was said: it is told alone */
};

/* Begin a job.  It must be ended, whatever happens between. */
void rb_job_begin(struct rb_job *job, const struct rb_command_line *line);

/*
 * Read a file; "-" is standard input.  NULL, with the reason said, where it cannot be
 * read or is the file that the result is to go to.
 */
struct rb_job_file *rb_job_read(struct rb_job *job, const char *name);

/* See to it that another file to be written, `target`, is not one that was read; false,
 * with the reason said, where it is.  NULL is no file. */
bool rb_job_keep_from(struct rb_job *job, const char *target,
		      const struct rb_job_file *file);

/* The command line as a file with findings of its own; NULL without memory. */
struct rb_job_file *rb_job_words(struct rb_job *job);

/* The findings of all files so far, for a result that holds its messages; *files is set.
 * NULL without memory. */
const struct rb_findings *const *rb_job_findings(const struct rb_job *job, size_t *files);

/* May a result be written?  False after an error in any file or a failure. */
bool rb_job_allows_result(const struct rb_job *job);

/* What writes a result; false: there was no memory. */
typedef bool rb_job_writer(struct rb_sink *sink, void *self);

/* Write the result to where -o says, whole or not at all.  Does nothing where there is no
 * result to write. */
void rb_job_write(struct rb_job *job, rb_job_writer *writer, void *self);

/* And to a file of which `before` was read (NULL: it was not there) and whose bytes the
 * result holds: nobody may have written to it since. */
void rb_job_add_to(struct rb_job *job, const char *name, const struct rb_job_file *before,
		   rb_job_writer *writer, void *self);

/* Say that a file, or a stream, could not be opened, read or written; NULL is standard
 * output. */
void rb_job_failed(struct rb_job *job, const char *name, int error);

/* Say, once, that memory ran out. */
void rb_job_no_memory(struct rb_job *job);

/* Keep what is to be said of a file for the object at the end; false where messages are
 * text, and are told at once. */
bool rb_job_keep(struct rb_job *job, enum rb_code code, const char *file,
		 struct rb_argument first, struct rb_argument second);

/* Do messages go out together, as JSON, at the end? */
bool rb_job_tells_json(const struct rb_job *job);

/* Say at once what was found in a line that was typed; false without memory. */
bool rb_job_say(const struct rb_job *job, const struct rb_findings *findings);

/* Say what was found so far, unless messages go out together at the end: for a command
 * that then asks for more. */
void rb_job_tell(struct rb_job *job);

/*
 * Say what was found, give all memory back, and return how the program ends.
 *
 *   not_done  what an error kept from happening, as the last words: "not reduced"
 */
enum rb_exit rb_job_end(struct rb_job *job, const char *not_done);

#endif
