/* SPDX-License-Identifier: MIT */
/* strict_markup.c - HTML and SVG: our own elements, in order, and text between. */
#include <string.h>

#include "strict.h"
#include "target.h"

#define DEEPEST 32
#define NAME    16

struct open {
	char name[NAME];
};

static bool is_one_of(const char *name, size_t length, const char *const *words)
{
	for (; *words; words++)
		if (strlen(*words) == length && !memcmp(name, *words, length))
			return true;
	return false;
}

/* clang-format off */
static const char *const elements[] = {
	"html", "head", "meta", "title", "style", "body", "main", "header", "footer",
	"section", "div", "p", "b", "br", "span", "strong", "pre", "h1", "h2", "dl", "dt",
	"dd", "table", "caption", "thead", "tbody", "tr", "th", "td", "figure", NULL
};

static const char *const drawn[] = {
	"svg", "title", "desc", "g", "line", "polyline", "polygon", "rect", "circle", "text",
	"path", "tspan", NULL
};

static const char *const without_end[] = { "meta", "br", NULL };

static const char *const attributes[] = {
	"lang", "charset", "http-equiv", "content", "name", "class", "id", "style", "scope",
	"colspan", "xmlns", "width", "height", "viewBox", "role", "aria-labelledby",
	"aria-label", "aria-hidden", "tabindex", "x", "y", "x1", "y1", "x2", "y2", "cx",
	"cy", "r", "d", "points", "fill", "stroke", "stroke-width", "stroke-dasharray",
	"stroke-linecap", "stroke-linejoin", "font-family", "font-size", "font-weight",
	"text-anchor", "rx", "xml:space", "paint-order", NULL
};
/* clang-format on */

static const char *entity(const char *at)
{
	static const char *const entities[] = { "&amp;", "&lt;", "&gt;", "&quot;",
						"&#39;" };

	for (size_t i = 0; i < sizeof entities / sizeof *entities; i++)
		if (!strncmp(at, entities[i], strlen(entities[i])))
			return at + strlen(entities[i]);
	broken(__FILE__, __LINE__, "an entity");
}

/* Behind the quoted value of an attribute. */
static const char *quoted(const char *at)
{
	HOLDS(*at == '"');
	for (at++; *at != '"';) {
		HOLDS(*at && *at != '<' && *at != '>' && *at != '\n');
		at = *at == '&' ? entity(at) : at + 1;
	}
	return at + 1;
}

/* From behind the name of an element to behind its '>'. */
static const char *rest_of_tag(const char *at, bool *closed)
{
	*closed = false;
	for (;;) {
		size_t blanks = strspn(at, " \n"), length;

		at += blanks;
		if (*at == '>')
			return at + 1;
		if (at[0] == '/' && at[1] == '>') {
			*closed = true;
			return at + 2;
		}
		HOLDS(blanks > 0);
		length = strcspn(at, "= \n/>");
		HOLDS(is_one_of(at, length, attributes));
		HOLDS(at[length] == '=');
		at = quoted(at + length + 1);
	}
}

/* Behind a style sheet: nothing of it may be taken for markup. */
static const char *style_sheet(const char *at)
{
	const char *end = strstr(at, "</style>");

	HOLDS(end);
	for (; at < end; at++)
		HOLDS(*at != '<');
	return end;
}

static const char *start_tag(const char *at, struct open *open, int *depth)
{
	size_t length = strcspn(at, " \n/>");
	bool closed;

	HOLDS(length > 0 && length < NAME);
	HOLDS(is_one_of(at, length, elements) || is_one_of(at, length, drawn));
	HOLDS(*depth < DEEPEST);
	memcpy(open[*depth].name, at, length);
	open[*depth].name[length] = '\0';
	at = rest_of_tag(at + length, &closed);
	if (closed || is_one_of(open[*depth].name, length, without_end))
		return at;
	if (!strcmp(open[(*depth)++].name, "style"))
		return style_sheet(at);
	return at;
}

static const char *end_tag(const char *at, const struct open *open, int *depth)
{
	size_t length = strcspn(at, ">");

	HOLDS(*depth > 0);
	--*depth;
	HOLDS(strlen(open[*depth].name) == length);
	HOLDS(!memcmp(open[*depth].name, at, length));
	return at + length + 1;
}

static const char *skip_head(const char *at, bool svg)
{
	const char *head = svg ? "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
			       : "<!DOCTYPE html>\n";

	HOLDS(!strncmp(at, head, strlen(head)) || svg);
	return strncmp(at, head, strlen(head)) ? at : at + strlen(head);
}

void strict_markup(const struct kept *kept, bool svg)
{
	struct open open[DEEPEST];
	int depth = 0;
	const char *at = skip_head(kept->bytes, svg);

	strict_text(kept);
	HOLDS(strlen(kept->bytes) == kept->length);
	HOLDS(!strncmp(at, svg ? "<svg " : "<html ", svg ? 5 : 6));
	while (*at) {
		if (at[0] == '<' && at[1] == '/')
			at = end_tag(at + 2, open, &depth);
		else if (*at == '<')
			at = start_tag(at + 1, open, &depth);
		else if (*at == '&')
			at = entity(at);
		else
			HOLDS((depth > 0 && *at != '>') || *at == '\n'), at++;
	}
	HOLDS(depth == 0);
}
