/* SPDX-License-Identifier: MIT */
/*
 * forms.h - forms to fill in: what `rodbook new` writes.
 *
 * A form is data: its keys, its columns and the rows of an example, each value as one
 * would write it in the unit asked for.  The word that explains a key stands in front of
 * it, because a cell behind an empty key would be read as its value.
 */
#ifndef RB_CLI_FORMS_H
#define RB_CLI_FORMS_H

#include "report/sink.h"
#include "rodbook/length.h"

struct rb_blank_form;

/* The form of that name ("book"), or NULL. */
const struct rb_blank_form *rb_form_find(const char *name);

/* The name of form `i`, from 0; NULL behind the last. */
const char *rb_form_name(size_t i);

/* The command that reads the form once it is filled in. */
const char *rb_form_command(const struct rb_blank_form *form);

/* Write a form as CSV. */
void rb_form_write(struct rb_sink *sink, const struct rb_blank_form *form,
		   enum rb_unit unit);

#endif
