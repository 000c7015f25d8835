/* card-weigh.c: what to weigh and mix
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Preferments are groups of their own and come back in the dough as one line
 * each. Every sum printed is the sum of the weights printed: they were
 * rounded together, in the steps of the reader's scale. What is too little for
 * a step is printed as it is, with a star, and a note says that the sums,
 * where it is nothing, leave it out.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "../calc/formula.h"
#include "../words/content.h"
#include "card.h"

typedef struct {
  const TrCard *card;
  const TrFormula *formula;
  GArray *blocks;
  double width, em;
  double name_right, weight_right, percent_right;
  double *rounded;               /* grams, one a line */
  double step_g, fine_step_g;    /* of the scale that this reader has */
  gboolean has_little;           /* a line under the scale's step */
} Weigh;

static void
round_weights (Weigh *weigh)
{
  TrBench *bench = tr_words_new_scale (weigh->card->reader, weigh->card->dough->bench);

  weigh->step_g = bench->scale_step_g;
  weigh->fine_step_g = bench->fine_scale_step_g;
  weigh->rounded = g_new (double, MAX (1, weigh->formula->lines->len));
  tr_formula_round_for_scale (weigh->formula, bench, weigh->rounded);
  tr_bench_unref (bench);
}

static const TrLineFigures *
line_at (const Weigh *weigh,
         guint        index)
{
  return &g_array_index (weigh->formula->lines, TrLineFigures, index);
}

/* A weight that is a whole number of coarse steps does without the fine ones. */
static char *
dup_weight (const Weigh *weigh,
            double       grams)
{
  double steps = grams / weigh->step_g;
  gboolean is_coarse = weigh->step_g > 0 && fabs (steps - round (steps)) < 1e-6;

  return tr_words_mass_number (weigh->card->reader, grams, is_coarse ? weigh->step_g : weigh->fine_step_g);
}

/* A bold number on the right of the weights' column, smaller if it is huge. */
static void
add_weight (const Weigh *weigh,
            TrPicture   *picture,
            const char  *text,
            double       size,
            double       baseline)
{
  const TrLook *look = &weigh->card->look;
  double wide = tr_text_width (look, text, size, 700), room = weigh->weight_right - weigh->name_right - 0.6 * weigh->em;

  tr_picture_add_text (picture, text, wide > room ? size * room / wide : size, 700, &look->text,
                       weigh->weight_right, baseline, 1);
}

static double
row_height (const Weigh *weigh)
{
  return MAX (1.84 * weigh->em, TR_TICK_PT + 1.8);
}

static void
add_names (const Weigh *weigh,
           TrPicture   *picture,
           const char  *name,
           double       baseline)
{
  tr_card_add_fitting (picture, name, 1.22 * weigh->em, 400, &weigh->card->look.text, 0, weigh->name_right, baseline);
}

/* Not weighed: the baker's own words, and room for a weight. */
static void
add_unweighed_row (Weigh               *weigh,
                   const TrLineFigures *line)
{
  const TrLook *look = &weigh->card->look;
  double em = weigh->em, height, baseline;
  const char *why = isfinite (line->written_grams) ? _("as written, not scaled") : _("not weighed");
  g_autofree char *own = line->line->text != NULL ? g_strdup (line->line->text)
                         : line->known ? g_strdup_printf ("%s %s", line->line->amount, tr_words_ingredient (&line->ingredient))
                                       : g_strdup (line->line->amount);
  g_autofree char *text = g_strdup_printf ("“%s”", own);
  g_auto (GStrv) lines = tr_text_wrap (look, text, 1.1 * em, 400, weigh->percent_right, 2);
  TrPicture *picture;

  height = g_strv_length (lines) * 1.1 * 1.28 * em + 1.5 * em;
  picture = tr_card_add_block (weigh->blocks, weigh->card, weigh->width, MAX (height, row_height (weigh)));
  baseline = tr_card_add_paragraph (picture, text, 1.1 * em, 400, &look->text, 0, weigh->percent_right, 1.15 * em, 2);
  baseline = tr_card_add_caution (picture, why, em, 0, weigh->percent_right, baseline - 0.08 * em, 1);
  baseline -= 1.28 * em;
  tr_card_add_blank (picture, tr_words_mass_unit (weigh->card->reader),
                     tr_text_width (look, why, em, 700) + 2.4 * em, weigh->percent_right, baseline);
  tr_card_add_tick (picture, weigh->width - TR_TICK_PT, 0.85 * em);
}

