/* SPDX-License-Identifier: MIT */
/* caution_words.c - what hurts, where, and what to do first. */
#include "report/caution_words.h"

#include "report/section_words.h"

const char *rb_caution_name(enum rb_caution_kind kind)
{
	static const char *const names[] = {
		[RB_CAUTION_LOCATE] = "locate",
		[RB_CAUTION_DEPTH] = "depth",
		[RB_CAUTION_FOOTING] = "footing",
		[RB_CAUTION_ROD] = "rod",
	};

	return names[kind];
}

const char *rb_caution_rule(const struct rb_caution *caution)
{
	return caution->kind == RB_CAUTION_ROD && !*caution->rule ? RB_ROD_RULE
								  : caution->rule;
}

static void say_locate(struct rb_phrase *phrase)
{
	rb_phrase_text(
		phrase,
		"before any digging have buried services located and marked (in the US "
		"call 811, in Canada the provincial one-call centre); near them find "
		"their exact place by safe means, and support them while the trench is "
		"open.");
}

#define TENTH_OF_A_METRE (RB_METRE / 10)

/* A rule's own figure first, whichever unit it is written in, then that of the page. */
static void say_limit(struct rb_phrase *phrase, rb_length limit, struct rb_style style)
{
	bool metres = limit.nm % TENTH_OF_A_METRE == 0;
	bool metric = rb_unit_of_runs(style.unit) == RB_METRES;

	rb_phrase_shown(phrase, limit, metres ? RB_METRES : RB_FEET);
	if (metres == metric)
		return;
	rb_phrase_text(phrase, " (");
	rb_phrase_marked(phrase, limit, style);
	rb_phrase_text(phrase, ")");
}

static void say_depth(struct rb_phrase *phrase, const struct rb_caution *c,
		      struct rb_style style)
{
	rb_phrase_text(phrase,
		       c->at_least ? "the trench is at least " : "the trench is ");
	rb_phrase_marked(phrase, c->value, style);
	rb_phrase_text(phrase, " deep at ");
	rb_phrase_words(phrase, c->where);
	rb_phrase_text(phrase, ": from ");
	say_limit(phrase, c->limit, style);
	rb_phrase_text(phrase, " on the rule asks for ");
	rb_phrase_text(phrase, c->asks);
	rb_phrase_text(phrase,
		       c->at_least ? ". The trench bottom itself is not known." : ".");
}

static void say_footing(struct rb_phrase *phrase, const struct rb_caution *c,
			struct rb_style style)
{
	rb_phrase_text(phrase, "at ");
	rb_phrase_words(phrase, c->where);
	rb_phrase_text(phrase,
		       c->at_least ? " the trench goes at least " : " the trench goes ");
	rb_phrase_marked(phrase, c->value, style);
	rb_phrase_text(phrase, " below the footing, which is ");
	rb_phrase_marked(phrase, c->limit, style);
	rb_phrase_text(phrase,
		       " away: it cuts the 45 degree line below the footing and can "
		       "take its ground away. Move the line or ask an engineer before "
		       "digging.");
}

static void say_rod(struct rb_phrase *phrase, const struct rb_caution *c,
		    struct rb_style style)
{
	rb_phrase_text(phrase, "the grade rod at ");
	rb_phrase_words(phrase, c->where);
	rb_phrase_text(phrase, " is ");
	rb_phrase_marked(phrase, c->value, style);
	rb_phrase_text(phrase,
		       ": over 7 ft the rod is extended. Before it goes up, look up "
		       "for overhead lines, and keep it clear of them.");
}

void rb_caution_words(struct rb_phrase *phrase, const struct rb_caution *caution,
		      struct rb_style style)
{
	switch (caution->kind) {
	case RB_CAUTION_LOCATE:
		say_locate(phrase);
		break;
	case RB_CAUTION_DEPTH:
		say_depth(phrase, caution, style);
		break;
	case RB_CAUTION_FOOTING:
		say_footing(phrase, caution, style);
		break;
	case RB_CAUTION_ROD:
		say_rod(phrase, caution, style);
		break;
	}
}
