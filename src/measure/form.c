/* SPDX-License-Identifier: MIT */
/* form.c - the table of forms, and the sum of the parts of one. */
#include "measure/form.h"

#include <string.h>

#include "measure/fraction.h"
#include "measure/meant.h"
#include "measure/number.h"
#include "measure/shape.h"
#include "measure/sheet_damage.h"
#include "measure/unit.h"
#include "measure/wide.h"

/* What a form needs besides its marks. */
enum need {
	NOTHING,
	UNIT,     /* bare: the unit of the book gives the meaning */
	DASHES,   /* a book in feet-inches */
	UNMARKED, /* a book in inches */
	NO_POINT, /* never read: figures apart by a blank only */
	NO_SENSE  /* never read: a slip that is easily seen */
};

/* clang-format off */
/*
 * The forms, as shapes (shape.h).  Roles are those of the numbers, in order: f feet; i
 * inches; n, d numerator and denominator of an inch; N, D of a foot; m, c, t metres,
 * centimetres, millimetres; s feet.inches in one number; u of the unit.
 */
static const struct form {
	const char *shape;
	const char *roles;
	enum rb_unit unit; /* in which it is written; there is no centimetre among them */
	enum need need;
} forms[] = {
	{ "N",         "u",    RB_FEET,        UNIT },
	{ "D",         "u",    RB_FEET,        UNIT },
	{ "NFNN/NI",   "find", RB_FEET_INCHES, NOTHING },  /* 5'-3 1/2" */
	{ "NFNI",      "fi",   RB_FEET_INCHES, NOTHING },  /* 5'-3" */
	{ "NFN-N/NI",  "find", RB_FEET_INCHES, NOTHING },  /* 5' 3-1/2" */
	{ "NFN/NI",    "fnd",  RB_FEET_INCHES, NOTHING },  /* 5' 1/2" */
	{ "NFDI",      "fi",   RB_FEET_INCHES, NOTHING },  /* 5' 3.5" */
	{ "NFNN/N",    "find", RB_FEET_INCHES, NOTHING },  /* 5'3 1/2 */
	{ "NFN-N/N",   "find", RB_FEET_INCHES, NOTHING },
	{ "NFN/N",     "fnd",  RB_FEET_INCHES, NOTHING },
	{ "NFN",       "fi",   RB_FEET_INCHES, NOTHING },  /* 5'3 */
	{ "NFD",       "fi",   RB_FEET_INCHES, NOTHING },
	{ "NF",        "f",    RB_FEET,        NOTHING },  /* 5' */
	{ "DF",        "f",    RB_FEET,        NOTHING },  /* 5.29 ft */
	{ "NI",        "i",    RB_INCHES,      NOTHING },  /* 63" */
	{ "DI",        "i",    RB_INCHES,      NOTHING },  /* 63.5 in */
	{ "N/NI",      "nd",   RB_INCHES,      NOTHING },  /* 3/4" */
	{ "NN/NI",     "ind",  RB_INCHES,      NOTHING },  /* 63 1/2" */
	{ "N-N/NI",    "ind",  RB_INCHES,      NOTHING },  /* 63-1/2" */
	{ "N/NF",      "ND",   RB_FEET_INCHES, NOTHING },  /* 1/2 ft */
	{ "NN/NF",     "fND",  RB_FEET_INCHES, NOTHING },  /* 5 1/2 ft */
	{ "N-N/NF",    "fND",  RB_FEET_INCHES, NOTHING },
	{ "NM",        "m",    RB_METRES,      NOTHING },
	{ "DM",        "m",    RB_METRES,      NOTHING },
	{ "NC",        "c",    RB_MILLIMETRES, NOTHING },
	{ "DC",        "c",    RB_MILLIMETRES, NOTHING },
	{ "NT",        "t",    RB_MILLIMETRES, NOTHING },
	{ "DT",        "t",    RB_MILLIMETRES, NOTHING },
	{ "N-N",       "fi",   RB_FEET_INCHES, DASHES },   /* 5-3 */
	{ "N-NI",      "fi",   RB_FEET_INCHES, DASHES },
	{ "N-D",       "fi",   RB_FEET_INCHES, DASHES },   /* 5-3.5 */
	{ "N-DI",      "fi",   RB_FEET_INCHES, DASHES },
	{ "N-NN/N",    "find", RB_FEET_INCHES, DASHES },   /* 5-3 1/2 */
	{ "N-NN/NI",   "find", RB_FEET_INCHES, DASHES },
	{ "N-N-N/N",   "find", RB_FEET_INCHES, DASHES },   /* 5-3-1/2 */
	{ "N-N-N/NI",  "find", RB_FEET_INCHES, DASHES },
	{ "N/N",       "nd",   RB_INCHES,      UNMARKED }, /* 1/2 */
	{ "NN/N",      "ind",  RB_INCHES,      UNMARKED }, /* 5 1/2 */
	{ "N-N/N",     "ind",  RB_INCHES,      UNMARKED }, /* 5-1/2 */
	{ "NN",        "fi",   RB_FEET_INCHES, NO_POINT }, /* 5 29 */
	{ "ND",        "fi",   RB_FEET_INCHES, NO_POINT }, /* 1 234.50 */
	{ "NNI",       "fi",   RB_FEET_INCHES, NO_POINT }, /* 5 3" */
	{ "NNN/N",     "find", RB_FEET_INCHES, NO_POINT },
	{ "NNN/NI",    "find", RB_FEET_INCHES, NO_POINT },
	{ "NFNF",      "fi",   RB_FEET_INCHES, NO_SENSE }, /* 5'-3' */
	{ "NINI",      "fi",   RB_FEET_INCHES, NO_SENSE }, /* 5"-3" */
	{ "NI-NI",     "fi",   RB_FEET_INCHES, NO_SENSE },
	{ "NFNIN/N",   "find", RB_FEET_INCHES, NO_SENSE }, /* 5'-3" 1/2 */
	{ "NFNIN/NI",  "find", RB_FEET_INCHES, NO_SENSE },
	{ "NIN/N",     "ind",  RB_INCHES,      NO_SENSE }, /* 63" 1/2 */
	{ "NIN/NI",    "ind",  RB_INCHES,      NO_SENSE },
	{ "DN/N",      "snd",  RB_FEET_INCHES, NO_SENSE }, /* 5.3 1/2 */
	{ "DN/NI",     "snd",  RB_FEET_INCHES, NO_SENSE },
};

