/* SPDX-License-Identifier: MIT */
/* Names of rows that a note keeper sums up in, by their words. */
#include "notes/keeper.h"

#include <stdbool.h>
#include <stddef.h>
#include <string.h>

#include "notes/names.h"
#include "notes/word.h"

/* What a word says of the row that has it in its name; the gravest last. */
enum says {
	ODD,      /* it is not in the table */
	ALONG,    /* nothing: it goes with the others */
	COUNTED,  /* the same, and a figure or a letter may follow it: page 1, loop B */
	OF_POINT, /* that it is a point after all: total station */
	SUM,
	DIFFERENCE,
	MISCLOSURE,
	OTHER
};

/* clang-format off */
static const struct word {
	const char *word;
	enum says says;
} words[] = {
	{ "sum", SUM },              { "sums", SUM },             { "summation", SUM },
	{ "total", SUM },            { "totals", SUM },           { "ttl", SUM },
	{ "subtotal", SUM },         { "subtotals", SUM },        { "carried", SUM },
	{ "brought", SUM },          { "checksum", SUM },
	{ "sumbs", SUM },            { "sumfs", SUM },            { "sumis", SUM },
	{ "totalbs", SUM },          { "totalfs", SUM },          { "totalis", SUM },
	{ "difference", DIFFERENCE }, { "differences", DIFFERENCE }, { "diff", DIFFERENCE },
	{ "misclosure", MISCLOSURE }, { "misclosures", MISCLOSURE }, { "misclose", MISCLOSURE },
	{ "closure", MISCLOSURE },   { "closures", MISCLOSURE },  { "error", MISCLOSURE },
	{ "arithmetic", OTHER },     { "arithmetical", OTHER },   { "arith", OTHER },
	{ "allowable", OTHER },      { "allowed", OTHER },        { "permissible", OTHER },
	{ "station", OF_POINT },      { "stn", OF_POINT },         { "sta", OF_POINT },
	{ "page", COUNTED },         { "pages", COUNTED },        { "pg", COUNTED },
	{ "p", COUNTED },            { "pp", COUNTED },           { "sheet", COUNTED },
	{ "loop", COUNTED },         { "section", COUNTED },      { "run", COUNTED },
	{ "circuit", COUNTED },      { "line", COUNTED },         { "day", COUNTED },
	{ "setup", COUNTED },        { "setups", COUNTED },       { "part", COUNTED },
	{ "bs", ALONG },             { "backsight", ALONG },      { "backsights", ALONG },
	{ "back", ALONG },           { "plus", ALONG },           { "fs", ALONG },
	{ "foresight", ALONG },      { "foresights", ALONG },     { "fore", ALONG },
	{ "minus", ALONG },          { "less", ALONG },           { "is", ALONG },
	{ "ifs", ALONG },            { "ss", ALONG },             { "intermediate", ALONG },
	{ "intermediates", ALONG },  { "sight", ALONG },          { "sights", ALONG },
	{ "shots", ALONG },          { "turning", ALONG },        { "points", ALONG },
	{ "tps", ALONG },            { "hi", ALONG },             { "elev", ALONG },
	{ "elevation", ALONG },      { "elevations", ALONG },     { "rise", ALONG },
	{ "rises", ALONG },          { "fall", ALONG },           { "falls", ALONG },
	{ "distance", ALONG },       { "distances", ALONG },      { "dist", ALONG },
	{ "length", ALONG },         { "lengths", ALONG },        { "reading", ALONG },
	{ "readings", ALONG },       { "rod", ALONG },            { "column", ALONG },
	{ "columns", ALONG },        { "sub", ALONG },             { "mis", ALONG },
	{ "grand", ALONG },          { "running", ALONG },        { "overall", ALONG },
	{ "final", ALONG },
	{ "cumulative", ALONG },     { "forward", ALONG },        { "over", ALONG },
	{ "cf", ALONG },             { "bf", ALONG },             { "fwd", ALONG },
	{ "closing", ALONG },        { "linear", ALONG },         { "survey", ALONG },
	{ "level", ALONG },          { "levels", ALONG },         { "traverse", ALONG },
	{ "check", ALONG },          { "checks", ALONG },         { "date", ALONG },
	{ "so", ALONG },             { "far", ALONG },            { "of", ALONG },
	{ "the", ALONG },            { "for", ALONG },            { "and", ALONG },
	{ "in", ALONG },             { "on", ALONG },             { "to", ALONG },
	{ "from", ALONG },           { "this", ALONG },           { "all", ALONG },
	{ "both", ALONG },           { "no", ALONG },             { "max", ALONG },
	{ "+", ALONG },              { "-", ALONG },
	{ "ft", ALONG },             { "feet", ALONG },
};

/* How the words that say something begin, and the signs of a sum.  Nearly all names of
 * a long book have none of them, and are done with. */
static const char *const beginnings[] = {
	"sum", "tot", "ttl", "clos", "err", "diff", "carr", "brou", "arith", "allow",
	"permis", "misclos", RB_SIGMA, RB_SUM_SIGN,
};
static const char first_letters[] = "stcedbapm\xCE\xE2";
/* clang-format on */

#define COUNT(table) (sizeof(table) / sizeof *(table))

static bool begins(const char *text, const char *word)
{
	while (*word && (*text == *word || (*text | 0x20) == *word))
		text++, word++;
	return !*word;
}

static bool may_be(const char *name)
{
	for (; *name; name++) {
		char first = (unsigned char)*name < 0x80 ? (char)(*name | 0x20) : *name;

		if (!memchr(first_letters, first, sizeof first_letters - 1))
			continue;
		for (size_t i = 0; i < COUNT(beginnings); i++)
			if (begins(name, beginnings[i]))
				return true;
	}
	return false;
}

static enum says said_by(struct rb_word word, bool counted)
{
	if (rb_word_is_sum_sign(word))
		return SUM;
	for (size_t i = 0; i < COUNT(words); i++)
		if (rb_word_is(word, words[i].word))
			return words[i].says;
	return counted && (word.length == 1 || rb_word_is_figures(word)) ? ALONG : ODD;
}

static const enum rb_keeper kinds[] = {
	[SUM] = RB_KEEPERS_SUM,
	[DIFFERENCE] = RB_KEEPERS_DIFFERENCE,
	[MISCLOSURE] = RB_KEEPERS_MISCLOSURE,
	[OTHER] = RB_KEEPERS_OTHER,
};

/* With an odd word among the others it is a point, in doubt where the first or the last
 * word is one of sums: Total 3, Closure pin; but not Pump total B. */
static enum rb_keeper judge(const char *folded)
{
	enum says first = ODD, last = ODD, gravest = ODD;
	bool counted = false, odd = false;
	struct rb_word word;

	for (int count = 0; rb_word_next(&folded, &word); count++) {
		last = said_by(word, counted);
		first = count ? first : last;
		counted |= last == COUNTED;
		odd |= last == ODD;
		if (last == OF_POINT)
			return RB_NOT_KEEPERS;
		gravest = last > gravest ? last : gravest;
	}
	if (gravest < SUM || (odd && first < SUM && last < SUM))
		return RB_NOT_KEEPERS;
	return odd ? RB_KEEPERS_DOUBT : kinds[gravest];
}

#define LONGEST 64 /* a longer text is no name of a sum */

enum rb_keeper rb_keeper_of(const char *name)
{
	char folded[LONGEST + 1];
	size_t length;

	if (!may_be(name))
		return RB_NOT_KEEPERS;
	length = strlen(name);
	if (length > LONGEST)
		return RB_NOT_KEEPERS;
	rb_name_fold(folded, name, length);
	return judge(folded);
}
