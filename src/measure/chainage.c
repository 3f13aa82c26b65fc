/* SPDX-License-Identifier: MIT */
/* chainage.c - distances along a line, 0+50. */
#include <string.h>

#include "measure/unit.h"

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static struct rb_reading refused(enum rb_refusal refusal, size_t where)
{
	return (struct rb_reading){ .refusal = refusal, .where = where };
}

static size_t skip_blanks(const char *text, size_t length, size_t from)
{
	while (from < length && (text[from] == ' ' || text[from] == '\t'))
		from++;
	return from;
}

static size_t skip_digits(const char *text, size_t length, size_t from)
{
	while (from < length && is_digit(text[from]))
		from++;
	return from;
}

/* How many wholes stand before the plus: so many hundreds, or thousands. */
static bool read_before(const char *text, size_t plus, int64_t *count)
{
	size_t from = skip_blanks(text, plus, 0), end;

	from += from < plus && text[from] == '\''; /* kept by a sheet */
	end = skip_digits(text, plus, from);
	if (end == from || end - from > 6 || skip_blanks(text, plus, end) != plus)
		return false;
	*count = 0;
	for (; from < end; from++)
		*count = *count * 10 + (text[from] - '0');
	return true;
}

/* Add the hundreds to what stands behind the plus, in its unit. */
static struct rb_reading add_wholes(struct rb_reading behind, int64_t wholes)
{
	int64_t unit = rb_unit_is_metric(behind.unit) ? RB_METRE : RB_FOOT;

	if (wholes > (RB_LENGTH_MAX - behind.value.nm) / unit)
		return refused(RB_REFUSE_LONG, 0);
	behind.value.nm += wholes * unit;
	return behind;
}

/* A plus without a figure before it, or one that is no chainage's: 1.00E+05. */
static struct rb_reading refuse_plus(const char *text, size_t length, size_t plus,
				     const struct rb_reading_rules *run)
{
	struct rb_reading r = rb_reading_parse(text, length, run);

	return r.refusal == RB_READ ? refused(RB_REFUSE_TEXT, plus) : r;
}

struct rb_reading rb_chainage_parse(const char *text, size_t length,
				    const struct rb_reading_rules *rules)
{
	struct rb_reading_rules run = *rules;
	const char *sign = length > 0 ? memchr(text, '+', length) : NULL;
	size_t plus = sign != NULL ? (size_t)(sign - text) : 0, from, figures;
	int64_t count;
	struct rb_reading behind;

	run.kind = RB_OF_RUN;
	run.limit = rb_length_none(); /* a rod's length is none for a line */
	if (sign == NULL)
		return rb_reading_parse(text, length, &run);
	if (!read_before(text, plus, &count))
		return refuse_plus(text, length, plus, &run);
	from = skip_blanks(text, length, plus + 1);
	figures = skip_digits(text, length, from) - from;
	if (figures != 2 && figures != 3)
		return refused(RB_REFUSE_TEXT, from);
	behind = rb_reading_parse(text + from, length - from, &run);
	if (behind.refusal != RB_READ) {
		behind.where += from;
		behind.maybes = 0; /* they lack the hundreds */
		return behind;
	}
	return add_wholes(behind, count * (figures == 2 ? 100 : 1000));
}