/* Weighed, and less than the scale shows: never 0, or it would be left out. */
static gboolean
is_little (const Weigh *weigh,
           guint        index)
{
  return line_at (weigh, index)->grams > 0 && fabs (weigh->rounded[index]) <= 0;
}

static char *
dup_line_weight (const Weigh *weigh,
                 guint        index)
{
  const TrLineFigures *line = line_at (weigh, index);
  g_autofree char *little = NULL;

  if (!is_little (weigh, index))
    return tr_words_mass_number (weigh->card->reader, weigh->rounded[index],
                                 tr_line_is_fine (line) ? weigh->fine_step_g : weigh->step_g);
  little = tr_words_mass (weigh->card->reader, line->grams);
  return g_strconcat (little, "*", NULL);
}

static void
add_row (Weigh *weigh,
         guint  index)
{
  const TrLineFigures *line = line_at (weigh, index);
  const TrLook *look = &weigh->card->look;
  double height = row_height (weigh), baseline = height / 2 + 0.42 * weigh->em;
  g_autofree char *weight = NULL, *percent = NULL;
  TrPicture *picture;

  if (isnan (line->grams) || isnan (weigh->rounded[index]))
    {
      add_unweighed_row (weigh, line);
      return;
    }
  picture = tr_card_add_block (weigh->blocks, weigh->card, weigh->width, height);
  weight = dup_line_weight (weigh, index);
  weigh->has_little |= is_little (weigh, index);
  add_names (weigh, picture, line->known ? tr_words_ingredient (&line->ingredient) : line->line->amount, baseline);
  add_weight (weigh, picture, weight, 1.5 * weigh->em, baseline);
  if (isfinite (line->percent) && line->line->stage != TR_STAGE_FINISH)
    {
      percent = tr_words_number (weigh->card->reader, line->percent, line->percent < 0.095 ? 2 : line->percent < 9.95 ? 1 : 0);
      tr_picture_add_text (picture, percent, weigh->em, 400, &look->dim, weigh->percent_right, baseline, 1);
    }
  tr_card_add_tick (picture, weigh->width - TR_TICK_PT, height / 2);
}

static TrPicture *
add_group_heading (Weigh      *weigh,
                   const char *name,
                   const char *note)
{
  const TrLook *look = &weigh->card->look;
  double em = weigh->em, wide;
  TrPicture *picture = tr_card_add_block (weigh->blocks, weigh->card, weigh->width, 1.75 * em);

  g_array_index (weigh->blocks, TrCardBlock, weigh->blocks->len - 1).keeps_with_next = TRUE;
  wide = tr_card_add_fitting (picture, name, em, 700, &look->dim, 0, weigh->width * (note ? 0.6 : 1), 1.35 * em);
  if (note != NULL)
    tr_card_add_fitting (picture, note, 0.95 * em, 400, &look->dim, wide + 0.6 * em, weigh->width - wide - 0.6 * em, 1.35 * em);
  return picture;
}

static gboolean
is_of_group (const TrLineFigures *line,
             TrStage              stage,
             const char          *group)
{
  if (line->line->stage != stage)
    return FALSE;
  return stage != TR_STAGE_PREFERMENT || g_strcmp0 (line->line->group, group) == 0;
}

/* Rounded grams of a group; `n` its lines. */
static double
sum_group (const Weigh *weigh,
           TrStage      stage,
           const char  *group,
           guint       *n)
{
  double sum = 0;

  *n = 0;
  for (guint i = 0; i < weigh->formula->lines->len; i++)
    {
      if (!is_of_group (line_at (weigh, i), stage, group))
        continue;
      ++*n;
      if (!isnan (weigh->rounded[i]))
        sum += weigh->rounded[i];
    }
  return sum;
}

static void
add_rows (Weigh      *weigh,
          TrStage     stage,
          const char *group)
{
  for (guint i = 0; i < weigh->formula->lines->len; i++)
    if (is_of_group (line_at (weigh, i), stage, group))
      add_row (weigh, i);
}

