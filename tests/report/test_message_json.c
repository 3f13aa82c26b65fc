/* SPDX-License-Identifier: MIT */
/* Messages as JSON. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "capture.h"
#include "report/message_json.h"

static struct capture capture;

static void writes_all_keys(void **state)
{
	struct reduced_book b;
	struct rb_json json;
	const struct rb_findings *list[1];

	(void)state;
	reduce_text(&b, "t.csv",
		    "point,BS,FS,known elevation\nBM \"1\",4.27,,100\nBM \"1\",,4.2.7,\n",
		    false);
	list[0] = &b.findings;
	capture_init(&capture);
	rb_json_init(&json, &capture.sink);
	rb_json_open(&json, '{');
	rb_messages_write_json(&json, list, 1);
	rb_json_end(&json);
	assert_string_equal(
		captured(&capture),
		"{\n"
		"  \"messages\": [\n"
		"    {\"file\": \"t.csv\", \"line\": 3, \"column\": 9, \"cell\": \"C3\", "
		"\"point\": \"BM \\\"1\\\"\", \"code\": \"two-points\", \"severity\": \"error\", "
		"\"text\": \"cell C3 (foresight at BM \\\"1\\\") has two decimal points: "
		"'4.2.7'\", \"hint\": \"leave one of them\", \"more\": 0}\n"
		"  ]\n"
		"}\n");
	rb_arena_free(b.arena);
}

static void writes_null_for_what_is_absent(void **state)
{
	struct reduced_book b;
	struct rb_json json;
	const struct rb_findings *list[1];

	(void)state;
	reduce_text(&b, "t.csv", "point,BS,FS,known elevation\nA,4.27,,100\nA,,4.27,\n",
		    false);
	list[0] = &b.findings;
	capture_init(&capture);
	rb_json_init(&json, &capture.sink);
	rb_json_open(&json, '{');
	rb_messages_write_json(&json, list, 1);
	rb_json_end(&json);
	assert_non_null(
		strstr(captured(&capture),
		       "\"line\": null, \"column\": null, \"cell\": null, \"point\": "
		       "null, \"code\": \"no-tolerance\", \"severity\": \"note\""));
	rb_arena_free(b.arena);
}

static size_t times(const char *text, const char *part)
{
	size_t count = 0;

	while ((text = strstr(text, part))) {
		text += strlen(part);
		count++;
	}
	return count;
}

/* Twenty of a kind are listed; the last of them says how many more there are. */
static void counts_what_is_not_listed(void **state)
{
	char book[2048] = "point,BS,IS,known elevation\nA,4.27,,100\n";
	struct reduced_book b;
	struct rb_json json;
	const struct rb_findings *list[1];

	(void)state;
	for (int i = 0; i < 27; i++)
		strcat(book, "S,,4.2.7,\n");
	reduce_text(&b, "t.csv", book, false);
	list[0] = &b.findings;
	capture_init(&capture);
	rb_json_init(&json, &capture.sink);
	rb_json_open(&json, '{');
	rb_messages_write_json(&json, list, 1);
	rb_json_end(&json);
	assert_int_equal(times(captured(&capture), "\"two-points\""), 20);
	assert_int_equal(times(captured(&capture), "\"more\": 0"), 19);
	assert_non_null(strstr(captured(&capture), "\"more\": 7}\n  ]"));
	rb_arena_free(b.arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(writes_all_keys),
		cmocka_unit_test(writes_null_for_what_is_absent),
		cmocka_unit_test(counts_what_is_not_listed),
	};

	return cmocka_run_group_tests_name("message_json", tests, NULL, NULL);
}
