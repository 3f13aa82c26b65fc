/* SPDX-License-Identifier: MIT */
/* cure.c - what a refused text would read as with a usual slip put right. */
#include "measure/cure.h"

#include <string.h>

#include "measure/meant.h"
#include "measure/sheet_damage.h"
#include "measure/unit.h"

static bool is_letter(char c)
{
	return c >= 'a' && c <= 'z';
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

/* Take over what a cured text reads as, or may have been. */
void rb_meant_by(struct rb_reading *r, const struct rb_reading_rules *rules,
		 const struct rb_reading *cured)
{
	/* 1,613 mm in a book of feet means millimetres. */
	if (cured->refusal == RB_READ && rb_unit_is_metric(cured->unit) &&
	    cured->unit != rules->unit) {
		r->marked = true;
		r->unit = cured->unit;
	}
	r->notation = cured->notation;
	if (cured->refusal == RB_READ)
		rb_meant(r, rules, cured->value.nm);
	for (int i = 0; i < cured->maybes; i++)
		rb_meant(r, rules, cured->maybe[i].nm);
}

/* 5,32 in a comma file: with a decimal comma, or an elevation or a run with thousands. */
static void cure_comma(const struct rb_marked *m, const struct rb_reading_rules *rules,
		       struct rb_reading *r)
{
	struct rb_reading_rules with_comma = *rules;
	struct rb_marked without = *m;
	const char *comma = strchr(m->text, ',');
	struct rb_reading cured;
	bool small, grouped;
	size_t at;

	at = comma == NULL ? 0 : (size_t)(comma - m->text);
	memmove(without.text + at, m->text + at + 1, strlen(m->text + at));
	without.length--;
	with_comma.decimal_comma = true;
	rb_marked_read(m, &with_comma, &cured);
	small = (cured.refusal == RB_READ || cured.refusal == RB_REFUSE_THOUSANDS) &&
		cured.unit == RB_MILLIMETRES;
	grouped = comma != NULL && strchr(comma + 1, ',') == NULL &&
		  strspn(comma + 1, "0123456789") == 3 &&
		  (small || rules->kind == RB_OF_ELEVATION || rules->kind == RB_OF_RUN);
	if (!small || !grouped)
		rb_meant_by(r, rules, &cured);
	if (!grouped)
		return;
	rb_marked_read(&without, rules, &cured);
	rb_meant_by(r, rules, &cured);
}

/* Does the rest of the text, put as it is, read, or want nothing but its marks?  Then
 * that is what was meant. */
static bool try_cured(const struct rb_marked *cured, const struct rb_reading_rules *rules,
		      enum rb_refusal refusal, size_t where, struct rb_reading *r)
{
	struct rb_reading reading;

	rb_marked_read(cured, rules, &reading);
	if (reading.refusal != RB_READ && reading.refusal != RB_REFUSE_BARE)
		return false;
	*r = (struct rb_reading){ 0 };
	rb_meant_by(r, rules, &reading);
	r->refusal = refusal;
	r->where = where;
	return true;
}

/* 5.2 9: is the blank at i among the digits behind a point? */
static bool is_behind_point(const struct rb_marked *m, int i)
{
	if (!is_digit(m->text[i + 1]))
		return false;
	while (i > 0 && is_digit(m->text[i - 1]))
		i--;
	return i > 0 && m->text[i - 1] == '.';
}

/* A blank beside the point, as in 4. 27, or among the digits behind it, or one that
 * groups the digits before it: 1 613 mm. */
static bool is_loose_blank(const struct rb_marked *m, int i)
{
	const char *behind = m->text + i + 1;

	if (m->text[i] != ' ' || i == 0)
		return false;
	if (*behind == '.' || m->text[i - 1] == '.' || is_behind_point(m, i))
		return true;
	return is_digit(m->text[i - 1]) && strspn(behind, "0123456789") == 3 &&
	       behind[3] != '/';
}

static bool cure_blanks(const struct rb_marked *m, const struct rb_reading_rules *rules,
			struct rb_reading *r)
{
	struct rb_marked joined = *m;

	joined.length = 0;
	for (int i = 0; i < m->length; i++)
		if (!is_loose_blank(m, i))
			joined.text[joined.length++] = m->text[i];
	joined.text[joined.length] = '\0';
	return joined.length < m->length &&
	       try_cured(&joined, rules, RB_REFUSE_SPACED, m->at[0], r);
}

/* =4.27, ~4.27, 4.27*, 4.27?: what a formula or a doubt left beside a reading. */
static bool cure_edges(const struct rb_marked *m, const struct rb_reading_rules *rules,
		       struct rb_reading *r)
{
	struct rb_marked inner = *m;
	int front = (int)strspn(m->text, "=~*?< >"), length = m->length;

	while (length > front && strchr("*?,;:=! ", m->text[length - 1]))
		length--;
	inner.length = length - front;
	memmove(inner.text, m->text + front, (size_t)inner.length);
	inner.text[inner.length] = '\0';
	return inner.length < m->length &&
	       try_cured(&inner, rules, RB_REFUSE_TEXT, m->at[front ? 0 : length], r);
}

static bool is_like_digit(char c)
{
	return c == 'o' || c == 'l' || c == 'i';
}

/* Three and more of these letters, and no figure or point before them nor a figure
 * behind: oil and ill are words. */
static bool is_in_word(const struct rb_marked *m, int i)
{
	int end = i;

	while (i > 0 && is_like_digit(m->text[i - 1]))
		i--;
	while (is_like_digit(m->text[end]))
		end++;
	return end - i > 2 && !is_digit(m->text[end]) &&
	       (i == 0 || (!is_digit(m->text[i - 1]) && m->text[i - 1] != '.'));
}

/* Is the letter at i one that stands for a digit in this place: beside a figure or a
 * mark, or alone, and not the i of `in` and `inv`? */
static bool is_digit_letter(const struct rb_marked *m, int i)
{
	char before = i > 0 ? m->text[i - 1] : ' ', c = m->text[i],
	     after = m->text[i + 1];

	if (!is_like_digit(c) || (c == 'i' && after == 'n') || is_in_word(m, i))
		return false;
	return (!is_letter(before) || is_like_digit(before)) &&
	       (!is_letter(after) || is_like_digit(after) || before != ' ');
}

/* Are there digits beside the letters, or nothing but such letters and marks?  Without a
 * digit, what stands under a heading of elevations is rather the name of a point. */
static bool may_be_digits(const struct rb_marked *m, enum rb_reading_kind kind)
{
	if (strpbrk(m->text, "0123456789"))
		return true;
	return kind != RB_OF_ELEVATION && m->text[strspn(m->text, "oli-.'\"")] == '\0';
}

/* Do the digits make a reading, or one that is refused with a guess at what was meant? */
static bool is_likely(const struct rb_reading *cured, enum rb_reading_kind kind)
{
	return cured->refusal == RB_READ || cured->refusal == RB_REFUSE_BARE ||
	       (cured->maybes > 0 && kind != RB_OF_ELEVATION);
}

/* 5.O2, l.5: put the digits right, and see what comes of that. */
/* NOLINTNEXTLINE(misc-no-recursion): what is tried has fewer such letters */
static bool cure_letters(const struct rb_marked *m, const struct rb_reading_rules *rules,
			 struct rb_reading *r)
{
	struct rb_marked with_digits = *m;
	struct rb_reading cured;
	int first = -1;

	if (!may_be_digits(m, rules->kind))
		return false;
	for (int i = m->length - 1; i >= 0; i--)
		if (is_digit_letter(m, i)) {
			with_digits.text[i] = m->text[i] == 'o' ? '0' : '1';
			first = i;
		}
	if (first < 0)
		return false;
	rb_marked_read(&with_digits, rules, &cured);
	if (cured.maybes == 0)
		rb_cure(&with_digits, rules, &cured);
	if (!is_likely(&cured, rules->kind))
		return false;
	*r = (struct rb_reading){ 0 };
	rb_meant_by(r, rules, &cured);
	r->refusal = RB_REFUSE_LETTER;
	r->where = m->at[first];
	return true;
}

/* NOLINTNEXTLINE(misc-no-recursion): as cure_letters() */
void rb_cure(const struct rb_marked *m, const struct rb_reading_rules *rules,
	     struct rb_reading *r)
{
	if ((r->refusal == RB_REFUSE_TEXT || r->refusal == RB_REFUSE_SPACED) &&
	    cure_blanks(m, rules, r))
		return;
	if (r->refusal != RB_REFUSE_TEXT && r->refusal != RB_REFUSE_POINTS &&
	    r->refusal != RB_REFUSE_COMMA)
		return;
	if (rb_sheet_damage(m, rules, r) || cure_letters(m, rules, r))
		return;
	if (cure_edges(m, rules, r))
		return;
	if (r->refusal == RB_REFUSE_COMMA)
		cure_comma(m, rules, r);
}
