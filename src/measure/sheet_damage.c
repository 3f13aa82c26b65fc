/* SPDX-License-Identifier: MIT */
/* sheet_damage.c - errors, dates, times and exponents that a spreadsheet leaves. */
#include "measure/sheet_damage.h"

#include <string.h>

#include "measure/meant.h"
#include "measure/number.h"
#include "measure/unit.h"

/* Names of the months in English, French, German and Spanish, accents dropped, each
 * followed by a blank; any beginning of three letters or more stands for the month. */
static const char *const months[12] = {
	"january janvier januar enero ",
	"february fevrier februar febrero ",
	"march mars maerz marz mrz marzo ",
	"april avril abril ",
	"may mai mayo ",
	"june juin juni junio ",
	"july juillet juli julio ",
	"august aout agosto ",
	"september septembre septiembre setiembre ",
	"october octobre oktober octubre ",
	"november novembre noviembre ",
	"december decembre dezember diciembre ",
};

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static bool is_letter(char c)
{
	return c >= 'a' && c <= 'z';
}

/* The month that a word begins; 0: none. */
static int month_of(const char *word, size_t length)
{
	if (length < 3)
		return 0;
	for (int month = 0; month < 12; month++) {
		const char *name = months[month];

		for (; *name != '\0'; name = strchr(name, ' ') + 1)
			if (strncmp(name, word, length) == 0)
				return month + 1;
	}
	return 0;
}

/* One part of a date. */
struct field {
	int value;
	int figures; /* 0: the name of a month */
	char before; /* the separator before it */
};

/* Read a number of one to four figures, or a month, into a field that is all zero. */
static bool read_field(const char **text, struct field *f)
{
	const char *from = *text;

	while (is_digit(**text) && f->figures <= 4) {
		f->value = f->value * 10 + (**text - '0');
		f->figures++;
		++*text;
	}
	if (f->figures > 0)
		return f->figures <= 4;
	while (is_letter(**text))
		++*text;
	f->value = month_of(from, (size_t)(*text - from));
	return f->value > 0;
}

/* Pass over one separator, with a stop or comma before a blank: "5. Mar", "May 3, 2026".
 */
static char read_separator(const char **text)
{
	char c = **text;

	if (c == '\0' || strchr("-/., ", c) == NULL)
		return '\0';
	++*text;
	if ((c == '.' || c == ',') && **text == ' ')
		++*text;
	return c;
}

/* The fields at the start of a text; 0 if it has other things in it.  A time of day may
 * follow a whole date. */
static int read_fields(const char *text, struct field f[3])
{
	int count = 0;
	char before = '\0';

	do {
		f[count].before = before;
		if (!read_field(&text, &f[count]))
			return 0;
		count++;
		if (*text == '\0')
			return count;
		before = read_separator(&text);
	} while (before != '\0' && count < 3);
	return count == 3 && is_digit(*text) && strchr(text, ':') != NULL ? 3 : 0;
}

static bool is_day(const struct field *f)
{
	return f->figures <= 2 && f->value >= 1 && f->value <= 31;
}

static bool are_month_and_day(const struct field *a, const struct field *b)
{
	return is_day(a) && is_day(b) && (a->value <= 12 || b->value <= 12);
}

/* 2026-05-03, 5/3/2026, 05/03/26, 05.03.26; 5.3.2 is no date, but two points. */
static const struct field *numeric_pair(const struct field f[3])
{
	bool stops = f[1].before == '.';

	if (f[1].before != f[2].before || strchr("-/.", f[1].before) == NULL)
		return NULL;
	if (f[0].figures == 4)
		return are_month_and_day(&f[1], &f[2]) ? &f[1] : NULL;
	if (f[2].figures != 4 && f[2].figures != 2)
		return NULL;
	if (stops && f[2].figures == 2 && (f[0].figures != 2 || f[1].figures != 2))
		return NULL;
	return are_month_and_day(&f[0], &f[1]) ? &f[0] : NULL;
}

