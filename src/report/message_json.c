/* SPDX-License-Identifier: MIT */
/* message_json.c - an object for each finding. */
#include "report/message_json.h"

#include "report/message_order.h"

static void put_place_number(struct rb_json *json, const char *key, uint32_t number)
{
	rb_json_key(json, key);
	if (number)
		rb_json_count(json, number);
	else
		rb_json_null(json);
}

static void put_text(struct rb_json *json, const char *key, const char *text)
{
	rb_json_key(json, key);
	rb_json_text(json, text);
}

/* `more`: how many of its kind were found and are not listed, told with the last of them
 * that is. */
static void put_message(struct rb_json *json, const struct rb_findings *findings,
			const struct rb_finding *finding,
			const struct rb_message *message, size_t more)
{
	rb_json_open_line(json, '{');
	put_text(json, "file", findings->file);
	put_place_number(json, "line", message->line);
	put_place_number(json, "column", message->column);
	put_text(json, "cell", message->cell);
	put_text(json, "point", finding->place.point);
	put_text(json, "code", message->code);
	put_text(json, "severity", rb_severity_name(message->severity));
	put_text(json, "text", message->text);
	put_text(json, "hint", message->hint);
	rb_json_key(json, "more");
	rb_json_count(json, (int64_t)more);
	rb_json_close(json);
}

static bool put_file(struct rb_json *json, const struct rb_findings *findings)
{
	const struct rb_finding **ordered = rb_messages_in_order(findings);
	size_t written[RB_CODES] = { 0 };
	struct rb_cursor cursor = { 0 };
	struct rb_message message;

	if (!ordered)
		return !findings->count;
	for (size_t i = 0; i < findings->count; i++) {
		rb_message_make(&message, findings, ordered[i], &cursor);
		put_message(json, findings, ordered[i], &message,
			    rb_messages_others(findings, ordered[i], written));
	}
	return true;
}

bool rb_messages_write_json(struct rb_json *json,
			    const struct rb_findings *const *findings, size_t files)
{
	bool all = true;

	rb_json_key(json, "messages");
	rb_json_open(json, '[');
	for (size_t i = 0; i < files; i++)
		all &= put_file(json, findings[i]);
	rb_json_close(json);
	return all;
}
