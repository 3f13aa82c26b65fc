/* SPDX-License-Identifier: MIT */
/* Changes to a measure: a word of it, or a place in it, becomes a measure that is known.
 */
#include "change.h"
#include "work.h"

size_t LLVMFuzzerCustomMutator(uint8_t *data, size_t size, size_t room, unsigned seed)
{
	struct text t = { data, size, room, seed };
	struct span place;

	if (draw(&t.draws, 4) || !size)
		return LLVMFuzzerMutate(data, size, room);
	place = around(&t, somewhere(&t), " +-*/:()");
	if (draw(&t.draws, 2))
		place.to = place.from;
	put_known(&t, place, &known_measures);
	return t.length;
}