static const struct role {
	char letter;
	int64_t nm;
} roles[] = {
	{ 'f', RB_FOOT }, { 'i', RB_INCH }, { 'n', RB_INCH }, { 'N', RB_FOOT },
	{ 's', RB_FOOT }, { 'm', RB_METRE }, { 'c', 10 * RB_MILLIMETRE }, { 't', RB_MILLIMETRE },
};
/* clang-format on */

/* One text on its way to a reading. */
struct work {
	const struct rb_marked *marked;
	const struct rb_reading_rules *rules;
	struct rb_shape shape;
	int begin;
	bool negative;
	struct rb_reading *out;
};

static void refuse(struct work *w, enum rb_refusal refusal, int at)
{
	w->out->refusal = refusal;
	w->out->where = w->marked->at[at];
}

/* Keep the first thing that is wrong; what it was likely meant to be may follow. */
static void object(struct work *w, enum rb_refusal refusal, int number)
{
	if (w->out->refusal == RB_READ && refusal != RB_READ)
		refuse(w, refusal, w->shape.number_at[number]);
}

/* So many of a unit: the 64ths of a sheet's formula where it is feet; `before` is the
 * length of the parts before it. */
static enum rb_refusal length_of(struct work *w, const struct rb_number *n,
				 int64_t unit_nm, int64_t before, int64_t *nm)
{
	enum rb_refusal refusal;

	if (unit_nm == RB_FOOT && rb_number_sixtyfourth(n, nm)) {
		w->out->sixtyfourth = true;
		return RB_READ;
	}
	refusal = rb_number_length(n, unit_nm, nm);
	if (refusal == RB_REFUSE_FINE)
		rb_meant_rounded(w->out, w->rules, unit_nm, n, before);
	return refusal;
}

