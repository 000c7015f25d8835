/* lineage.c: which dough comes from which, and what was changed on the way
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One row a dough, those that come from another under it and further in. On
 * the edge to it stands what was written otherwise, as much as one line holds.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "../calc/branch.h"
#include "../words/difference.h"
#include "lineage.h"

#define NAME_LINES 1.9
#define CHANGE_LINES 1.3           /* more, where a row says what was changed */
#define DISC_LINES 0.78            /* its radius */
#define INDENT_LINES 2.2
/* However deep it goes, this much of the width is left for words. */
#define LEAST_WORDS 0.5

typedef struct {
  const TrTrial *trial;
  const TrReader *reader;
  const TrLook *look;
  TrPicture *picture;
  GArray *lineage;               /* TrDescent */
  double em, width, indent;
  int current;
  double *middles;               /* of each row's disc */
} Drawing;

static const TrDescent *
get_descent (const GArray *lineage,
             guint         row)
{
  return &g_array_index (lineage, TrDescent, row);
}

static const TrDough *
get_dough (const Drawing *drawing,
           guint          row)
{
  return tr_trial_get_dough (drawing->trial, get_descent (drawing->lineage, row)->dough);
}

static double
row_lines (const GArray *lineage,
           guint         row)
{
  return NAME_LINES + (get_descent (lineage, row)->parent >= 0 ? CHANGE_LINES : 0);
}

static double
sum_lines (const GArray *lineage)
{
  double lines = 0;

  for (guint i = 0; i < lineage->len; i++)
    lines += row_lines (lineage, i);

  return lines;
}

double
tr_lineage_picture_get_lines (const TrTrial *trial)
{
  g_autoptr (GArray) lineage = tr_trial_get_lineage (trial);

  return fmax (sum_lines (lineage), NAME_LINES);
}

static double
disc_x (const Drawing *drawing,
        guint          row)
{
  return DISC_LINES * 1.3 * drawing->em + drawing->indent * get_descent (drawing->lineage, row)->generation;
}

/* Words *******************************************************************/

/* NULL: it comes from none. */
static GPtrArray *
list_changes (const Drawing *drawing,
              guint          row)
{
  const TrDescent *descent = get_descent (drawing->lineage, row);
  GPtrArray *texts;

  if (descent->parent < 0)
    return NULL;

  g_autoptr (GPtrArray) differences = tr_dough_differences (get_dough (drawing, (guint) descent->parent), get_dough (drawing, row));

  texts = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < differences->len; i++)
    g_ptr_array_add (texts, tr_words_difference (drawing->reader, drawing->trial->pantry, differences->pdata[i]));

  return texts;
}

static char *
join_changes (const GPtrArray *texts,
              guint            n)
{
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    g_string_append_printf (out, "%s%s", i > 0 ? " · " : "", (const char *) texts->pdata[i]);
  if (n < texts->len)
    {
      g_string_append (out, " · ");
      g_string_append_printf (out, dngettext (GETTEXT_PACKAGE, "%u more", "%u more", texts->len - n), texts->len - n);
    }

  return g_string_free (out, FALSE);
}

/* As many as the line holds, at least the first. */
static char *
fit_changes (const Drawing   *drawing,
             const GPtrArray *texts,
             double           room)
{
  if (texts->len == 0)
    return g_strdup (_("nothing changed yet"));

  for (guint n = texts->len; n > 1; n--)
    {
      g_autofree char *line = join_changes (texts, n);

      if (tr_text_width (drawing->look, line, drawing->em, 400) <= room)
        return g_steal_pointer (&line);
    }

  g_autofree char *first = join_changes (texts, 1);

  return tr_text_shorten (drawing->look, first, drawing->em, 400, room);
}

static char *
dup_name (const Drawing *drawing,
          guint          row)
{
  return tr_words_one_line (get_dough (drawing, row)->name);
}

/* All that is known of it, a line each. */
static char *
dup_hit_text (const Drawing   *drawing,
              guint            row,
              const GPtrArray *texts)
{
  const TrDescent *descent = get_descent (drawing->lineage, row);
  g_autofree char *name = dup_name (drawing, row);
  GString *out = g_string_new (name);

  if (descent->parent >= 0)
    {
      g_autofree char *parent = dup_name (drawing, (guint) descent->parent);

      g_string_append_c (out, '\n');
      g_string_append_printf (out, _("from %s"), parent);
    }
  for (guint i = 0; texts != NULL && i < texts->len; i++)
    g_string_append_printf (out, "\n%s", (const char *) texts->pdata[i]);

  return g_string_free (out, FALSE);
}

static void
describe_row (const Drawing   *drawing,
              guint            row,
              const GPtrArray *texts)
{
  const TrDescent *descent = get_descent (drawing->lineage, row);
  g_autofree char *name = dup_name (drawing, row);
  g_autofree char *letter = tr_words_letter (descent->dough);

  if (descent->parent < 0)
    {
      tr_picture_describe (drawing->picture, _("%s, %s."), letter, name);
      return;
    }

  g_autofree char *parent = dup_name (drawing, (guint) descent->parent);
  g_autofree char *changes = texts->len > 0 ? join_changes (texts, texts->len) : g_strdup (_("nothing changed yet"));

  tr_picture_describe (drawing->picture, _("%s, %s, from %s: %s."), letter, name, parent, changes);
}

/* Shapes ******************************************************************/

