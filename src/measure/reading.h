/* SPDX-License-Identifier: MIT */
/*
 * reading.h - a length as people and spreadsheets write it.
 *
 * Nothing is guessed: a text is read as the one length that it can mean, or it is refused
 * with the reason and, where there is one, what it was likely meant to be.  This room
 * knows no file and words no message.
 */
#ifndef RB_MEASURE_READING_H
#define RB_MEASURE_READING_H

#include "rodbook/length.h"

/* What a cell holds: this decides what a bare number and a minus mean. */
enum rb_reading_kind {
	RB_OF_ROD, /* a rod reading: negative, bracketed or "inv" is an inverted rod */
	RB_OF_ELEVATION, /* a minus is a minus; in a ft-in book a bare whole number is
			  * feet, a bare decimal is refused; 1,234.50 is accepted */
	RB_OF_RUN,  /* sight length, chainage, limit, rod length: a bare number is feet
		     * or metres after rb_unit_of_runs(); never negative */
	RB_OF_TAPE, /* a pipe's wall: the unit of the book; a minus is a minus */
	RB_OF_DROP, /* a measure down: the same, never negative */
	RB_READING_KINDS
};

/* Why a text is not a reading.  Each has its own message. */
enum rb_refusal {
	RB_READ,              /* it is one */
	RB_REFUSE_EMPTY,      /* nothing but blanks */
	RB_REFUSE_TEXT,       /* no length at all */
	RB_REFUSE_INCHES,     /* 12 inches or more beside feet: 5'-13" */
	RB_REFUSE_FRACTION,   /* a fraction of 1 or more: 3 9/8" */
	RB_REFUSE_ZERO,       /* a zero denominator */
	RB_REFUSE_ROUNDED,    /* a sheet's rounded fraction: 5 1/3 */
	RB_REFUSE_POINTS,     /* two decimal points: 5.3.2 */
	RB_REFUSE_COMMA,      /* a comma decimal in a comma file: 5,32 */
	RB_REFUSE_THOUSANDS,  /* 1.204 in mm where a comma is a decimal: 1204? */
	RB_REFUSE_LETTER,     /* O, l or I for a digit */
	RB_REFUSE_DATE,       /* 5-Mar, 3/5/2026, 2026-05-03 */
	RB_REFUSE_TIME,       /* 5:03:00 AM */
	RB_REFUSE_SERIAL,     /* 45780: a date's serial number */
	RB_REFUSE_SPACED,     /* 5 29 */
	RB_REFUSE_EXPONENT,   /* 1.00E+05 */
	RB_REFUSE_HEX,        /* 0x1F */
	RB_REFUSE_NAN,        /* nan, inf */
	RB_REFUSE_SHEET,      /* #NAME?, #DIV/0!, Err:509, #### */
	RB_REFUSE_MOJIBAKE,   /* UTF-8 read as Windows-1252 */
	RB_REFUSE_BARE,       /* a number without marks in a ft-in book */
	RB_REFUSE_DASHED,     /* 5-3 in a book whose unit is not ft-in */
	RB_REFUSE_UNMARKED,   /* 5 1/2 without an inch mark: inches, or feet? */
	RB_REFUSE_FINE,       /* more places than a rod shows */
	RB_REFUSE_FINE_MARK,  /* a fraction finer than a tape shows: 1/128" */
	RB_REFUSE_POINT_LOST, /* 1624: a lost decimal point (over the limit) */
	RB_REFUSE_SIGNS,      /* -(0.42), --5.3 */
	RB_REFUSE_INVERTED,   /* brackets or "inv" where no rod is read: (98.24) */
	RB_REFUSE_NEGATIVE,   /* a minus where none can be (a run, a drop) */
	RB_REFUSE_LONG,       /* beyond RB_LENGTH_MAX */
	RB_REFUSALS
};

/* How the text was written: what `--steps`, `check` and the choice of decimals need. */
enum rb_notation { RB_AS_DECIMAL, RB_AS_FEET_INCHES, RB_AS_INCHES };

struct rb_reading_rules {
	enum rb_unit unit;
	enum rb_reading_kind kind;
	bool decimal_comma; /* the file is separated by ; or TAB: 5,32 is a decimal */
	rb_length limit; /* a bare whole number over this has lost its decimal point; not
			  * given: no such check */
};

#define RB_MAYBE 3

struct rb_reading {
	rb_length value; /* set only where refusal is RB_READ */
	enum rb_refusal refusal;
	enum rb_notation notation; /* refused: of the first of maybe[], where the text
				    * tells */
	enum rb_unit unit;         /* the unit in which it was written, bare or marked */
	int decimals;      /* digits after the point, as written (trailing zeros too) */
	int denominator;   /* of the fraction of an inch, as written: 4/8 is read to 8ths;
			    * 1: none */
	bool inverted;     /* a sign, a word or brackets marked an inverted rod */
	bool odd_fraction; /* exact, but no tape has it: 1/10 in */
	bool sixtyfourth;  /* six or more decimals of a foot, read as a whole 64th */
	size_t where;      /* refused: offset in bytes of what is not understood */
	bool marked;       /* refused: `unit` is that of its own mark */
	rb_length maybe[RB_MAYBE]; /* refused: what it may have been, most likely first */
	int maybes;
};

/*
 * Read one length.  text is UTF-8, trimmed or not, `length` bytes; it need not end in
 * NUL. Never fails otherwise than by a refusal; allocates nothing; costs a pass over the
 * text.
 */
struct rb_reading rb_reading_parse(const char *text, size_t length,
				   const struct rb_reading_rules *rules);

/*
 * The short way for what nearly all cells of a long book hold, a plain decimal: figures
 * and at most one point, with or without a minus.  False, and nothing is said of it: the
 * text is not as plain as that, and rb_reading_parse() tells what it is.
 */
bool rb_reading_plain(const char *text, size_t length,
		      const struct rb_reading_rules *rules, struct rb_reading *out);

/*
 * Read a chainage: 0+50, 1+25.5 (two digits after the plus count in hundreds, three in
 * thousands), 50, 15.2 m, in the unit of runs.  `+10` without a figure before the plus is
 * refused here: the caller knows which hundred was last written.
 */
struct rb_reading rb_chainage_parse(const char *text, size_t length,
				    const struct rb_reading_rules *rules);

/* Read the name of a unit, in letters or in words ("ft-in", "feet and inches", "metres",
 * "Decimal feet"); true if it is one. */
bool rb_unit_parse(const char *text, size_t length, enum rb_unit *unit);

#endif
