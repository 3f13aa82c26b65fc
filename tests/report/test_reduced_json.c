/* SPDX-License-Identifier: MIT */
/* The reduced book as JSON: the keys are a promise. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "capture.h"
#include "report/reduced_json.h"

static struct capture capture;

static const char *json_of(const char *book)
{
	struct reduced_book b;

	reduce_text(&b, "books/t.csv", book, false);
	capture_init(&capture);
	if (b.reduction.adjusted)
		rb_reduced_write_json(&capture.sink, &b.reduction, &b.findings);
	rb_arena_free(b.arena);
	return captured(&capture);
}

static void writes_the_whole_book(void **state)
{
	(void)state;
	assert_string_equal(
		json_of("tolerance,0.02\n"
			"point,bs,is,fs,bm,dip,ch,rod on,bs dist,fs dist,remarks\n"
			"A,4.27,,,100,,,,50,,\n"
			"MH,,6.48,,,2.50,0+50,rim,,,lid\n"
			"B,,,6.03,,,,,,60,nail\n"
			"B,5.11,,,,,,,60,,in maple\n"
			"A,,,3.34,,,,,,40,\n"),
		"{\n"
		"  \"rodbook\": \"0.1.0\",\n"
		"  \"schema\": 1,\n"
		"  \"book\": \"t.csv\",\n"
		"  \"unit\": \"ft\",\n"
		"  \"tolerance_overridden\": false,\n"
		"  \"adjust_overridden\": false,\n"
		"  \"adjust_anyway\": false,\n"
		"  \"points\": [\n"
		"    {\"line\": 3, \"backsight_line\": 3, \"point\": \"A\", \"kind\": \"benchmark\", "
		"\"known_elevation\": 100.0, \"backsight\": 4.27, \"height_of_instrument\": 104.27, "
		"\"intermediate\": null, \"foresight\": null, \"elevation\": 100.0, \"correction\": "
		"0.0, \"adjusted\": 100.0, \"below\": null, \"chainage\": null, \"rod_on\": null, "
		"\"remarks\": null},\n"
		"    {\"line\": 4, \"backsight_line\": null, \"point\": \"MH\", \"kind\": "
		"\"intermediate\", \"known_elevation\": null, \"backsight\": null, "
		"\"height_of_instrument\": null, \"intermediate\": 6.48, \"foresight\": null, "
		"\"elevation\": 97.79, \"correction\": -0.005, \"adjusted\": 97.785, \"below\": "
		"95.285, \"chainage\": 50.0, \"rod_on\": \"rim\", \"remarks\": \"lid\"},\n"
		"    {\"line\": 5, \"backsight_line\": 6, \"point\": \"B\", \"kind\": \"turning "
		"point\", \"known_elevation\": null, \"backsight\": 5.11, \"height_of_instrument\": "
		"103.35, \"intermediate\": null, \"foresight\": 6.03, \"elevation\": 98.24, "
		"\"correction\": -0.005, \"adjusted\": 98.235, \"below\": null, \"chainage\": null, "
		"\"rod_on\": null, \"remarks\": \"nail; in maple\"},\n"
		"    {\"line\": 7, \"backsight_line\": null, \"point\": \"A\", \"kind\": "
		"\"benchmark\", \"known_elevation\": 100.0, \"backsight\": null, "
		"\"height_of_instrument\": null, \"intermediate\": null, \"foresight\": 3.34, "
		"\"elevation\": 100.01, \"correction\": -0.01, \"adjusted\": 100.0, \"below\": null, "
		"\"chainage\": null, \"rod_on\": null, \"remarks\": null}\n"
		"  ],\n"
		"  \"sections\": [\n"
		"    {\n"
		"      \"from\": \"A\",\n"
		"      \"to\": \"A\",\n"
		"      \"setups\": 2,\n"
		"      \"length\": 210.0,\n"
		"      \"sum_backsight\": 9.38,\n"
		"      \"sum_foresight\": 9.37,\n"
		"      \"misclosure\": 0.01,\n"
		"      \"tolerance\": 0.02,\n"
		"      \"closed\": true,\n"
		"      \"within_tolerance\": true,\n"
		"      \"checks\": [],\n"
		"      \"suspects\": []\n"
		"    }\n"
		"  ],\n"
		"  \"spurs\": [],\n"
		"  \"messages\": []\n"
		"}\n");
}

/* Parts that a result holds, by the book. */
static const struct part_case {
	const char *name, *book;
	const char *parts[6];
} part_cases[] = {
	/* clang-format off */
	{ "a check, an open section, nothing judged",
	  "point,bs,is,fs,bm\nA,4.27,,,100\nK,,3.30,,101\nB,,,4,\n",
	  { "\"kind\": \"check\"", "\"kind\": \"end\"", "\"misclosure\": null", "\"tolerance\": null",
	    "\"closed\": false,\n      \"within_tolerance\": null,\n      \"checks\": [\n"
	    "        {\"line\": 3, \"point\": \"K\", \"difference\": -0.03}\n      ]", NULL } },
	{ "closed, and not judged", "point,bs,fs,bm\nA,4.27,,100\nA,,4.28,\n",
	  { "\"misclosure\": -0.01", "\"closed\": true,\n      \"within_tolerance\": null",
	    "\"code\": \"no-tolerance\"", "\"adjusted\": null", NULL } },
	{ "suspects", "tolerance,0.02\npoint,bs,fs,bm\nA,4.27,,100\nB,5.11,6.30,\nA,,3.35,\n",
	  { "\"within_tolerance\": false",
	    "{\"line\": 4, \"column\": \"foresight\", \"reading\": 6.3, \"maybe\": 6.03, \"slip\": "
	    "\"digits exchanged\", \"left\": 0.0}",
	    NULL } },
	{ "a known elevation under suspicion",
	  "tolerance,0.02\npoint,bs,fs,bm\nA,5.30,,100\nC,,0.27,105.30\n",
	  { "{\"line\": 4, \"column\": \"known_elevation\", \"reading\": 105.3, \"maybe\": 105.03, "
	    "\"slip\": \"known elevation\", \"left\": 0.0}", NULL } },
	{ "feet-inches are feet", "unit,ft-in\npoint,bs,fs,bm\nA,4'-3\",,100'\nA,,4'-3 1/2\",\n",
	  { "\"unit\": \"ft\"", "\"backsight\": 4.25", "\"foresight\": 4.2917", NULL } },
	{ "millimetres", "unit,mm\npoint,bs,fs,fs dist,bm\nA,1613,,,10 m\nA,,1614,20,\n",
	  { "\"unit\": \"mm\"", "\"backsight\": 1613.0", "\"known_elevation\": 10000.0", NULL } },
	/* clang-format on */
};

static void holds_the_parts(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof part_cases / sizeof *part_cases; i++) {
		const char *json = json_of(part_cases[i].book);

		for (size_t p = 0; part_cases[i].parts[p]; p++) {
			if (strstr(json, part_cases[i].parts[p]))
				continue;
			print_error("%s: no %s in\n%s\n", part_cases[i].name,
				    part_cases[i].parts[p], json);
			wrong++;
		}
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(writes_the_whole_book),
		cmocka_unit_test(holds_the_parts),
	};

	return cmocka_run_group_tests_name("reduced_json", tests, NULL, NULL);
}
