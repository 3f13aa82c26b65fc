/* SPDX-License-Identifier: MIT */
/* rod.h - the rod that is read. */
#ifndef RB_LEVEL_ROD_H
#define RB_LEVEL_ROD_H

#include "rodbook/length.h"

/* Above this reading a rod of two parts is drawn out: a Philadelphia rod is 7.10 ft
 * closed (NAVEDTRA 14043). */
#define RB_CLOSED_ROD (7 * RB_FOOT)

#endif
