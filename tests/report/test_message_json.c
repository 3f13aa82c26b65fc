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
		"'4.2.7'\", \"hint\": \"leave one of them\"}\n"
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

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(writes_all_keys),
		cmocka_unit_test(writes_null_for_what_is_absent),
	};

	return cmocka_run_group_tests_name("message_json", tests, NULL, NULL);
}
