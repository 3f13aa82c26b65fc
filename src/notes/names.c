/* SPDX-License-Identifier: MIT */
/* Names of points: folded, hashed, numbered. */
#include "notes/names.h"

#include <string.h>

/* The characters of more than one byte that a name may have for a plain one. */
static const struct {
	const char *bytes;
	size_t length;
	char plain;
} alike[] = {
	{ "\xC2\xA0", 2, ' ' },     /* no-break space */
	{ "\xE2\x80\x90", 3, '-' }, /* hyphen */
	{ "\xE2\x80\x91", 3, '-' }, /* no-break hyphen */
	{ "\xE2\x80\x92", 3, '-' }, /* figure dash */
	{ "\xE2\x80\x93", 3, '-' }, /* en dash */
	{ "\xE2\x80\x94", 3, '-' }, /* em dash */
	{ "\xE2\x80\x95", 3, '-' }, /* bar */
	{ "\xE2\x88\x92", 3, '-' }, /* minus */
	{ "\xE2\x80\x89", 3, ' ' }, /* thin space */
	{ "\xE2\x80\xAF", 3, ' ' }, /* narrow no-break space */
};

/* The plain character that s begins with, and how many bytes it takes there. */
static char plain_at(const char *s, size_t left, size_t *taken)
{
	*taken = 1;
	if (s[0] == '\t' || s[0] == '\n' || s[0] == '\r')
		return ' ';
	for (size_t i = 0;
	     (unsigned char)s[0] >= 0xC2 && i < sizeof alike / sizeof *alike; i++) {
		if (left < alike[i].length ||
		    memcmp(s, alike[i].bytes, alike[i].length) != 0)
			continue;
		*taken = alike[i].length;
		return alike[i].plain;
	}
	return s[0];
}

size_t rb_name_fold(char *out, const char *text, size_t length)
{
	size_t used = 0, taken;

	for (size_t i = 0; i < length; i += taken) {
		char c = text[i];

		taken = 1;
		if (c > ' ' && c <= '~') { /* nearly all of them */
			out[used++] = c >= 'A' && c <= 'Z' ? (char)(c + ('a' - 'A')) : c;
			continue;
		}
		c = plain_at(text + i, length - i, &taken);
		if (c == ' ' && (!used || out[used - 1] == ' '))
			continue;
		/* Capital letters of Latin-1: U+00C0 to U+00DE, but for the times sign.
		 */
		if (used && out[used - 1] == '\xC3' && (unsigned char)c >= 0x80 &&
		    (unsigned char)c <= 0x9E && (unsigned char)c != 0x97)
			c = (char)((unsigned char)c + 0x20);
		out[used++] = c;
	}
	while (used && out[used - 1] == ' ')
		used--;
	out[used] = '\0';
	return used;
}

static bool is_letter_or_digit(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') ||
	       (unsigned char)c >= 0x80;
}

#define HASH_START UINT64_C(0xCBF29CE484222325) /* FNV-1a, folded to 32 bits */
#define HASH_PRIME UINT64_C(0x100000001B3)

static uint32_t folded_hash(uint64_t h)
{
	return (uint32_t)(h ^ h >> 32);
}

/*
 * The hash of a name by its letters and digits.  The figures at its end are a number that
 * is added, so that TP-11, TP-12, TP-13 stand side by side in the table as they do in the
 * book, and one look into memory serves many of them.  Names that differ only in dashes,
 * points and blanks fall together; that is how they are found.
 */
struct letters {
	uint64_t before;        /* the hash of what stands before the number */
	uint32_t number, zeros; /* those in front of it: 01 is not 1 */
	uint32_t letters;       /* not figures */
};

static inline void add_letter(struct letters *letters, unsigned char c)
{
	uint64_t figures = (uint64_t)letters->zeros << 32 | letters->number;

	if (c >= '0' && c <= '9') {
		letters->number = letters->number * 10 + (c - (uint32_t)'0');
		letters->zeros += !letters->number;
		return;
	}
	letters->before = (((letters->before ^ figures) * HASH_PRIME) ^ c) * HASH_PRIME;
	letters->number = letters->zeros = 0;
	letters->letters++;
}

static inline uint32_t hash_of(struct letters letters)
{
	return folded_hash((letters.before ^ letters.zeros) * HASH_PRIME) +
	       letters.number;
}

static uint32_t hash_of_letters(const char *s, size_t length)
{
	struct letters letters = { HASH_START, 0, 0, 0 };

	for (size_t i = 0; i < length; i++)
		if (is_letter_or_digit(s[i]))
			add_letter(&letters, (unsigned char)s[i]);
	return hash_of(letters);
}