/* A bare number in a feet-inches book: nothing but 0, or whole feet of an elevation. */
static bool is_bare_allowed(const struct work *w, const struct rb_number *n)
{
	if (rb_unit_of_bare(w->rules) != RB_FEET_INCHES || (n->digits == 0 && !n->cut))
		return true;
	return w->rules->kind == RB_OF_ELEVATION && w->shape.text[0] == RB_NUMBER_WHOLE;
}

/* 1.204 or 1,204 in a file that may have been written with either sign for the decimals:
 * a metre of rod, or a millimetre?  0.000 is the same both ways. */
static bool may_be_thousands(const struct work *w, const struct rb_number *n)
{
	return w->rules->decimal_comma && rb_unit_of_bare(w->rules) == RB_MILLIMETRES &&
	       n->written == 3 && n->figures > 0 && n->figures <= 3 && n->digits > 0;
}

static void meant_thousands(struct work *w, int64_t nm)
{
	w->out->marked = true;
	w->out->unit = RB_MILLIMETRES;
	rb_meant(w->out, w->rules, 1000 * nm);
	rb_meant(w->out, w->rules, nm);
}

static enum rb_refusal bare_length(struct work *w, int64_t *nm)
{
	const struct rb_number *n = &w->shape.number[0];
	enum rb_unit unit = rb_unit_of_bare(w->rules);
	int64_t limit = w->rules->limit.nm; /* not given: below 0 */
	enum rb_refusal refusal;

	if (w->shape.text[0] == RB_NUMBER_WHOLE && rb_sheet_serial(n->digits, w->rules)) {
		rb_sheet_refuse_serial(n->digits, w->rules, w->out);
		return RB_REFUSE_SERIAL;
	}
	if (!is_bare_allowed(w, n)) {
		rb_meant_bare(w->out, w->rules, n, w->negative);
		return RB_REFUSE_BARE;
	}
	refusal = length_of(w, n, rb_unit_nm(unit), 0, nm);
	if (refusal == RB_READ && may_be_thousands(w, n)) {
		meant_thousands(w, *nm);
		return RB_REFUSE_THOUSANDS;
	}
	if (limit > 0 && w->shape.text[0] == RB_NUMBER_WHOLE &&
	    (refusal == RB_REFUSE_LONG || (refusal == RB_READ && *nm > limit))) {
		rb_meant_point(w->out, w->rules, unit, n);
		return RB_REFUSE_POINT_LOST;
	}
	return refusal;
}

static void read_bare(struct work *w)
{
	int64_t nm = 0;
	enum rb_refusal refusal = bare_length(w, &nm);

	if (refusal != RB_READ) {
		refuse(w, refusal, w->begin);
		return;
	}
	w->out->value = rb_length_of(nm);
	rb_written_in(w->out, rb_unit_of_bare(w->rules), w->shape.number[0].written);
}

static struct rb_fraction fraction_at(const struct work *w, int number)
{
	return (struct rb_fraction){ w->shape.number[number].digits,
				     w->shape.number[number + 1].digits };
}

/* The nearest 64th of an inch, and at least one. */
static int64_t nearest_mark(struct rb_fraction f, int64_t unit_nm)
{
	int64_t marks = rb_wide_divide(rb_wide_mul(f.numerator, unit_nm / RB_SIXTYFOURTH),
				       f.denominator);

	return (marks > 0 ? marks : 1) * RB_SIXTYFOURTH;
}

/* The length of a fraction; `before` is that of the parts before it. */
static int64_t fraction_part(struct work *w, int number, int64_t unit_nm, int64_t before)
{
	struct rb_fraction f = fraction_at(w, number);
	int64_t nm;
	enum rb_refusal refusal = rb_fraction_length(f, unit_nm, &nm);

	object(w, refusal, number);
	if (refusal == RB_READ) {
		w->out->odd_fraction = !rb_fraction_on_tape(f.denominator);
	} else if (refusal == RB_REFUSE_ROUNDED && unit_nm == RB_INCH) {
		rb_length part[RB_MAYBE];
		int parts = rb_fraction_shown_as(f, part, RB_MAYBE);

		for (int i = 0; i < parts; i++)
			rb_meant(w->out, w->rules, before + part[i].nm);
	} else if (refusal == RB_REFUSE_FINE_MARK) {
		rb_meant(w->out, w->rules, before + nearest_mark(f, unit_nm));
	}
	return nm;
}

