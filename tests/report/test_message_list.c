/* SPDX-License-Identifier: MIT */
/* docs/messages.md is what the table of words makes of it.  ACCEPT=yes writes it anew. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>

#include "capture.h"
#include "report/message_list.h"

#define DOCUMENT "docs/messages.md"

static struct capture capture;

static void accept_new(void)
{
	const char *accept = getenv("ACCEPT");
	FILE *file;

	if (!accept || strcmp(accept, "yes") != 0)
		return;
	file = fopen(DOCUMENT, "wb");
	assert_non_null(file);
	assert_int_equal(fwrite(capture.text, 1, capture.used, file), capture.used);
	assert_int_equal(fclose(file), 0);
}

static void document_is_the_table(void **state)
{
	static char document[CAPTURE];
	FILE *file;
	size_t length;

	(void)state;
	capture_init(&capture);
	rb_message_list_write(&capture.sink);
	captured(&capture);
	accept_new();
	file = fopen(DOCUMENT, "rb");
	if (!file)
		fail_msg("%s cannot be read: run the tests from the top of the tree",
			 DOCUMENT);
	length = fread(document, 1, sizeof document - 1, file);
	document[length] = '\0';
	fclose(file);
	assert_string_equal(document, capture.text);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(document_is_the_table),
	};

	return cmocka_run_group_tests_name("message_list", tests, NULL, NULL);
}