static uint32_t hash_of_all(const char *s, size_t length)
{
	uint64_t h = HASH_START;

	for (size_t i = 0; i < length; i++)
		h = (h ^ (unsigned char)s[i]) * HASH_PRIME;
	return folded_hash(h);
}

#define LETTER 0x80 /* or digit: it counts for the hash */

/* What the characters fold to that a name mostly has; 0: not as plain as that. */
static void make_plain(unsigned char plain[static 256])
{
	memset(plain, 0, 256);
	for (int c = '!'; c <= '~'; c++) {
		char small = (char)(c >= 'A' && c <= 'Z' ? c + ('a' - 'A') : c);

		plain[c] =
			(unsigned char)small | (is_letter_or_digit(small) ? LETTER : 0);
	}
}

/* Fold and hash in one pass a name of plain characters only; false: this one is not. */
static bool fold_plain(struct rb_names *names, const char *text, size_t length)
{
	const unsigned char *plain = names->plain;
	struct letters letters = { HASH_START, 0, 0, 0 };
	char *out = names->folded;

	for (size_t i = 0; i < length; i++) {
		unsigned char folded = plain[(unsigned char)text[i]];

		if (!folded)
			return false;
		out[i] = (char)(folded & 0x7F);
		if (folded & LETTER)
			add_letter(&letters, folded & 0x7F);
	}
	out[length] = '\0';
	names->folds = length;
	names->letters = letters.letters;
	names->hash = hash_of(letters);
	return true;
}

bool rb_names_nearly_same(const char *name, const char *other)
{
	char a[128], b[128];
	size_t m = 0, n = 0, alike_letters = 0;

	if (strlen(name) >= sizeof a || strlen(other) >= sizeof b)
		return false;
	rb_name_fold(a, name, strlen(name));
	rb_name_fold(b, other, strlen(other));
	for (;; m++, n++, alike_letters++) {
		while (a[m] && !is_letter_or_digit(a[m]))
			m++;
		while (b[n] && !is_letter_or_digit(b[n]))
			n++;
		if (a[m] != b[n] || !a[m])
			return alike_letters && a[m] == b[n];
	}
}

/* Equal to the folded name looked for?  The bytes mostly settle it. */
static bool same_name(struct rb_names *names, uint32_t number, size_t folded)
{
	const char *text = names->text + names->name[number];
	size_t length = strlen(text);

	if (length == folded && !memcmp(text, names->folded, folded))
		return true;
	return length < names->room &&
	       rb_name_fold(names->other, text, length) == folded &&
	       !memcmp(names->other, names->folded, folded);
}

/* So many names of the same letters and digits stand together; any more stand where all
 * their characters put them, so that no file can make the search slow. */
#define TOGETHER 8

/*
 * The slots in which a hash may stand: where it belongs and the next few, which are in
 * the cache; then any, in an order of its own that comes by every slot, so that runs of
 * numbered names do not make each other slow.
 */
struct probe {
	uint32_t at, last;
	uint32_t near;
	uint32_t stir;
};

#define NEAR 7

static inline struct probe first_probe(const struct rb_names *names, uint32_t hash)
{
	uint32_t last = names->slots - 1;

	return (struct probe){ hash & last, last, NEAR, hash * UINT32_C(0x9E3779B1) };
}

static inline void next_probe(struct probe *probe)
{
	if (probe->near) {
		probe->near--;
		probe->at = (probe->at + 1) & probe->last;
		return;
	}
	probe->at = (5 * probe->at + 1 + probe->stir) & probe->last;
	probe->stir >>= 5;
}

static bool make_slots(struct rb_names *names)
{
	const struct rb_slot *old = names->slot;
	uint32_t before = names->slots, slots = before ? 4 * before : 1024;

	if (before && names->count < before / 4 * 3)
		return true;
	if (!before)
		make_plain(names->plain);
	names->slot = rb_arena_take_clear(names->arena, slots, sizeof *names->slot);
	if (!names->slot)
		return false;
	names->slots = slots;
	for (uint32_t i = 0; i < before; i++) {
		struct probe probe = first_probe(names, old[i].hash);

		if (!old[i].number)
			continue;
		while (names->slot[probe.at].number)
			next_probe(&probe);
		names->slot[probe.at] = old[i];
	}
	return true;
}

static bool make_room(struct rb_names *names, size_t length)
{
	if (names->room > length)
		return true;
	names->room = 2 * length + 256;
	names->folded = rb_arena_take(names->arena, names->room, 1);
	names->other = rb_arena_take(names->arena, names->room, 1);
	return names->folded && names->other;
}

/* Look along the slots from a hash for the folded name, past `most` others of that hash.
 */
