/* SPDX-License-Identifier: MIT */
/* markup.h - is a text well-formed markup, and what words stand in it. */
#ifndef RB_TESTS_REPORT_MARKUP_H
#define RB_TESTS_REPORT_MARKUP_H

#include <stdbool.h>
#include <stdio.h>
#include <string.h>

#define MARKUP_DEPTH 64
#define MARKUP_NAME  32

/* Elements that have no end. */
static inline bool markup_is_void(const char *name)
{
	return !strcmp(name, "meta") || !strcmp(name, "br");
}

/* "&amp;" or "&#39;": one of ours. */
static inline size_t markup_entity(const char *text)
{
	static const char *const entities[] = { "&amp;", "&lt;", "&gt;", "&quot;",
						"&#39;" };

	for (size_t i = 0; i < sizeof entities / sizeof *entities; i++)
		if (!strncmp(text, entities[i], strlen(entities[i])))
			return strlen(entities[i]);
	return 0;
}

/* From behind "<name" to behind ">"; NULL: attributes are not in order. */
static inline const char *markup_attributes(const char *at, bool *closed)
{
	*closed = false;
	for (;;) {
		size_t blanks = strspn(at, " \n");

		at += blanks;
		if (*at == '>')
			return at + 1;
		if (at[0] == '/' && at[1] == '>') {
			*closed = true;
			return at + 2;
		}
		if (!blanks)
			return NULL;
		at += strcspn(at, "=\"<> \n");
		if (at[0] != '=' || at[1] != '"')
			return NULL;
		for (at += 2; *at != '"'; at++)
			if (!*at || *at == '<' || (*at == '&' && !markup_entity(at)))
				return NULL;
		at++;
	}
}

/* Where the text stops being well-formed; NULL: nowhere. */
static inline const char *markup_fault(const char *text)
{
	char open[MARKUP_DEPTH][MARKUP_NAME];
	int depth = 0;

	for (const char *at = text; *at;) {
		char name[MARKUP_NAME];
		const char *start = at, *next;
		bool ends = at[1] == '/', closed;

		if (*at == '&') {
			if (!markup_entity(at))
				return at;
			at += markup_entity(at);
			continue;
		}
		if (*at != '<') {
			if ((unsigned char)*at < ' ' && *at != '\n')
				return at;
			at++;
			continue;
		}
		if (!strncmp(at, "<?xml ", 6) || !strncmp(at, "<!DOCTYPE html>", 15)) {
			at = strchr(at, '>') + 1;
			continue;
		}
		at += 1 + ends;
		snprintf(name, sizeof name, "%.*s", (int)strcspn(at, " \n/>"), at);
		if (!*name)
			return start;
		next = markup_attributes(at + strlen(name), &closed);
		if (!next)
			return start;
		at = next;
		if (ends && (!depth || strcmp(open[--depth], name)))
			return start;
		if (ends || closed || markup_is_void(name))
			continue;
		if (depth == MARKUP_DEPTH)
			return start;
		memcpy(open[depth++], name, sizeof name);
		if (!strcmp(name, "style")) {
			at = strstr(at, "</style>");
			if (!at)
				return start;
		}
	}
	return depth ? text + strlen(text) : NULL;
}

/* Name where it is wrong; true if it is well-formed. */
static inline bool markup_is_right(const char *text)
{
	const char *fault = markup_fault(text);

	if (fault)
		fprintf(stderr, "not well-formed at: %.60s\n", fault);
	return !fault;
}

#endif