/* 5.3 for 5'-3": the feet before the point, the inches behind. */
static int64_t split_part(struct work *w, int number)
{
	const struct rb_number *n = &w->shape.number[number];
	int64_t power = rb_ten_to(n->places);

	if (n->digits / power > RB_LENGTH_MAX / RB_FOOT || n->digits % power >= 12) {
		object(w, RB_REFUSE_TEXT, number);
		return 0;
	}
	return n->digits / power * RB_FOOT + n->digits % power * RB_INCH;
}

static int64_t number_part(struct work *w, char role, int number, int64_t unit_nm,
			   int64_t before)
{
	int64_t nm = 0;

	if (role == 's')
		return split_part(w, number);
	object(w, length_of(w, &w->shape.number[number], unit_nm, before, &nm), number);
	if (role == 'i' && number > 0 && nm >= RB_FOOT)
		object(w, RB_REFUSE_INCHES, number);
	return nm;
}

static int64_t role_nm(char letter)
{
	size_t i = 0;

	while (roles[i].letter != letter)
		i++;
	return roles[i].nm;
}

/* Too many inches, or a fraction over one, are lengths all the same; of a part that is
 * refused otherwise there is none, and a sum of the others says nothing. */
static bool adds_up(const struct work *w)
{
	enum rb_refusal refusal = w->out->refusal;

	return refusal == RB_READ || refusal == RB_REFUSE_INCHES ||
	       refusal == RB_REFUSE_FRACTION;
}

/* The sum of the parts; what is wrong with any of them goes into the reading. */
static int64_t sum_of_parts(struct work *w, const struct form *form)
{
	int64_t nm = 0;

	for (int i = 0; form->roles[i] != '\0' && adds_up(w); i++) {
		char role = form->roles[i];
		bool fraction = role == 'n' || role == 'N';

		if (fraction)
			nm += fraction_part(w, i, role_nm(role), nm);
		else
			nm += number_part(w, role, i, role_nm(role), nm);
		i += fraction; /* its denominator is not a part */
	}
	if (nm > RB_LENGTH_MAX)
		object(w, RB_REFUSE_LONG, 0);
	return nm;
}

/* In which parts of an inch is it written: 8ths in 4/8?  What no inch is parted in is
 * reduced, and so is the fraction of a foot: 5 1/4 ft leaves none, 3 inches. */
static int denominator_of(const struct work *w, const struct form *form, int64_t nm)
{
	struct rb_fraction part = { nm % RB_INCH, RB_INCH };

	if (strpbrk(form->roles, "nN") == NULL)
		return 1;
	if (strchr(form->roles, 'n') != NULL) {
		part = fraction_at(w, w->shape.numbers - 2);
		if (RB_INCH % part.denominator == 0)
			return (int)part.denominator;
	}
	return (int)rb_fraction_reduced(part);
}

static void accept(struct work *w, const struct form *form, int64_t nm)
{
	int decimals = w->shape.number[w->shape.numbers - 1].written;
	enum rb_unit unit = form->unit;

	/* 5' is whole feet in either notation. */
	if (w->rules->unit == RB_FEET_INCHES && strcmp(form->shape, "NF") == 0)
		unit = RB_FEET_INCHES;
	if (form->roles[0] == 'c' && decimals > 0)
		decimals--;
	w->out->value = rb_length_of(nm);
	rb_written_in(w->out, unit, decimals);
	w->out->denominator = denominator_of(w, form, nm);
}

static bool has_need(const struct work *w, const struct form *form)
{
	switch (form->need) {
	case DASHES:
		return w->rules->unit == RB_FEET_INCHES;
	case UNMARKED:
		return rb_unit_of_bare(w->rules) == RB_INCHES;
	case NO_POINT:
	case NO_SENSE:
		return false;
	default:
		return true;
	}
}