/* The two fields, in the order of the text, that are month and day (or month and year:
 * May-32); NULL if the text is no date. */
static const struct field *date_pair(const struct field f[3], int count)
{
	int names = 0;

	for (int i = 0; i < count; i++)
		names += f[i].figures == 0;
	if (count < 2 || names > 1)
		return NULL;
	if (names == 0)
		return count == 3 ? numeric_pair(f) : NULL;
	return count == 3 && f[0].figures == 4 ? &f[1] : &f[0];
}

static bool refuse_date(const char *text, const struct rb_reading_rules *rules,
			struct rb_reading *r)
{
	struct field f[3] = { { 0 } };
	int count = read_fields(text, f);
	const struct field *pair = date_pair(f, count);

	if (pair == NULL)
		return false;
	r->refusal = RB_REFUSE_DATE;
	if (pair[0].figures <= 2 && pair[1].figures <= 2)
		rb_meant_pair(r, rules, pair[0].value, pair[1].value);
	return true;
}

/* The hour as it was typed: sheets turn 13:5 into 01:05 PM. */
static int hour_typed(int hour, char half)
{
	if (half == 'p' && hour < 12)
		return hour + 12;
	return half == 'a' && hour == 12 ? 0 : hour;
}

/* Feet and inches of h:mm, h:mm:00 or m:ss.ff; 4:27 is no such, but may be 4.27. */
static void meant_time(struct rb_reading *r, const struct rb_reading_rules *rules,
		       int hour, const struct rb_number *minutes)
{
	int64_t inches;

	if (!rb_unit_is_metric(rules->unit) &&
	    rb_number_length(minutes, RB_INCH, &inches) == RB_READ && inches < RB_FOOT)
		rb_meant(r, rules, hour * RB_FOOT + inches);
	else if (minutes->places == 0 && minutes->digits >= 10 &&
		 rules->unit != RB_FEET_INCHES)
		rb_meant_decimal(r, rules, hour, minutes->digits);
}

static bool refuse_time(const char *text, const struct rb_reading_rules *rules,
			struct rb_reading *r)
{
	struct rb_number hour, minutes, seconds = { 0 };

	if (!is_digit(*text) || rb_number_scan(&text, rules, &hour) != RB_NUMBER_WHOLE ||
	    hour.figures > 2 || *text++ != ':' || !is_digit(*text))
		return false;
	rb_number_scan(&text, rules, &minutes);
	if (*text == ':' && is_digit(text[1])) {
		text++;
		rb_number_scan(&text, rules, &seconds);
	}
	text += *text == ' ';
	if (text[strspn(text, "apm. ")] != '\0')
		return false;
	r->refusal = RB_REFUSE_TIME;
	if (seconds.digits == 0)
		meant_time(r, rules, hour_typed((int)hour.digits, *text), &minutes);
	return true;
}

/* #NAME?, #DIV/0!, #N/A, ####, Err:509. */
static bool refuse_error(const char *text, const struct rb_reading_rules *rules,
			 struct rb_reading *r)
{
	size_t length = strlen(text);
	bool error;

	(void)rules;
	if (text[0] == '#')
		error = length > 1 &&
			(strspn(text, "#") == length ||
			 strchr("!?", text[length - 1]) != NULL ||
			 strcmp(text, "#n/a") == 0 || strcmp(text, "#nv") == 0);
	else
		error = strncmp(text, "err:", 4) == 0 && is_digit(text[4]);
	if (error)
		r->refusal = RB_REFUSE_SHEET;
	return error;
}

/* 1.00E+05: what a sheet makes of a name such as 1E5, or of a very small number. */
static bool refuse_exponent(const char *text, const struct rb_reading_rules *rules,
			    struct rb_reading *r)
{
	bool negative = *text == '-';
	struct rb_number n;
	int power = 0, sign;
	int64_t nm;

