/* member.c: one value of the trial, where it stands and how it is said
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reads and writes structs; commits nothing and knows no widget but the page.
 */

#include "config.h"

#include "member.h"

#include <glib/gi18n-lib.h>

char *
tr_text_with_number (const char *text,
                     guint       number)
{
  g_autoptr (GString) out = g_string_new (text);
  g_autofree char *digits = g_strdup_printf ("%u", number);

  g_string_replace (out, "%u", digits, 0);

  return g_string_free (g_steal_pointer (&out), FALSE);
}

/* The address of the member in its holder, or NULL. */
static gpointer
reach_value (const TrMember *member,
             const TrTrial  *trial,
             int             dough,
             guint           item)
{
  if (dough < 0 && tr_where_is_in_dough (member->pointer))
    return NULL;

  gpointer holder = member->reach (trial, dough, item, FALSE);

  return holder != NULL ? G_STRUCT_MEMBER_P (holder, member->offset) : NULL;
}

gboolean
tr_member_is_there (const TrMember *member,
                    const TrTrial  *trial,
                    int             dough,
                    guint           item)
{
  return reach_value (member, trial, dough, item) != NULL;
}

double
tr_member_get_number (const TrMember *member,
                      const TrTrial  *trial,
                      int             dough,
                      guint           item)
{
  gpointer value = reach_value (member, trial, dough, item);

  if (value == NULL)
    return NAN;
  if (member->hold == TR_HOLD_NUMBER)
    return member->divisor > 0 ? *(double *) value / member->divisor : *(double *) value;

  int count = *(int *) value;

  return member->may_be_empty && count == 0 ? NAN : count;
}

const char *
tr_member_get_text (const TrMember *member,
                    const TrTrial  *trial,
                    int             dough,
                    guint           item)
{
  gpointer value = reach_value (member, trial, dough, item);

  return value != NULL ? *(char **) value : NULL;
}

void
tr_where_own (TrTrial    *draft,
              int         dough,
              const char *where)
{
  if (g_str_has_prefix (where, "/bench/"))
    tr_trial_own_bench (draft);
  else if (g_str_has_prefix (where, "/ingredients/"))
    tr_trial_own_pantry (draft);
  else if (tr_where_is_in_dough (where))
    tr_trial_own_dough (draft, (guint) dough);
}

static gpointer
own_holder (const TrMember *member,
            TrTrial        *draft,
            int             dough,
            guint           item)
{
  tr_where_own (draft, dough, member->pointer);

  return member->reach (draft, dough, item, TRUE);
}

/* Without the last bits that a decimal fraction leaves: 1.7 times 400 is 680. */
static double
undivided (double value,
           double divisor)
{
  return round (value * divisor * 1e6) / 1e6;
}

void
tr_member_set_number (const TrMember *member,
                      TrTrial        *draft,
                      int             dough,
                      guint           item,
                      double          value)
{
  gpointer holder = own_holder (member, draft, dough, item);

  g_return_if_fail (holder != NULL);

  gpointer where = G_STRUCT_MEMBER_P (holder, member->offset);

  if (member->hold == TR_HOLD_NUMBER)
    *(double *) where = member->divisor > 0 ? undivided (value, member->divisor) : value;
  else
    *(int *) where = isnan (value) ? 0 : (int) CLAMP (value, G_MININT, G_MAXINT);
  if (member->settle != NULL)
    member->settle (draft, dough, item, holder);
}

void
tr_member_set_text (const TrMember *member,
                    TrTrial        *draft,
                    int             dough,
                    guint           item,
                    const char     *text)
{
  gpointer holder = own_holder (member, draft, dough, item);

  g_return_if_fail (holder != NULL);

  tr_set_text (G_STRUCT_MEMBER_P (holder, member->offset), text);
  if (member->settle != NULL)
    member->settle (draft, dough, item, holder);
}

/* A figure is said as it is elsewhere, a number as it was written. */
char *
tr_member_dup_number (const TrMember *member,
                      const TrReader *reader,
                      double          value)
{
  if (isnan (value))
    return g_strdup ("");

  return member->get_figure != NULL ? tr_words_percent (reader, value) : tr_words_write (reader, member->quantity, value);
}

TrTrial *
tr_member_draft_figure (const TrMember       *member,
                        TrPage               *page,
                        const TrDoughFigures *start,
                        guint                 item,
                        double                value,
                        GError              **error)
{
  g_autoptr (TrTrial) draft = tr_document_draft (tr_page_get_document (page));
  TrDough *dough = tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (page));
  double value_at_start = member->get_figure (start, item);
  g_autofree char *said = tr_member_dup_number (member, tr_page_get_reader (page), value);
  g_autofree char *said_at_start = tr_member_dup_number (member, tr_page_get_reader (page), value_at_start);

  if (g_str_equal (said, said_at_start))
    value = value_at_start;

  return member->set_figure (dough, start, item, value, error) ? g_steal_pointer (&draft) : NULL;
}

char *
tr_member_dup_pointer (const TrMember *member,
                       const TrTrial  *trial,
                       int             dough,
                       guint           item)
{
  if (member->dup_pointer != NULL)
    return member->dup_pointer (trial, dough, item);

  return tr_text_with_number (member->pointer, item);
}

char *
tr_member_dup_undo (const TrMember *member,
                    const TrTrial  *trial,
                    int             dough,
                    guint           item)
{
  if (member->dup_undo != NULL)
    return member->dup_undo (trial, dough, item);

  return tr_text_with_number (_(member->undo), item + 1);
}

const char *
tr_member_get_unit (const TrMember *member,
                    const TrReader *reader)
{
  if (member->unit != NULL)
    return _(member->unit);
  if (member->hold != TR_HOLD_NUMBER && member->hold != TR_HOLD_COUNT)
    return NULL;

  switch (member->quantity)
    {
    case TR_QUANTITY_MASS_G:
      return tr_words_mass_unit (reader);
    case TR_QUANTITY_LENGTH_MM:
      return tr_words_length_unit (reader);
    case TR_QUANTITY_TEMPERATURE_C:
    case TR_QUANTITY_WARMING_C:
      return tr_words_temperature_unit (reader);
    case TR_QUANTITY_PERCENT:
      return "%";
    case TR_QUANTITY_MINUTES:
      return _("min");
    case TR_QUANTITY_NUMBER:
    case TR_QUANTITY_WHOLE:
    default:
      return NULL;
    }
}

static gboolean
is_in_degrees (const TrMember *member)
{
  return member->quantity == TR_QUANTITY_TEMPERATURE_C || member->quantity == TR_QUANTITY_WARMING_C;
}

static double
get_step (const TrMember *member,
          const TrReader *reader)
{
  double step = member->step > 0 ? member->step : 1;

  if (reader->units != TR_UNITS_US)
    return step;
  /* An eighth of an inch, a degree Fahrenheit. */
  if (member->quantity == TR_QUANTITY_LENGTH_MM)
    return step < 1 ? 25.4 / 32 : 25.4 / 8 * step;
  if (is_in_degrees (member))
    return 5.0 / 9.0;

  return step;
}

double
tr_member_step (const TrMember *member,
                const TrReader *reader,
                double          value,
                int             steps)
{
  double step = get_step (member, reader);
  double from = steps > 0 ? floor (value / step + 1e-9) : ceil (value / step - 1e-9);
  double stepped = step * (from + steps);

  return is_in_degrees (member) ? stepped : MAX (stepped, 0);
}
