/* SPDX-License-Identifier: MIT */
/* strict_json.c - JSON as RFC 8259 has it, and not a byte more. */
#include <string.h>

#include "strict.h"
#include "target.h"

#define DEEPEST 32
#define KEYS    64

struct key {
	const char *at;
	size_t length;
};

static const char *value(const char *at, int depth);

static const char *blanks(const char *at)
{
	return at + strspn(at, " \n\r\t");
}

static bool is_half(const char *at, const char *second)
{
	return (*at == 'd' || *at == 'D') && strchr(second, at[1]);
}

/* Behind the four digits; half a pair stands for no character. */
static const char *code(const char *at)
{
	HOLDS(strspn(at, "0123456789abcdefABCDEF") >= 4);
	HOLDS(!is_half(at, "cdefCDEF"));
	if (!is_half(at, "89abAB"))
		return at + 4;
	HOLDS(at[4] == '\\' && at[5] == 'u');
	HOLDS(strspn(at + 6, "0123456789abcdefABCDEF") >= 4);
	HOLDS(is_half(at + 6, "cdefCDEF"));
	return at + 10;
}

static const char *escape(const char *at)
{
	if (*at == 'u')
		return code(at + 1);
	HOLDS(*at && strchr("\"\\/bfnrt", *at));
	return at + 1;
}

/* Behind the closing quote. */
static const char *string(const char *at)
{
	HOLDS(*at == '"');
	for (at++; *at != '"';) {
		HOLDS((unsigned char)*at >= 0x20);
		at = *at == '\\' ? escape(at + 1) : at + 1;
	}
	return at + 1;
}

static const char *digits(const char *at)
{
	size_t count = strspn(at, "0123456789");

	HOLDS(count > 0);
	return at + count;
}

static const char *number(const char *at)
{
	const char *start = at, *end;

	at += *at == '-';
	end = digits(at);
	HOLDS(*at != '0' || end == at + 1);
	if (*end == '.')
		end = digits(end + 1);
	HOLDS(*end != 'e' && *end != 'E');
	if (*start == '-')
		HOLDS(strspn(at, "0.") < (size_t)(end - at));
	return end;
}

static const char *word(const char *at)
{
	static const char *const words[] = { "null", "true", "false" };

	for (size_t i = 0; i < sizeof words / sizeof *words; i++)
		if (!strncmp(at, words[i], strlen(words[i])))
			return at + strlen(words[i]);
	broken(__FILE__, __LINE__, "a value");
}

static void is_new(const struct key *key, int count)
{
	for (int i = 0; i < count; i++)
		HOLDS(key[i].length != key[count].length ||
		      memcmp(key[i].at, key[count].at, key[count].length) != 0);
}

static const char *object(const char *at, int depth)
{
	struct key key[KEYS];
	int count = 0;

	at = blanks(at + 1);
	if (*at == '}')
		return at + 1;
	for (;;) {
		const char *end = string(at);

		HOLDS(count < KEYS);
		key[count] = (struct key){ at, (size_t)(end - at) };
		is_new(key, count++);
		at = blanks(end);
		HOLDS(*at == ':');
		at = blanks(value(at + 1, depth));
		if (*at == '}')
			return at + 1;
		HOLDS(*at == ',');
		at = blanks(at + 1);
	}
}

static const char *array(const char *at, int depth)
{
	at = blanks(at + 1);
	if (*at == ']')
		return at + 1;
	for (;;) {
		at = blanks(value(at, depth));
		if (*at == ']')
			return at + 1;
		HOLDS(*at == ',');
		at++;
	}
}

static const char *value(const char *at, int depth)
{
	HOLDS(depth < DEEPEST);
	at = blanks(at);
	if (*at == '{')
		return object(at, depth + 1);
	if (*at == '[')
		return array(at, depth + 1);
	if (*at == '"')
		return string(at);
	if (*at == '-' || (*at >= '0' && *at <= '9'))
		return number(at);
	return word(at);
}

void strict_json(const struct kept *kept)
{
	strict_text(kept);
	HOLDS(*blanks(value(kept->bytes, 0)) == '\0');
	HOLDS(strlen(kept->bytes) == kept->length);
}