/* Down from the disc of the parent, and across to its own. */
static void
add_edge (const Drawing *drawing,
          guint          row)
{
  const TrDescent *descent = get_descent (drawing->lineage, row);
  double radius = DISC_LINES * drawing->em;

  if (descent->parent < 0)
    return;

  guint parent = (guint) descent->parent;
  double x = disc_x (drawing, parent), y = drawing->middles[row];

  tr_picture_add_line (drawing->picture, x, drawing->middles[parent] + radius, x, y, TR_PEN_INNER, &drawing->look->dim);
  tr_picture_add_line (drawing->picture, x, y, disc_x (drawing, row) - radius, y, TR_PEN_INNER, &drawing->look->dim);
}

static void
add_disc (const Drawing *drawing,
          guint          row,
          const char    *hit_text)
{
  const TrLook *look = drawing->look;
  const TrDescent *descent = get_descent (drawing->lineage, row);
  gboolean is_current = (int) descent->dough == drawing->current;
  g_autofree char *letter = tr_words_letter (descent->dough);
  double x = disc_x (drawing, row), y = drawing->middles[row], size = 0.9 * drawing->em;

  if (is_current)
    tr_picture_add_circle (drawing->picture, x, y, (DISC_LINES + 0.16) * drawing->em, NULL, TR_PEN_OUTLINE, &look->accent);
  tr_picture_add_circle (drawing->picture, x, y, DISC_LINES * drawing->em, &look->paper, is_current ? TR_PEN_HEAVY : TR_PEN_OUTLINE,
                         is_current ? &look->accent : &look->text);
  tr_picture_set_hit (drawing->picture, TR_PART_OF_POINT, (int) descent->dough, hit_text);
  tr_picture_add_text (drawing->picture, letter, size, 700, &look->text, x, y + TR_TEXT_ASCENT / 2 * size, 0.5);
}

/* The name, under it the changes; all of it is the dough's. */
static void
add_words (const Drawing   *drawing,
           guint            row,
           const GPtrArray *texts,
           const char      *hit_text)
{
  const TrLook *look = drawing->look;
  const TrDescent *descent = get_descent (drawing->lineage, row);
  gboolean is_current = (int) descent->dough == drawing->current;
  double x = disc_x (drawing, row) + 1.5 * drawing->em, room = drawing->width - x, middle = drawing->middles[row];
  double em = drawing->em, height = texts != NULL ? (1.3 + CHANGE_LINES) * em : 1.3 * em;
  g_autofree char *name = dup_name (drawing, row);
  g_autofree char *shown = tr_text_shorten (look, name, em, is_current ? 700 : 400, room);

  tr_picture_add_text (drawing->picture, shown, em, is_current ? 700 : 400, &look->text, x, middle + TR_TEXT_ASCENT / 2 * em, 0);
  if (texts != NULL)
    {
      g_autofree char *changes = fit_changes (drawing, texts, room);

      tr_picture_add_text (drawing->picture, changes, em, 400, &look->dim, x, middle + (TR_TEXT_ASCENT / 2 + CHANGE_LINES) * em, 0);
    }
  tr_picture_add_rect (drawing->picture, &(TrBox) { x, middle - 0.65 * em, room, height }, NULL, TR_PEN_NONE, NULL);
  tr_picture_set_hit (drawing->picture, TR_PART_OF_POINT, (int) descent->dough, hit_text);
}

static void
add_row (const Drawing *drawing,
         guint          row)
{
  g_autoptr (GPtrArray) texts = list_changes (drawing, row);
  g_autofree char *hit_text = dup_hit_text (drawing, row, texts);

  add_words (drawing, row, texts, hit_text);
  add_disc (drawing, row, hit_text);
  describe_row (drawing, row, texts);
}

static guint
find_deepest (const GArray *lineage)
{
  guint deepest = 0;

  for (guint i = 0; i < lineage->len; i++)
    deepest = MAX (deepest, get_descent (lineage, i)->generation);

  return deepest;
}

static void
lay_out (Drawing *drawing,
         double   height)
{
  double lines = sum_lines (drawing->lineage), top = 0;
  guint deepest = find_deepest (drawing->lineage);

  drawing->em = fmin (drawing->look->text_size, height / fmax (lines, NAME_LINES));
  drawing->indent = INDENT_LINES * drawing->em;
  if (deepest > 0)
    drawing->indent = fmin (drawing->indent, (1 - LEAST_WORDS) * drawing->width / deepest);
  drawing->middles = g_new (double, drawing->lineage->len + 1);
  for (guint i = 0; i < drawing->lineage->len; i++)
    {
      drawing->middles[i] = top + NAME_LINES / 2 * drawing->em;
      top += row_lines (drawing->lineage, i) * drawing->em;
    }
}

TrPicture *
tr_lineage_picture_new (const TrTrial  *trial,
                        int             current,
                        gboolean        is_mirrored,
                        const TrReader *reader,
                        const TrLook   *look,
                        double          width,
                        double          height)
{
  g_autoptr (GArray) lineage = tr_trial_get_lineage (trial);
  g_autofree double *middles = NULL;
  Drawing drawing = {
    .trial = trial, .reader = reader, .look = look, .picture = tr_picture_new (look, reader, width, height),
    .lineage = lineage, .width = width, .current = current,
  };

  lay_out (&drawing, height);
  middles = drawing.middles;
  tr_picture_describe (drawing.picture, dngettext (GETTEXT_PACKAGE, "%u dough.", "%u doughs.", lineage->len), lineage->len);
  for (guint i = 0; i < lineage->len; i++)
    add_edge (&drawing, i);
  for (guint i = 0; i < lineage->len; i++)
    add_row (&drawing, i);
  if (is_mirrored)
    tr_picture_mirror (drawing.picture);

  return drawing.picture;
}