/* In the order of the document, each once; the entries are borrowed. */
static GPtrArray *
find_preferments (const Weigh *weigh)
{
  GPtrArray *groups = g_ptr_array_new ();

  for (guint i = 0; i < weigh->formula->lines->len; i++)
    {
      const TrLine *line = line_at (weigh, i)->line;
      gboolean is_known = FALSE;

      for (guint k = 0; k < groups->len; k++)
        is_known |= g_strcmp0 (g_ptr_array_index (groups, k), line->group) == 0;
      if (line->stage == TR_STAGE_PREFERMENT && !is_known)
        g_ptr_array_add (groups, line->group);
    }
  return groups;
}

static char *
dup_ripening (const Weigh *weigh)
{
  const TrStep *ripen = tr_dough_find_step (weigh->card->dough->dough, TR_STEP_RIPEN);
  g_autofree char *span = NULL;

  if (ripen == NULL || !isfinite (ripen->minutes))
    return NULL;
  span = tr_card_dup_span (weigh->card->reader, ripen->minutes, ripen->max_minutes);
  return g_strdup_printf (_("ready in %s"), span);
}

static void
add_sum_row (Weigh      *weigh,
             const char *name,
             double      grams,
             gboolean    ticks)
{
  double height = row_height (weigh), baseline = height / 2 + 0.42 * weigh->em;
  g_autofree char *weight = dup_weight (weigh, grams);
  TrPicture *picture = tr_card_add_block (weigh->blocks, weigh->card, weigh->width, height);

  add_names (weigh, picture, name, baseline);
  add_weight (weigh, picture, weight, 1.5 * weigh->em, baseline);
  if (ticks)
    tr_card_add_tick (picture, weigh->width - TR_TICK_PT, height / 2);
}

static void
add_groups (Weigh *weigh)
{
  g_autoptr (GPtrArray) preferments = find_preferments (weigh);
  g_autofree char *ripening = dup_ripening (weigh);
  guint n;

  for (guint i = 0; i < preferments->len; i++)
    {
      g_autofree char *name = tr_words_preferment (g_ptr_array_index (preferments, i));

      add_group_heading (weigh, name, ripening);
      add_rows (weigh, TR_STAGE_PREFERMENT, g_ptr_array_index (preferments, i));
    }

  sum_group (weigh, TR_STAGE_DOUGH, NULL, &n);
  if (n + preferments->len > 0)
    add_group_heading (weigh, preferments->len > 0 ? _("Final dough") : tr_words_stage (TR_STAGE_DOUGH), NULL);
  for (guint i = 0; i < preferments->len; i++)
    {
      double grams = sum_group (weigh, TR_STAGE_PREFERMENT, g_ptr_array_index (preferments, i), &n);
      g_autofree char *name = tr_words_preferment (g_ptr_array_index (preferments, i));
      g_autofree char *all = g_strdup_printf (_("%s, all of it"), name);

      add_sum_row (weigh, all, grams, TRUE);
    }
  add_rows (weigh, TR_STAGE_DOUGH, NULL);

  sum_group (weigh, TR_STAGE_ROLL_IN, NULL, &n);
  if (n > 0)
    add_group_heading (weigh, tr_words_stage (TR_STAGE_ROLL_IN), NULL);
  add_rows (weigh, TR_STAGE_ROLL_IN, NULL);
}

/* Under a rule: "Dough 1 470 + fat 432" and the whole. */
static void
add_total (Weigh *weigh)
{
  const TrLook *look = &weigh->card->look;
  double em = weigh->em, dough = 0, fat = 0, height = 2.2 * em, baseline = 1.6 * em;
  g_autofree char *dough_text = NULL, *fat_text = NULL, *text = NULL, *total = NULL;
  gboolean incomplete = FALSE, any = FALSE;
  TrPicture *picture;

  for (guint i = 0; i < weigh->formula->lines->len; i++)
    {
      TrStage stage = line_at (weigh, i)->line->stage;

      if (stage == TR_STAGE_FINISH)
        continue;
      any |= !isnan (weigh->rounded[i]);
      if (isnan (weigh->rounded[i]))
        incomplete = TRUE;
      else if (stage == TR_STAGE_ROLL_IN)
        fat += weigh->rounded[i];
      else
        dough += weigh->rounded[i];
    }
  picture = tr_card_add_block (weigh->blocks, weigh->card, weigh->width, height + (incomplete ? 1.4 * em : 0));
  dough_text = dup_weight (weigh, dough);
  fat_text = dup_weight (weigh, fat);
  total = any ? dup_weight (weigh, dough + fat) : g_strdup ("–");
  text = fat > 0 ? g_strdup_printf (_("Dough %s + roll-in %s"), dough_text, fat_text) : g_strdup (_("Dough"));
  tr_picture_add_line (picture, 0, 0.2 * em, weigh->weight_right, 0.2 * em, TR_PEN_INNER, &look->text);
  tr_card_add_fitting (picture, text, 1.1 * em, 400, &look->text, 0, weigh->name_right, baseline);
  add_weight (weigh, picture, total, 1.6 * em, baseline);
  if (incomplete)
    tr_card_add_caution (picture, _("The sum leaves out what is not weighed."), 0.95 * em, 0, weigh->width, baseline + 1.45 * em, 1);
}

