/* SPDX-License-Identifier: MIT */
/* How many letters two words are apart: for "did you mean", never for readings. */
#include "notes/sheet.h"

#define LONGEST 64

static int least(int a, int b, int c)
{
	int ab = a < b ? a : b;

	return ab < c ? ab : c;
}

/*
 * Optimal string alignment: insertions, deletions, substitutions, and exchanges of two
 * neighbours, each counted one.  Three rows of the usual table are enough.
 */
int rb_letters_apart(const char *a, size_t a_length, const char *b, size_t b_length,
		     int most)
{
	int row[3][LONGEST + 1];
	size_t apart = a_length > b_length ? a_length - b_length : b_length - a_length;

	if (a_length > LONGEST || b_length > LONGEST || apart > (size_t)most)
		return most + 1;
	for (size_t j = 0; j <= b_length; j++)
		row[0][j] = (int)j;
	for (size_t i = 1; i <= a_length; i++) {
		int *now = row[i % 3], *before = row[(i + 2) % 3],
		    *earlier = row[(i + 1) % 3];

		now[0] = (int)i;
		for (size_t j = 1; j <= b_length; j++) {
			now[j] = least(before[j] + 1, now[j - 1] + 1,
				       before[j - 1] + (a[i - 1] != b[j - 1]));
			if (i > 1 && j > 1 && a[i - 1] == b[j - 2] &&
			    a[i - 2] == b[j - 1])
				now[j] = least(now[j], earlier[j - 2] + 1, now[j]);
		}
	}
	return row[a_length % 3][b_length] > most ? most + 1
						  : row[a_length % 3][b_length];
}
