/* SPDX-License-Identifier: MIT */
/* The same point in several books. */
#include "records.h"

#define HEAD                                                                             \
	"point,elevation,adjusted,unit,date,project,book,version,section,closed,"        \
	"within_tolerance,kind,known_elevation,replaces,sha256,rod_on\n"

/* A benchmark, a point seen from it, and back: elevation of the point 10 + 4 - sight. */
#define SEEN(point, sight) "point,bm,bs,is,fs\nA,10,4,,\n" point ",,," sight ",\nA,,,,4\n"
#define ON(point, sight, place)                                                          \
	"point,bm,bs,is,fs,rod on\nA,10,4,,,\n" point ",,," sight ",," place "\nA,,,,4,\n"
#define KNOWN(unit, known)  "unit," unit "\npoint,bm,bs,fs\nA," known ",1 m,\nA,,,1 m\n"
#define DATUM(datum, known) "datum," datum "\npoint,bm,bs,fs\nA," known ",1,\nA,,,1\n"

/* clang-format off */
static const struct {
	const char *name, *old;
	struct book_text book[4];
	const char *want; /* POINT: BOOK EARLIER > BOOK LATER [same|DIFFERS] [datum] */
} cases[] = {
	{ "one book", NULL, { { "a", KNOWN("ft", "10"), NULL } }, "" },
	{ "a benchmark that agrees", NULL,
	  { { "a", KNOWN("ft", "10"), NULL }, { "b", KNOWN("ft", "10.00"), NULL } },
	  "A: a 10.0000 > b 10.0000 same\n" },
	{ "a benchmark a hundredth off", NULL,
	  { { "a", KNOWN("ft", "10.00"), NULL }, { "b", KNOWN("ft", "10.01"), NULL } },
	  "A: a 10.0000 > b 10.0100 DIFFERS\nb 3 benchmark-differs\n" },
	{ "each book against the first that knows it", NULL,
	  { { "a", KNOWN("ft", "10.00"), NULL }, { "b", KNOWN("ft", "10.00"), NULL },
	    { "c", KNOWN("ft", "10.02"), NULL } },
	  "A: a 10.0000 > b 10.0000 same\nA: a 10.0000 > c 10.0200 DIFFERS\n"
	  "c 3 benchmark-differs\n" },
	{ "converted to metres, to the millimetre", NULL,
	  { { "a", KNOWN("ft", "97.97"), NULL }, { "b", KNOWN("m", "29.861"), NULL } },
	  "A: a 97.9700 > b 97.9692 same\n" },
	{ "two millimetres off", NULL,
	  { { "a", KNOWN("ft", "97.97"), NULL }, { "b", KNOWN("m", "29.863"), NULL } },
	  "A: a 97.9700 > b 97.9757 DIFFERS\nb 3 benchmark-differs\n" },
	{ "in metres both: a millimetre is a difference", NULL,
	  { { "a", KNOWN("m", "29.861"), NULL }, { "b", KNOWN("m", "29.862"), NULL } },
	  "A: a 97.9692 > b 97.9724 DIFFERS\nb 3 benchmark-differs\n" },
	{ "in feet and inches", NULL,
	  { { "a", KNOWN("ft", "97.97"), NULL }, { "b", KNOWN("ft-in", "97'-11 5/8\""), NULL } },
	  "A: a 97.9700 > b 97.9688 same\n" },
	{ "an eighth off", NULL,
	  { { "a", KNOWN("ft", "97.97"), NULL }, { "b", KNOWN("ft-in", "97'-11 3/4\""), NULL } },
	  "A: a 97.9700 > b 97.9792 DIFFERS\nb 3 benchmark-differs\n" },
	{ "declared, and nothing sighted on it", NULL,
	  { { "a", "point,bm,bs,fs\nZ,50,,\nA,10,1,\nA,,,1\n", NULL },
	    { "b", "point,bm,bs,fs\nZ,51,,\nB,10,1,\nB,,,1\n", NULL } },
	  "Z: a 50.0000 > b 51.0000 DIFFERS\nb 2 benchmark-differs\n" },
	{ "the same words for the datum, and others", NULL,
	  { { "a", DATUM("site", "10"), NULL }, { "b", DATUM("Site ", "10"), NULL },
	    { "c", DATUM("city", "20"), NULL } },
	  "A: a 10.0000 > b 10.0000 same\nA: a 10.0000 > c 20.0000 DIFFERS datum\n"
	  "c 3 benchmark-differs\n" },
	{ "a point, by its name", NULL,
	  { { "a", SEEN("MH-1", "3"), NULL }, { "b", SEEN("mh-1 ", "3.25"), NULL } },
	  "A: a 10.0000 > b 10.0000 same\nmh-1: a 11.0000 > b 10.7500\n" },
	{ "ground, and points without a name, lie elsewhere", NULL,
	  { { "a", SEEN("ground", "3"), NULL }, { "b", SEEN("ground", "3.25"), NULL },
	    { "c", SEEN("", "3"), NULL } },
	  "A: a 10.0000 > b 10.0000 same\nA: a 10.0000 > c 10.0000 same\n" },
	{ "turning points have a name for the day", NULL,
	  { { "a", "point,bm,bs,fs\nA,10,4,\nTP,,3,2\nA,,,5\n", NULL },
	    { "b", "point,bm,bs,fs\nA,10,4,\nTP,,3,1\nA,,,6\n", NULL } },
	  "A: a 10.0000 > b 10.0000 same\n" },
	{ "with the rod on something else", NULL,
	  { { "a", ON("M", "3", "rim"), NULL }, { "b", ON("M", "8", "invert"), NULL },
	    { "c", ON("M", "8.1", "invert"), NULL } },
	  "A: a 10.0000 > b 10.0000 same\nA: a 10.0000 > c 10.0000 same\n"
	  "M: b 6.0000 > c 5.9000\n" },
	{ "where it does not say, with any", NULL,
	  { { "a", SEEN("M", "3"), NULL }, { "b", ON("M", "8", "invert"), NULL } },
	  "A: a 10.0000 > b 10.0000 same\nM: a 11.0000 > b 6.0000\n" },
	{ "twice in a book: the first time", NULL,
	  { { "a", SEEN("M", "3"), NULL },
	    { "b", "point,bm,bs,is,fs\nA,10,4,,\nM,,,3.1,\nM,,,3.2,\nA,,,,4\n", NULL } },
	  "A: a 10.0000 > b 10.0000 same\nM: a 11.0000 > b 10.9000\n" },
	{ "levelled in one book, known in the next", NULL,
	  { { "a", SEEN("M", "3"), NULL }, { "b", "point,bm,bs,fs\nM,11.02,4,\nM,,,4\n", NULL } },
	  "M: a 11.0000 > b 11.0200\n" },
	{ "a version that was replaced does not count", NULL,
	  { { "x/a", KNOWN("ft", "10"), NULL }, { "y/a", KNOWN("ft", "11"), NULL },
	    { "b", KNOWN("ft", "11"), NULL } },
	  "A: a 11.0000 > b 11.0000 same\n" },
	{ "against what was recorded before",
	  HEAD "A,10,,ft,,,o,1,,,,benchmark,10,,abc,\nM,11,11.01,ft,,,o,1,,,,intermediate,,,abc,\n",
	  { { "a", SEEN("M", "3"), NULL } },
	  "A: o 10.0000 > a 10.0000 same\nM: o 11.0100 > a 11.0000\n" },
	{ "a mark in what was recorded before",
	  HEAD "A,10,,ft,,,o,1,,,,benchmark,29.861 m,,abc,\n",
	  { { "a", KNOWN("ft", "97.97"), NULL } },
	  "A: o 97.9692 > a 97.9700 same\n" },
	{ "old books are not told of again",
	  HEAD "A,10,,ft,,,o,1,,,,benchmark,10,,abc,\nA,11,,ft,,,p,1,,,,benchmark,11,,def,\n",
	  { { "a", "point,bm,bs,fs\nB,1,4,\nB,,,4\n", NULL } },
	  "" },
};
/* clang-format on */

