/* SPDX-License-Identifier: MIT */
/* rodbook.h - the whole public surface of the library. */
#ifndef RODBOOK_RODBOOK_H
#define RODBOOK_RODBOOK_H

#include "rodbook/arena.h"
#include "rodbook/book.h"
#include "rodbook/finding.h"
#include "rodbook/length.h"
#include "rodbook/plan.h"
#include "rodbook/reduce.h"
#include "rodbook/slope.h"
#include "rodbook/table.h"
#include "rodbook/tolerance.h"
#include "rodbook/version.h"

#endif
