/* SPDX-License-Identifier: MIT */
/* reading.c - one length from one cell: signs, then a form, then what went wrong. */
#include "measure/reading.h"

#include <string.h>

#include "measure/cure.h"
#include "measure/form.h"
#include "measure/meant.h"
#include "measure/sheet_damage.h"
#include "measure/unit.h"

/* clang-format off */
/* Nanometres of a step of so many decimals, where that is a whole number; 0: the long
 * way round, which a bare number in feet-inches always takes. */
static const int64_t steps[][10] = {
	[RB_FEET]        = { 304800000, 30480000, 3048000, 304800, 30480, 3048 },
	[RB_INCHES]      = { 25400000, 2540000, 254000, 25400, 2540, 254 },
	[RB_FEET_INCHES] = { 0 },
	[RB_METRES]      = { 1000000000, 100000000, 10000000, 1000000, 100000, 10000,
			     1000, 100, 10, 1 },
	[RB_MILLIMETRES] = { 1000000, 100000, 10000, 1000, 100, 10, 1 },
};

/* Words for an inverted rod, the longer ones first. */
static const char *const inverted_words[] = {
	"(inverted)", "(inv.)", "(inv)", "inverted", "inv.", "inv",
};
/* clang-format on */

static bool is_never_negative(enum rb_reading_kind kind)
{
	return kind == RB_OF_RUN || kind == RB_OF_DROP;
}

/* Figures and at most one point, as many as cannot overflow a product with a step. */
struct plain {
	uint64_t digits;
	int figures, places;
	bool point;
};

static bool scan_plain(const char *text, size_t length, struct plain *p)
{
	uint64_t digits = 0;
	size_t point = length;

	for (size_t i = 0; i < length; i++) {
		unsigned digit = (unsigned char)text[i] - (unsigned)'0';

		if (digit <= 9)
			digits = digits * 10 + digit;
		else if (text[i] == '.' && point == length)
			point = i;
		else
			return false;
	}
	p->point = point < length;
	p->digits = digits;
	p->figures = (int)(length - p->point);
	p->places = p->point ? (int)(length - point - 1) : 0;
	return p->figures > 0 && p->figures <= 10;
}

bool rb_reading_plain(const char *text, size_t length,
		      const struct rb_reading_rules *rules, struct rb_reading *out)
{
	enum rb_unit unit = rb_unit_of_bare(rules);
	uint64_t nm,
		most = rules->limit.nm > 0 ? (uint64_t)rules->limit.nm : RB_LENGTH_MAX;
	bool minus;
	struct plain p;

	if (length == 0 || length > 12)
		return false;
	minus = text[0] == '-';
	if (!scan_plain(text + minus, length - minus, &p) || p.places > 9 ||
	    steps[unit][p.places] == 0 || (minus && is_never_negative(rules->kind)))
		return false;
	if (rules->decimal_comma && unit == RB_MILLIMETRES && p.places == 3)
		return false; /* thousands? */
	if (!p.point && rb_sheet_serial((int64_t)p.digits, rules))
		return false;
	nm = p.digits * (uint64_t)steps[unit][p.places];
	if (nm > most || nm > (uint64_t)RB_LENGTH_MAX)
		return false;
	*out = (struct rb_reading){ .value = { minus ? -(int64_t)nm : (int64_t)nm } };
	rb_written_in(out, unit, p.places);
	out->inverted = minus && nm > 0 && rules->kind == RB_OF_ROD;
	return true;
}

/* A marked text with its signs taken off, and how many there were of each. */
struct signs {
	int begin, end;
	int minus, plus, brackets, words;
};

static bool is_letter(char c)
{
	return c >= 'a' && c <= 'z';
}

static bool strip_word(const struct rb_marked *m, struct signs *s)
{
	for (size_t i = 0; i < sizeof inverted_words / sizeof *inverted_words; i++) {
		const char *word = inverted_words[i];
		int length = (int)strlen(word), rest = s->end - s->begin - length;
		const char *first = m->text + s->begin, *last = m->text + s->end - length;

		if (rest < 0)
			continue;
		if (memcmp(first, word, (size_t)length) == 0 &&
		    !is_letter(first[length])) {
			s->begin += length;
			return true;
		}
		if (memcmp(last, word, (size_t)length) == 0 &&
		    (rest == 0 || !is_letter(last[-1]))) {
			s->end -= length;
			return true;
		}
	}
	return false;
}

static void strip_blanks(const struct rb_marked *m, struct signs *s)
{
	while (s->begin < s->end && m->text[s->begin] == ' ')
		s->begin++;
	while (s->begin < s->end && m->text[s->end - 1] == ' ')
		s->end--;
}

/* Take off one sign; false if there is none left. */
static bool strip_sign(const struct rb_marked *m, struct signs *s)
{
	char first = m->text[s->begin];

	if (s->begin == s->end)
		return false;
	if (strip_word(m, s)) {
		s->words++;
	} else if (first == '-' || first == '+') {
		s->begin++;
		s->minus += first == '-';
		s->plus += first == '+';
	} else if (first == '(' && m->text[s->end - 1] == ')') {
		s->begin++;
		s->end--;
		s->brackets++;
	} else {
		return false;
	}
	strip_blanks(m, s);
	return true;
}