	text += negative || *text == '+';
	if (!is_digit(*text))
		return false;
	rb_number_scan(&text, rules, &n);
	if (*text++ != 'e')
		return false;
	sign = *text == '-' ? -1 : 1;
	text += *text == '-' || *text == '+';
	if (!is_digit(*text) || text[strspn(text, "0123456789")] != '\0')
		return false;
	for (; is_digit(*text) && power < 100; text++)
		power = power * 10 + (*text - '0');
	r->refusal = RB_REFUSE_EXPONENT;
	n.places -= sign * power;
	if (n.places >= 0 && n.places <= 18 && n.digits > 0 &&
	    rb_number_length(&n, rb_unit_nm(rules->unit), &nm) == RB_READ)
		rb_meant(r, rules, negative ? -nm : nm);
	return true;
}

static bool refuse_hexadecimal(const char *text, const struct rb_reading_rules *rules,
			       struct rb_reading *r)
{
	size_t digits;

	(void)rules;
	text += *text == '-' || *text == '+';
	if (strncmp(text, "0x", 2) != 0)
		return false;
	digits = strspn(text + 2, "0123456789abcdef.p+-");
	if (digits == 0 || text[2 + digits] != '\0')
		return false;
	r->refusal = RB_REFUSE_HEX;
	return true;
}

static bool refuse_nan(const char *text, const struct rb_reading_rules *rules,
		       struct rb_reading *r)
{
	static const char *const names[] = { "nan", "inf", "infinity" };

	(void)rules;
	text += *text == '-' || *text == '+';
	for (size_t i = 0; i < sizeof names / sizeof *names; i++)
		if (strcmp(text, names[i]) == 0) {
			r->refusal = RB_REFUSE_NAN;
			return true;
		}
	return false;
}

bool rb_sheet_damage(const struct rb_marked *marked, const struct rb_reading_rules *rules,
		     struct rb_reading *r)
{
	static bool (*const refuse[])(const char *, const struct rb_reading_rules *,
				      struct rb_reading *) = {
		refuse_error,    refuse_date,        refuse_time,
		refuse_exponent, refuse_hexadecimal, refuse_nan,
	};

	for (size_t i = 0; i < sizeof refuse / sizeof *refuse; i++)
		if (refuse[i](marked->text, rules, r)) {
			r->where = marked->at[0];
			return true;
		}
	return false;
}

bool rb_sheet_serial(int64_t number, const struct rb_reading_rules *rules)
{
	bool small_unit = rules->unit == RB_INCHES || rules->unit == RB_MILLIMETRES;

	/* 45780 mm is an elevation of 45.780 m, or a length to be converted. */
	if ((rules->kind == RB_OF_ELEVATION || rules->kind == RB_OF_TAPE) && small_unit)
		return false;
	return number >= 40000 && number <= 55000;
}

/*
 * Month and day of a serial number of the 1900 system: 36586 is 1 March 2000.  Days are
 * counted from there, so that the leap day is the last of its year; what
 * rb_sheet_serial() lets in lies between 2009 and 2050, where every fourth year is a leap
 * year (E. G. Richards, Mapping Time, 1998, ch. 25: value from memory; the tests go
 * through all of these days with a calendar).
 */
static void month_and_day(int64_t number, int64_t *month, int64_t *day)
{
	int64_t days = number - 36586;
	int64_t year = (4 * days + 3) / 1461;
	int64_t of_year = days - 1461 * year / 4;
	int64_t from_march = (5 * of_year + 2) / 153;

	*day = of_year - (153 * from_march + 2) / 5 + 1;
	*month = from_march < 10 ? from_march + 3 : from_march - 9;
}

void rb_sheet_refuse_serial(int64_t number, const struct rb_reading_rules *rules,
			    struct rb_reading *r)
{
	int64_t month, day;

	r->refusal = RB_REFUSE_SERIAL;
	month_and_day(number, &month, &day);
	rb_meant_pair(r, rules, month, day);
}
