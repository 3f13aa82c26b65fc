/* SPDX-License-Identifier: MIT */
/* record_columns.h - what the columns of the record are called. */
#ifndef RB_RECORD_RECORD_COLUMNS_H
#define RB_RECORD_RECORD_COLUMNS_H

#include "record/ledger.h"

/* The heading of a column, with underscores: "elevation_ft_in". */
const char *rb_record_heading(enum rb_record_column column);

#endif