/* May the signs that were taken off stand on a reading of this kind? */
static enum rb_refusal judge_signs(const struct signs *s, enum rb_reading_kind kind)
{
	if (kind != RB_OF_ROD && s->brackets + s->words > 0)
		return RB_REFUSE_INVERTED;
	if (s->minus + s->plus + s->brackets + s->words > 1)
		return RB_REFUSE_SIGNS;
	return is_never_negative(kind) && s->minus > 0 ? RB_REFUSE_NEGATIVE : RB_READ;
}

/* A word without a minus lowers nothing but a rod; a run or a drop is never below zero.
 */
static bool is_negative(const struct signs *s, enum rb_reading_kind kind)
{
	if (is_never_negative(kind))
		return false;
	return s->minus + s->brackets > 0 || (s->words > 0 && kind == RB_OF_ROD);
}

static void negate(struct rb_reading *r)
{
	r->value = rb_length_negate(r->value);
	for (int i = 0; i < r->maybes; i++)
		r->maybe[i] = rb_length_negate(r->maybe[i]);
}

static void refuse(struct rb_reading *r, enum rb_refusal refusal, size_t where)
{
	r->value = rb_length_of(0);
	r->odd_fraction = false;
	r->sixtyfourth = false;
	r->inverted = false;
	r->refusal = refusal;
	r->where = where;
}

void rb_marked_read(const struct rb_marked *m, const struct rb_reading_rules *rules,
		    struct rb_reading *out)
{
	struct signs s = { .end = m->length };
	bool negative;
	enum rb_refusal refusal;

	*out = (struct rb_reading){ 0 };
	while (strip_sign(m, &s))
		;
	negative = is_negative(&s, rules->kind);
	rb_form_read(m, s.begin, s.end, negative, rules, out);
	if (negative)
		negate(out);
	if (out->refusal != RB_READ) {
		refuse(out, out->refusal, out->where);
		return;
	}
	refusal = judge_signs(&s, rules->kind);
	if (refusal != RB_READ) {
		rb_meant(out, rules, out->value.nm);
		refuse(out, refusal, m->at[0]);
	}
	out->inverted = negative && rules->kind == RB_OF_ROD && out->value.nm < 0;
}

/* NOLINTNEXTLINE(misc-no-recursion): the text undone is shorter than what was read */
static void refuse_mojibake(const char *text, size_t length,
			    const struct rb_reading_rules *rules, struct rb_reading *r)
{
	char bytes[4 * RB_MARKED];
	size_t size = rb_mojibake_undo(text, length, bytes, sizeof bytes);

	*r = (struct rb_reading){ 0 };
	if (size > 0 && size < length) {
		struct rb_reading cured = rb_reading_parse(bytes, size, rules);

		rb_meant_by(r, rules, &cured);
	}
	refuse(r, RB_REFUSE_MOJIBAKE, 0);
}

/* '1.5' with both: an apostrophe that a sheet kept before 1.5 feet, or 1.5 in quotes?
 * The same in a book in feet; nothing is guessed in others. */
static void doubt_apostrophe(const struct rb_marked *m,
			     const struct rb_reading_rules *rules, struct rb_reading *r)
{
	bool one_mark = strchr(m->text, '\'') == m->text + m->length - 1;
	struct rb_marked unmarked = *m;
	rb_length length;

	if (!m->apostrophe || !one_mark || rb_unit_of_bare(rules) == RB_FEET)
		return;
	length = r->value;
	unmarked.text[--unmarked.length] = '\0';
	unmarked.apostrophe = false;
	rb_marked_read(&unmarked, rules, r);
	if (r->refusal == RB_READ)
		rb_meant(r, rules, r->value.nm);
	rb_meant(r, rules, length.nm);
	refuse(r, RB_REFUSE_TEXT, m->at[m->length - 1]);
}

/* NOLINTNEXTLINE(misc-no-recursion): as refuse_mojibake() */
static void read_written(const char *text, size_t length,
			 const struct rb_reading_rules *rules, struct rb_reading *r)
{
	struct rb_marked m;

	*r = (struct rb_reading){ 0 };
	if (!rb_mark(text, length, &m)) {
		r->refusal = RB_REFUSE_TEXT;
		return;
	}
	if (m.mojibake) {
		refuse_mojibake(text, length, rules, r);
		return;
	}
	if (m.length == 0) {
		r->refusal = RB_REFUSE_EMPTY;
		return;
	}
	rb_marked_read(&m, rules, r);
	if (r->refusal == RB_READ)
		doubt_apostrophe(&m, rules, r);
	if (r->maybes == 0)
		rb_cure(&m, rules, r);
}

/* NOLINTNEXTLINE(misc-no-recursion): as refuse_mojibake() */
struct rb_reading rb_reading_parse(const char *text, size_t length,
				   const struct rb_reading_rules *rules)
{
	struct rb_reading r;

	if (!rb_reading_plain(text, length, rules, &r))
		read_written(text, length, rules, &r);
	return r;
}