static uint32_t look(struct rb_names *names, size_t folded, uint32_t hash, int most)
{
	const struct rb_slot *slot = names->slot;
	struct probe probe = first_probe(names, hash);

	for (; slot[probe.at].number; next_probe(&probe)) {
		uint32_t candidate = slot[probe.at].number - 1;

		if (slot[probe.at].hash != hash)
			continue;
		if (same_name(names, candidate, folded))
			return candidate;
		if (names->alike == RB_NO_POINT)
			names->alike = candidate;
		if (!--most)
			break;
	}
	names->at = probe.at;
	names->hash = hash;
	return RB_NO_POINT;
}

bool rb_names_seek(struct rb_names *names, const char *text, size_t length)
{
	if (!make_slots(names) || !make_room(names, length))
		return false;
	if (!fold_plain(names, text, length)) {
		names->folds = rb_name_fold(names->folded, text, length);
		names->hash = hash_of_letters(names->folded, names->folds);
		names->letters = RB_NOT_PLAIN;
	}
	__builtin_prefetch(&names->slot[names->hash & (names->slots - 1)]);
	return true;
}

uint32_t rb_names_sought(struct rb_names *names)
{
	uint32_t number;

	names->alike = RB_NO_POINT;
	number = look(names, names->folds, names->hash, TOGETHER);
	if (number == RB_NO_POINT && names->slot[names->at].number)
		number = look(names, names->folds,
			      hash_of_all(names->folded, names->folds), -1);
	return number;
}

bool rb_names_find(struct rb_names *names, const char *text, size_t length,
		   uint32_t *number)
{
	if (!rb_names_seek(names, text, length))
		return false;
	*number = rb_names_sought(names);
	return true;
}

static void add_near(struct rb_names *names, uint32_t name, uint32_t other)
{
	if (names->nears < RB_NEAR_NAMES)
		names->near[names->nears++] = (struct rb_near){ name, other };
}

void rb_names_enter(struct rb_names *names, uint32_t offset, uint32_t *number)
{
	const char *text = names->text + offset;

	*number = names->count;
	names->name[names->count++] = offset;
	names->slot[names->at] = (struct rb_slot){ names->hash, names->count };
	names->spaced |= memchr(names->folded, ' ', names->folds) != NULL;
	if (names->alike != RB_NO_POINT && names->nears < RB_NEAR_NAMES &&
	    rb_names_nearly_same(text, names->text + names->name[names->alike]))
		add_near(names, *number, names->alike);
}

#define WORDS 8 /* ends of words tried in a name */

/* A known name with words behind it: the known one, or RB_NO_POINT. */
static bool known_before_words(struct rb_names *names, const bool *is_known, uint32_t i,
			       uint32_t *found)
{
	const char *text = names->text + names->name[i];
	const char *space = text;

	*found = RB_NO_POINT;
	for (int word = 0; word < WORDS && (space = strchr(space + 1, ' ')); word++) {
		if (!rb_names_find(names, text, (size_t)(space - text), found))
			return false;
		if (*found != RB_NO_POINT && *found != i && is_known[*found])
			return true;
	}
	*found = RB_NO_POINT;
	return true;
}

bool rb_names_compare(struct rb_names *names, const bool *is_known)
{
	for (uint32_t i = 0; names->spaced && i < names->count; i++) {
		uint32_t other;

		if (names->nears == RB_NEAR_NAMES)
			return true;
		if (is_known[i])
			continue;
		if (!known_before_words(names, is_known, i, &other))
			return false;
		if (other != RB_NO_POINT)
			add_near(names, i, other);
	}
	return true;
}

/* clang-format off */
static const char *const ground_names[] = {
	"ground", "ground level", "grd", "gr", "g", "gl", "og", "eg", "fg", "ng",
	"cl", "c/l", "centreline", "centerline",
	"spot", "grade", "surface", "floor", "road", "lawn", "pavement",
	"-", "--", "?",
};
/* clang-format on */

/* A word for ground, and behind it at most a number or a chainage: spot 1, CL 0+50.
 * Not GL-1, which may be a point of that name. */
static bool is_ground_word(const char *folded, const char *word)
{
	size_t length = strlen(word);

	if (strncmp(folded, word, length) != 0)
		return false;
	folded += length;
	return !*folded ||
	       (strchr(" #", *folded) && !folded[strspn(folded, " .#+0123456789")]);
}

bool rb_name_is_ground(const char *text)
{
	char folded[32] = "";
	size_t length = strlen(text);

	if (length >= sizeof folded)
		return text[0] == '(' || text[0] == '[';
	rb_name_fold(folded, text, length);
	if (folded[0] == '(' || folded[0] == '[')
		return true;
	for (size_t i = 0; i < sizeof ground_names / sizeof *ground_names; i++)
		if (is_ground_word(folded, ground_names[i]))
			return true;
	return false;
}