static void tell_pairs(struct told *out, const struct records *r)
{
	for (uint32_t i = 0; i < r->several->pairs; i++) {
		const struct rb_pair *pair = &r->several->pair[i];

		tell(out, "%s: %s", pair->later.point,
		     r->ledger->book[pair->earlier.book].name);
		tell_length(out, " ", pair->earlier.elevation);
		tell(out, " > %s", r->ledger->book[pair->later.book].name);
		tell_length(out, " ", pair->later.elevation);
		if (pair->earlier.known && pair->later.known)
			tell(out, pair->agrees ? " same" : " DIFFERS");
		tell(out, "%s\n", pair->other_datum ? " datum" : "");
	}
	for (size_t i = 0; i < r->books; i++)
		for (size_t k = 0; k < r->of_book[i].count; k++)
			if (r->of_book[i].item[k]->code == RB_CODE_BENCHMARK_DIFFERS)
				tell(out, "%s %u benchmark-differs\n", r->of_book[i].file,
				     r->of_book[i].item[k]->place.line);
}

static void cases_hold(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct told out = { .used = 0 };
		struct records r;

		records_of(&r, cases[i].old, cases[i].book);
		if (r.several)
			tell_pairs(&out, &r);
		if (!r.several || strcmp(out.text, cases[i].want) != 0) {
			print_error("%s: got\n%s", cases[i].name, out.text);
			wrong++;
		}
		rb_arena_free(r.arena);
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(cases_hold),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
