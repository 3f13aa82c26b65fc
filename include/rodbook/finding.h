/* SPDX-License-Identifier: MIT */
/*
 * finding.h - what is wrong, or worth knowing, and where.
 *
 * No stage prints: each adds its findings to a list that the caller owns.  A finding is a
 * code, a place and up to four typed arguments; its words come from one table in the
 * report.  Adding never fails: past RB_FINDINGS_OF_A_KIND of one code only the count goes
 * on, and a list without memory remembers that it had none.
 */
#ifndef RODBOOK_FINDING_H
#define RODBOOK_FINDING_H

#include "rodbook/arena.h"
#include "rodbook/length.h"
#include "rodbook/slope.h"

enum rb_severity {
	RB_NOTE,    /* worth knowing */
	RB_WARNING, /* look at this; a failed check under --strict */
	RB_FAILED,  /* a check failed: the result stands, exit status 1 */
	RB_ERROR    /* the input is wrong: there is no result, exit status 2 */
};

/* Stable codes, one for each kind of finding.  The name printed in brackets and the words
 * stand in the table of src/report/message.c, the severity in src/notes/finding.c. */
enum rb_code {
#define RB_CODE(code, severity, name) RB_CODE_##code,
#include "rodbook/codes.def"
#undef RB_CODE
	RB_CODES
};

enum rb_argument_kind {
	RB_NOTHING,
	RB_TEXT,    /* words of the user's, or a name from a table */
	RB_LENGTH,  /* shown in the unit of the file, to the places that it needs */
	RB_READING, /* a length shown as one would write it on a rod (a likely reading) */
	RB_COUNT,   /* a whole number */
	RB_LINE,    /* the number of another line */
	RB_SLOPE
};

struct rb_argument {
	enum rb_argument_kind kind;
	union {
		const char *text;
		rb_length length;
		int64_t count;
		rb_slope slope;
	};
	enum rb_unit unit; /* of a length: the unit in which it reads best */
	bool marked;       /* of a likely reading: it was typed with a unit of its own, or
			    * as feet and inches */
};

static inline struct rb_argument rb_text(const char *text)
{
	return (struct rb_argument){ .kind = RB_TEXT, .text = text };
}

static inline struct rb_argument rb_measure(rb_length length, enum rb_unit unit)
{
	return (struct rb_argument){ .kind = RB_LENGTH, .length = length, .unit = unit };
}

static inline struct rb_argument rb_rod_reading(rb_length length, enum rb_unit unit)
{
	return (struct rb_argument){ .kind = RB_READING, .length = length, .unit = unit };
}

static inline struct rb_argument rb_number(int64_t count)
{
	return (struct rb_argument){ .kind = RB_COUNT, .count = count };
}

static inline struct rb_argument rb_line(int64_t line)
{
	return (struct rb_argument){ .kind = RB_LINE, .count = line };
}

static inline struct rb_argument rb_ratio_of(rb_slope slope)
{
	return (struct rb_argument){ .kind = RB_SLOPE, .slope = slope };
}

#define RB_WHOLE_ROW (-1)

/* Where: a line of the file and a cell in it.  Column, sheet cell and the user's own
 * bytes are worked out from the file only when the finding is shown. */
struct rb_place {
	uint32_t line;       /* from 1; 0: the file as a whole, or the command line */
	int32_t cell;        /* from 0, or RB_WHOLE_ROW */
	const char *point;   /* the point of that row, or NULL; in the arena */
	const char *heading; /* what the cell holds ("backsight"), or NULL; constant */
	uint32_t column;     /* from 1, in characters: of a line that no file was read
			      * for, and so without a cell; 0: the whole line */
	uint32_t width;      /* of that, how many characters are meant */
};

#define RB_ARGUMENTS 4

struct rb_finding {
	enum rb_code code;
	struct rb_place place;
	struct rb_argument argument[RB_ARGUMENTS];
};

#define RB_FINDINGS_OF_A_KIND 20

struct rb_source;

struct rb_findings {
	const char *file;               /* as the user named it; borrowed */
	const struct rb_source *source; /* its text, once read; for quoting a row */
	const char
		*typed; /* a line that no file was read for, for quoting it; borrowed */
	struct rb_arena *arena;
	struct rb_finding **item; /* in the order found */
	size_t count;             /* kept in item */
	size_t of_code[RB_CODES]; /* found, kept or not */
	size_t of_severity[RB_ERROR + 1];
	bool out_of_memory;
	size_t room; /* of item */
};

/* An empty list for a file.  The name is borrowed. */
void rb_findings_init(struct rb_findings *findings, struct rb_arena *arena,
		      const char *file);

/* A copy of a text that a finding is to hold, in the arena of the list.  "" where memory
 * ran out, and the list remembers that: a finding never loses its words in silence. */
const char *rb_findings_text(struct rb_findings *findings, const char *text,
			     size_t length);

/* Add a finding; arguments beyond those given are nothing. */
void rb_findings_add(struct rb_findings *findings, enum rb_code code,
		     struct rb_place place, struct rb_argument first,
		     struct rb_argument second);

/* Add a finding that needs more than two arguments. */
void rb_findings_add4(struct rb_findings *findings, enum rb_code code,
		      struct rb_place place,
		      const struct rb_argument argument[RB_ARGUMENTS]);

/* No argument. */
static inline struct rb_argument rb_nothing(void)
{
	return (struct rb_argument){ .kind = RB_NOTHING, .text = NULL };
}

/* Note that memory ran out; always returns false, so that a stage can return it. */
bool rb_findings_no_memory(struct rb_findings *findings);

/* Is there a result?  False after an error or when memory ran out. */
bool rb_findings_allow_result(const struct rb_findings *findings);

/* How grave a code is, and its stable name, e.g. "date-cell". */
enum rb_severity rb_code_severity(enum rb_code code);
const char *rb_code_name(enum rb_code code);

/* A place: a line and a cell of it, on a point. */
static inline struct rb_place rb_at(uint32_t line, int32_t cell, const char *point,
				    const char *heading)
{
	return (struct rb_place){ line, cell, point, heading, 0, 0 };
}

/* The file as a whole. */
static inline struct rb_place rb_in_file(void)
{
	return rb_at(0, RB_WHOLE_ROW, NULL, NULL);
}

#endif