/* The sum of inches in which the whole ones are feet. */
static int64_t dashed_feet(const struct work *w, int64_t nm)
{
	return nm + w->shape.number[0].digits * (RB_FOOT - RB_INCH);
}

/* Refuse a form whose sum may be right, for want of what it needs. */
static void refuse_need(struct work *w, const struct form *form, int64_t nm)
{
	static const enum rb_refusal refusals[] = {
		[DASHES] = RB_REFUSE_DASHED,
		[UNMARKED] = RB_REFUSE_UNMARKED,
		[NO_POINT] = RB_REFUSE_SPACED,
		[NO_SENSE] = RB_REFUSE_TEXT,
	};
	bool mixed = form->roles[0] == 'i';

	if (form->unit == RB_FEET_INCHES)
		w->out->notation = RB_AS_FEET_INCHES;
	/* Where feet and inches are written with a dash, 5-1/2 is rather 5'-0 1/2". */
	if (form->need == UNMARKED && w->rules->unit == RB_FEET_INCHES &&
	    strchr(form->shape, '-'))
		rb_meant(w->out, w->rules, dashed_feet(w, nm));
	if (form->need == UNMARKED)
		rb_meant_unmarked(w->out, w->rules, mixed ? w->shape.number[0].digits : 0,
				  fraction_at(w, mixed));
	else if (w->out->refusal == RB_READ)
		rb_meant(w->out, w->rules, nm);
	refuse(w, refusals[form->need], w->begin);
}

/* Inches over a foot and fractions over one still add up; a bare 5/3 is rather a pair. */
static void meant_by_sum(struct work *w, const struct form *form, int64_t nm)
{
	enum rb_refusal refusal = w->out->refusal;

	if (refusal == RB_REFUSE_FRACTION && strcmp(form->shape, "N/N") == 0)
		rb_meant_pair(w->out, w->rules, w->shape.number[0].digits,
			      w->shape.number[1].digits);
	else if (adds_up(w))
		rb_meant(w->out, w->rules, nm);
}

static void read_form(struct work *w, const struct form *form)
{
	int64_t nm;

	if (form->need == UNIT) {
		read_bare(w);
		return;
	}
	if (form->need == NO_POINT && w->shape.length == 2) {
		rb_meant_spaced(w->out, w->rules, &w->shape.number[0],
				&w->shape.number[1]);
		refuse(w, RB_REFUSE_SPACED, w->begin);
		return;
	}
	nm = sum_of_parts(w, form);
	/* A wrong fraction is wrong whatever its unit is. */
	if (!has_need(w, form) &&
	    (form->need != UNMARKED || w->out->refusal == RB_READ)) {
		refuse_need(w, form, nm);
		return;
	}
	if (w->out->refusal == RB_READ)
		accept(w, form, nm);
	else
		meant_by_sum(w, form, nm);
}

/* The token that no form has: the one with a letter of its own, or the first. */
static void refuse_shape(struct work *w)
{
	/* clang-format off */
	static const struct odd { char letter[2]; enum rb_refusal refusal; } odds[] = {
		{ "P", RB_REFUSE_POINTS }, { "K", RB_REFUSE_COMMA },
		{ "?", RB_REFUSE_TEXT },
	};
	/* clang-format on */

	for (size_t i = 0; i < sizeof odds / sizeof *odds; i++) {
		size_t token = strcspn(w->shape.text, odds[i].letter);

		if (w->shape.text[token] != '\0') {
			refuse(w, odds[i].refusal, w->shape.at[token]);
			return;
		}
	}
	refuse(w, RB_REFUSE_TEXT, w->begin);
}

void rb_form_read(const struct rb_marked *marked, int begin, int end, bool negative,
		  const struct rb_reading_rules *rules, struct rb_reading *out)
{
	struct work w = { .marked = marked,
			  .rules = rules,
			  .begin = begin,
			  .negative = negative,
			  .out = out };

	rb_shape_read(marked, begin, end, rules, &w.shape);
	for (size_t i = 0; i < sizeof forms / sizeof *forms; i++)
		if (strcmp(forms[i].shape, w.shape.text) == 0) {
			read_form(&w, &forms[i]);
			return;
		}
	refuse_shape(&w);
}