/* After the last weight. */
static void
add_little_note (Weigh *weigh)
{
  TrPicture *picture;
  double end;

  if (!weigh->has_little)
    return;
  picture = tr_card_add_block (weigh->blocks, weigh->card, weigh->width, 1.6 * weigh->em);
  end = tr_card_add_paragraph (picture, _("* Less than a step of the scale: weigh it on a finer one. The sums leave it out."),
                               weigh->em, 400, &weigh->card->look.text, 0, weigh->width, 1.1 * weigh->em, 3);
  tr_picture_set_height (picture, end - 0.7 * weigh->em);
}

/* Several blocks: what goes into each. */
static void
add_division (Weigh *weigh)
{
  const TrDoughFigures *dough = weigh->card->dough;
  int blocks = dough->dough->lock_in != NULL ? dough->dough->lock_in->blocks : 1;
  g_autofree char *dough_text = NULL, *fat_text = NULL, *text = NULL;
  const TrLook *look = &weigh->card->look;
  TrPicture *picture;
  double end;

  if (blocks < 2 || !isfinite (weigh->formula->dough_g) || !isfinite (weigh->formula->roll_in_g))
    return;
  dough_text = tr_words_mass (weigh->card->reader, weigh->formula->dough_g / blocks);
  fat_text = tr_words_mass (weigh->card->reader, weigh->formula->roll_in_g / blocks);
  text = g_strdup_printf (_("For each of %d blocks: dough %s, roll-in %s."), blocks, dough_text, fat_text);
  picture = tr_card_add_block (weigh->blocks, weigh->card, weigh->width, 1.6 * weigh->em);
  end = tr_card_add_paragraph (picture, text, 1.1 * weigh->em, 700, &look->text, 0, weigh->width, 1.15 * weigh->em, 3);
  tr_picture_set_height (picture, end - 0.7 * weigh->em);
}

/* What the dough holds wherever it hides, in a line or two. */
static void
add_effective (Weigh *weigh)
{
  g_autofree char *text = tr_words_effective (weigh->card->reader, weigh->card->dough);
  TrPicture *picture;
  double end;

  if (*text == '\0')
    return;
  picture = tr_card_add_block (weigh->blocks, weigh->card, weigh->width, 1.6 * weigh->em);
  end = tr_card_add_paragraph (picture, text, weigh->em, 400, &weigh->card->look.text, 0, weigh->width, 1.2 * weigh->em, 3);
  tr_picture_set_height (picture, end - 0.6 * weigh->em);
}

static void
add_finish (Weigh *weigh)
{
  guint n;

  sum_group (weigh, TR_STAGE_FINISH, NULL, &n);
  if (n == 0)
    return;
  add_group_heading (weigh, tr_words_stage (TR_STAGE_FINISH), NULL);
  add_rows (weigh, TR_STAGE_FINISH, NULL);
}

/* ---- the steps before lamination ---- */

static char *
dup_step_text (const TrReader *reader,
               const TrStep   *step)
{
  GString *text = g_string_new (NULL);

  if (isfinite (step->minutes) || isfinite (step->max_minutes))
    {
      g_autofree char *span = tr_card_dup_span (reader, step->minutes, step->max_minutes);

      g_string_append_printf (text, " %s", span);
    }
  if (step->place >= 0)
    {
      g_autofree char *place = g_utf8_strdown (tr_words_place ((TrPlace) step->place), -1);

      g_string_append_printf (text, ", %s", place);
    }
  if (isfinite (step->at_c))
    {
      g_autofree char *temperature = tr_words_temperature (reader, step->at_c);

      g_string_append_printf (text, _(" at %s"), temperature);
    }
  return g_string_free (text, FALSE);
}

/* Something to do, with a line for the value that it really had, and for how
 * warm it really was where a temperature is written. */
