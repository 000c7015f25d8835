/* say.h: what the files of this room share
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "words.h"

G_BEGIN_DECLS

#define TR_NOT_KNOWN "–"
#define TR_MINUS "\u2212"
#define TR_THIN_SPACE "\u2009"
#define TR_NO_BREAK_SPACE "\u00a0"
#define TR_NARROW_NO_BREAK_SPACE "\u202f"
#define TR_TIMES " × "

/* Exact by definition: NIST Handbook 44, appendix C. */
#define TR_MM_PER_INCH 25.4

/* number.c */
/* Half away from zero. */
double    tr_say_round           (double value, int decimals);
/* At most `max_decimals`, no zeros at the end: "2.5", "3". */
char     *tr_say_trimmed         (const TrReader *reader, double value, int max_decimals);
/* The same with "." and without thin spaces. */
void      tr_say_print_trimmed   (char *buffer, size_t size, double value, int max_decimals);

/* say.c: all text is new */
gboolean  tr_say_is_us           (const TrReader *reader);
char     *tr_say_with_unit       (char *number, const char *unit);         /* takes `number` */
char     *tr_say_quote           (const char *text);                       /* “text”, one line, at most 60 characters */
char     *tr_say_capital         (const char *text);                       /* its first letter upper case */
char     *tr_say_small_number    (const TrReader *reader, double count);   /* "one" to "twelve", then digits */
unsigned long tr_say_plural      (double count);                           /* for ngettext */
char     *tr_say_unit            (TrUnit unit, double number);             /* "cups" */
char     *tr_say_quantity        (const TrReader *reader, double number, double unit);   /* "2.5 cups"; unit NaN: none */
void      tr_say_apart           (const TrReader *reader, double a, double b, int decimals, const char *unit,
                                  char **a_text, char **b_text);
void      tr_say_lengths_apart   (const TrReader *reader, double a_mm, double b_mm, char **a_text, char **b_text);
char     *tr_say_length_up       (const TrReader *reader, double mm);      /* never less than it is */
char     *tr_say_length_down     (const TrReader *reader, double mm);      /* never more */
char     *tr_say_ingredient      (const TrDoughFigures *figures, const char *id);        /* its name; NULL: no such ingredient */
/* Appends after " · ", or after a space, unless `out` is empty; takes the text. */
void      tr_say_append_part     (GString *out, char *part);
void      tr_say_append_sentence (GString *out, char *sentence);

/* ingredient-names.c: for translators and for the test that compares it with the built-in table. */
extern const char *const tr_say_ingredient_names[];

G_END_DECLS
