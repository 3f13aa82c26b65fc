/* SPDX-License-Identifier: MIT */
/* JSON: commas, indents, escapes, numbers. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "capture.h"
#include "report/json.h"

static struct capture capture;
static struct rb_json json;

static void start(void)
{
	capture_init(&capture);
	rb_json_init(&json, &capture.sink);
}

static void nests(void **state)
{
	(void)state;
	start();
	rb_json_head(&json);
	rb_json_key(&json, "points");
	rb_json_open(&json, '[');
	for (int i = 0; i < 2; i++) {
		rb_json_open_line(&json, '{');
		rb_json_key(&json, "line");
		rb_json_count(&json, 5 + i);
		rb_json_key(&json, "at");
		rb_json_open(&json, '[');
		rb_json_bool(&json, true);
		rb_json_null(&json);
		rb_json_close(&json);
		rb_json_close(&json);
	}
	rb_json_close(&json);
	rb_json_key(&json, "none");
	rb_json_open(&json, '[');
	rb_json_close(&json);
	rb_json_key(&json, "empty");
	rb_json_text(&json, "");
	rb_json_end(&json);
	assert_string_equal(captured(&capture),
			    "{\n"
			    "  \"rodbook\": \"0.1.0\",\n"
			    "  \"schema\": 1,\n"
			    "  \"points\": [\n"
			    "    {\"line\": 5, \"at\": [true, null]},\n"
			    "    {\"line\": 6, \"at\": [true, null]}\n"
			    "  ],\n"
			    "  \"none\": [],\n"
			    "  \"empty\": null\n"
			    "}\n");
}

static void writes_a_bare_array(void **state)
{
	(void)state;
	start();
	rb_json_open(&json, '[');
	rb_json_string(&json, "a");
	rb_json_number(&json, "2.0833");
	rb_json_number(&json, "");
	rb_json_end(&json);
	assert_string_equal(captured(&capture), "[\n  \"a\",\n  2.0833,\n  null\n]\n");
}

static void escapes(void **state)
{
	/* clang-format off */
	static const struct {
		const char *text, *json;
	} cases[] = {
		{ "5'-3\"", "\"5'-3\\\"\"" },
		{ "a\\b\n\r\t\b\f", "\"a\\\\b\\n\\r\\t\\b\\f\"" },
		{ "\x1b[0m\x01\x7f", "\"\\u001b[0m\\u0001\\u007f\"" },
		{ "\xC2\xBD \xE2\x80\xAE", "\"\xC2\xBD \\u202e\"" }, /* turns the writing */
		{ "a\xC2\x9B" "b",         "\"a\\u009bb\"" },         /* drives a terminal */
		{ "\xE2\x80\xA8\xE2\x80\xA9", "\"\\u2028\\u2029\"" },
		{ "\xF3\xA0\x81\x81",      "\"\\udb40\\udc41\"" },    /* a tag, U+E0041 */
		{ "\xF0\x9F\x9A\xB0",      "\"\xF0\x9F\x9A\xB0\"" },
		{ "\xFFz\xE2\x82", "\"\\ufffdz\\ufffd\\ufffd\"" },
		{ "a\xE2\x80\xAE\xC2\x9B", "\"a\\u202e\\u009b\"" },
		{ "\xF3\xA0\x80\x81", "\"\\udb40\\udc01\"" },
		{ "", "\"\"" },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		start();
		rb_json_string(&json, cases[i].text);
		if (!strcmp(captured(&capture), cases[i].json))
			continue;
		print_error("row %zu: got %s, want %s\n", i, capture.text, cases[i].json);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void writes_lengths(void **state)
{
	(void)state;
	start();
	rb_json_open_line(&json, '[');
	rb_json_length(&json, rb_length_of(29943552000), RB_FEET, 4);
	rb_json_length(&json, rb_length_of(100 * RB_FOOT), RB_FEET_INCHES, 4);
	rb_json_length(&json, rb_length_of(1613000000), RB_MILLIMETRES, 0);
	rb_json_length(&json, rb_length_of(-1), RB_METRES, 4);
	rb_json_length(&json, rb_length_none(), RB_FEET, 4);
	rb_json_end(&json);
	assert_string_equal(captured(&capture), "[98.24, 100.0, 1613, 0.0, null]\n");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(nests),
		cmocka_unit_test(writes_a_bare_array),
		cmocka_unit_test(escapes),
		cmocka_unit_test(writes_lengths),
	};

	return cmocka_run_group_tests_name("json", tests, NULL, NULL);
}