static void
add_task (Weigh      *weigh,
          const char *text,
          gboolean    has_temperature)
{
  const TrLook *look = &weigh->card->look;
  double em = weigh->em, height = MAX (1.7 * em, TR_TICK_PT + 2), baseline = height / 2 + 0.38 * em;
  double x = TR_TICK_PT + 0.7 * em, blank = weigh->width * (has_temperature ? 0.58 : 0.74), right = weigh->width * (has_temperature ? 0.78 : 1);
  TrPicture *picture = tr_card_add_block (weigh->blocks, weigh->card, weigh->width, height);

  tr_card_add_tick (picture, 0, height / 2);
  tr_card_add_fitting (picture, text, 1.1 * em, 400, &look->text, x, blank - x - 0.6 * em, baseline);
  tr_card_add_blank (picture, _("real"), blank, right, baseline);
  if (has_temperature)
    tr_card_add_blank (picture, tr_words_temperature_unit (weigh->card->reader), right + 0.6 * em, weigh->width, baseline);
}

static void
add_step (Weigh        *weigh,
          const TrStep *step)
{
  g_autofree char *span = dup_step_text (weigh->card->reader, step);
  g_autofree char *text = g_strconcat (tr_words_step (step->id), span, NULL);

  add_task (weigh, text, isfinite (step->at_c));
}

static gboolean
is_before_lamination (TrStepId id)
{
  return id <= TR_STEP_FAT_BLOCK;
}

static void
add_steps (Weigh *weigh)
{
  const TrMethod *method = weigh->card->dough->dough->method;
  const TrLook *look = &weigh->card->look;
  g_autofree char *temperature = NULL, *text = NULL;
  g_autofree char *water = tr_words_water (weigh->card->reader, weigh->card->dough);
  TrPicture *picture;
  double em = weigh->em;

  picture = tr_card_add_block (weigh->blocks, weigh->card, weigh->width, 2.5 * em);
  g_array_index (weigh->blocks, TrCardBlock, weigh->blocks->len - 1).keeps_with_next = TRUE;
  tr_card_add_heading (picture, _("Mix"), 2.0 * em);
  if (isfinite (method->dough_c))
    {
      temperature = tr_words_temperature (weigh->card->reader, method->dough_c);
      text = g_strdup_printf (_("dough at %s"), temperature);
      tr_card_add_fitting (picture, text, 1.1 * em, 400, &look->text, 4.2 * em, weigh->width * 0.74 - 4.8 * em, 2.0 * em);
    }
  tr_card_add_blank (picture, _("real"), weigh->width * 0.74, weigh->width, 2.0 * em);
  if (water != NULL)
    add_task (weigh, water, FALSE);
  for (guint i = 0; i < method->steps->len; i++)
    {
      const TrStep *step = g_ptr_array_index (method->steps, i);

      if (is_before_lamination (step->id))
        add_step (weigh, step);
    }
}

static void
add_heading (Weigh *weigh)
{
  const TrLook *look = &weigh->card->look;
  double em = weigh->em;
  TrPicture *picture = tr_card_add_block (weigh->blocks, weigh->card, weigh->width, 1.5 * em);

  g_array_index (weigh->blocks, TrCardBlock, 0).keeps_with_next = TRUE;
  tr_card_add_heading (picture, _("Weigh"), em);
  tr_picture_add_text (picture, tr_words_mass_unit (weigh->card->reader), em, 400, &look->dim, weigh->weight_right, em, 1);
  tr_picture_add_text (picture, _("% of flour"), em, 400, &look->dim, weigh->width, em, 1);
}

GArray *
tr_card_weigh_blocks (const TrCard *card,
                      double        width)
{
  Weigh weigh = { .card = card, .formula = &card->dough->formula, .blocks = tr_card_blocks_new (),
                  .width = width, .em = card->look.text_size };

  weigh.percent_right = width - TR_TICK_PT - 0.9 * weigh.em;
  weigh.weight_right = weigh.percent_right - 3.3 * weigh.em;
  weigh.name_right = weigh.weight_right - 4.8 * weigh.em;
  round_weights (&weigh);
  add_heading (&weigh);
  add_groups (&weigh);
  add_total (&weigh);
  add_division (&weigh);
  add_finish (&weigh);
  add_little_note (&weigh);
  if (card->has_effective)
    add_effective (&weigh);
  add_steps (&weigh);
  g_free (weigh.rounded);
  return weigh.blocks;
}
