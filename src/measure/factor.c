/* SPDX-License-Identifier: MIT */
/* factor.c - whole numbers, decimals, fractions and mixed numbers, exactly. */
#include "measure/factor.h"

#include <string.h>

#include "measure/number.h"
#include "measure/ratio.h"

#define MOST_FIGURES 15

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static struct rb_ratio whole(int64_t n)
{
	return (struct rb_ratio){ n, 1, false };
}

/* A whole or decimal number; false, and *text stays, if there is none that fits. */
static bool scan_number(const char **text, const struct rb_reading_rules *rules,
			struct rb_ratio *out)
{
	const char *from = *text;
	struct rb_number n = { 0 };
	enum rb_number_kind kind;

	if (!is_digit(*from) && *from != '.' && *from != ',')
		return false;
	kind = rb_number_scan(&from, rules, &n);
	if ((kind != RB_NUMBER_WHOLE && kind != RB_NUMBER_DECIMAL) ||
	    n.figures + n.written > MOST_FIGURES)
		return false;
	*text = from;
	return rb_ratio_work('/', whole(n.digits), whole(rb_ten_to(n.places)), out) ==
	       RB_EXPRESSION_READ;
}

/* 1/2, of whole numbers and without blanks; false, and *text stays, if it is none. */
static bool scan_fraction(const char **text, const struct rb_reading_rules *rules,
			  struct rb_ratio *out)
{
	const char *from = *text;
	struct rb_ratio above, below;

	if (!scan_number(&from, rules, &above) || *from++ != '/' ||
	    !scan_number(&from, rules, &below))
		return false;
	if (memchr(*text, '.', (size_t)(from - *text)) ||
	    memchr(*text, ',', (size_t)(from - *text)) ||
	    rb_ratio_work('/', above, below, out) != RB_EXPRESSION_READ)
		return false;
	*text = from;
	return true;
}

bool rb_factor_scan(const char **text, const struct rb_reading_rules *rules,
			bool fraction, struct rb_ratio *out)
{
	struct rb_ratio part;
	const char *behind;

	if (fraction && scan_fraction(text, rules, out))
		return true;
	if (!scan_number(text, rules, out))
		return false;
	behind = *text + 1;
	if (out->den != 1 || **text != ' ' || !scan_fraction(&behind, rules, &part))
		return true;
	*text = behind;
	return rb_ratio_work('+', *out, part, out) == RB_EXPRESSION_READ;
}
