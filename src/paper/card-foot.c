/* card-foot.c: head and foot of a bench card
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The foot warns; it never replaces local rules. The temperatures are those of
 * the FDA Food Code 2022, 3-501.16 (cold holding at 5 °C, 41 °F, or below).
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "../words/cautions.h"
#include "card.h"

/* Pieces within this part of the wanted mass are even; common practice. */
#define TOLERANCE 0.05

static char *
dup_line (const TrCard *card)
{
  const TrPiece *piece = &card->dough->piece;
  const TrReader *reader = card->reader;
  const char *kind = tr_words_kind (card->dough->dough->kind);
  g_autofree char *count = tr_words_count (reader, piece->count);
  g_autofree char *mass = tr_words_mass (reader, piece->raw_mass_g);
  g_autofree char *low = tr_words_mass (reader, piece->raw_mass_g * (1 - TOLERANCE));
  g_autofree char *high = tr_words_mass (reader, piece->raw_mass_g * (1 + TOLERANCE));

  if (!isfinite (piece->count))
    return g_strdup (kind);
  if (!isfinite (piece->raw_mass_g))
    return g_strdup_printf (_("%s · %s pieces"), kind, count);
  return g_strdup_printf (_("%s · %s pieces of %s raw (± 5 %%: %s to %s)"), kind, count, mass, low, high);
}

/* A line that cannot be weighed says so itself. */
static gboolean
is_said_at_line (const TrFinding *finding)
{
  return finding->id == TR_FINDING_NOT_WEIGHED && !isnan (finding->with[1]);
}

/* What must be known before starting. */
static double
add_findings (const TrCard *card,
              TrPicture    *picture,
              double        width,
              double        baseline)
{
  const GPtrArray *findings = card->dough->findings;
  double em = card->look.text_size;
  guint shown = 0, more = 0;

  for (guint i = 0; findings != NULL && i < findings->len; i++)
    {
      const TrFinding *finding = g_ptr_array_index (findings, i);
      g_autofree char *text = NULL;

      if (finding->severity == TR_SEVERITY_NOTE || is_said_at_line (finding))
        continue;
      if (shown == 3)
        {
          more++;
          continue;
        }
      shown++;
      text = tr_words_finding (card->reader, card->dough, finding);
      baseline = tr_card_add_caution (picture, text, em, 0, width, baseline, 2) + 0.12 * em;
    }
  if (more > 0)
    {
      g_autofree char *text = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "and %u more warning", "and %u more warnings", more), more);

      tr_picture_add_text (picture, text, em, 400, &card->look.warning, 1.35 * em, baseline, 0);
      baseline += 1.4 * em;
    }
  return baseline;
}

TrPicture *
tr_card_head (const TrCard *card,
              double        width,
              guint         page,
              guint         n_pages)
{
  const TrLook *look = &card->look;
  double em = look->text_size, size = page == 0 ? 2.5 * em : 1.6 * em, baseline;
  TrPicture *picture = tr_picture_new (look, card->reader, width, 6 * em);
  const char *name = card->dough->dough->name != NULL ? card->dough->dough->name : "";
  g_autofree char *code = tr_card_dup_code (card->index);
  g_autofree char *line = dup_line (card);
  double room = width - 4.4 * em;

  if (card->figures->doughs->len > 1)
    tr_picture_add_text (picture, code, size * 1.2, 700, &look->accent, width, 0.78 * size * 1.2, 1);
  if (page == 0 && tr_text_width (look, name, size, 700) > room)
    size *= MAX (0.72, MIN (1, 1.75 * room / tr_text_width (look, name, size, 700)));
  baseline = tr_card_add_paragraph (picture, name, size, 700, &look->text, 0, room, 0.8 * size, page == 0 ? 2 : 1);
  baseline -= size * 1.28;
  if (page == 0)
    {
      baseline += 1.95 * em;
      tr_card_add_fitting (picture, line, 1.35 * em, 400, &look->text, 0, width, baseline);
      baseline = add_findings (card, picture, width, baseline + 1.65 * em) - 1.65 * em;
    }
  baseline += 0.85 * em;
  tr_card_add_rule (picture, baseline, width, TRUE);
  tr_picture_set_height (picture, baseline + 1.1 * em);
  return picture;
}

/* Of the other doughs, what this one does not bring itself. */
static char *
dup_other_allergens (const TrCard *card)
{
  g_autoptr (GPtrArray) others = g_ptr_array_new ();

  for (guint i = 0; i < card->figures->doughs->len; i++)
    {
      const TrDoughFigures *dough = tr_figures_get_dough (card->figures, i);

      for (char **id = dough->allergens; dough != card->dough && id != NULL && *id != NULL; id++)
        if (!g_strv_contains ((const char *const *) card->dough->allergens, *id) &&
            !g_ptr_array_find_with_equal_func (others, *id, g_str_equal, NULL))
          g_ptr_array_add (others, *id);
    }
  if (others->len == 0)
    return NULL;
  g_ptr_array_add (others, NULL);
  return tr_words_allergens ((char **) others->pdata);
}

TrPicture *
tr_card_foot (const TrCard *card,
              double        width)
{
  const TrLook *look = &card->look;
  double em = look->text_size, baseline = 1.5 * em;
  TrPicture *picture = tr_picture_new (look, card->reader, width, 5 * em);
  g_autofree char *own = tr_words_allergens (card->dough->allergens);
  g_autofree char *contains = g_strdup_printf (_("Allergens: %s."), own);
  g_autofree char *other = dup_other_allergens (card);
  g_autofree char *cautions = tr_words_cautions (card->reader, card->dough);

  tr_card_add_rule (picture, 0.2 * em, width, TRUE);
  baseline = tr_card_add_paragraph (picture, contains, 1.12 * em, 700, &look->text, 0, width, baseline, 3);
  if (other != NULL)
    {
      g_autofree char *text = g_strdup_printf (_("Other doughs on this bench bring also: %s."), other);

      baseline = tr_card_add_paragraph (picture, text, em, 400, &look->text, 0, width, baseline, 3);
    }
  else if (card->figures->doughs->len > 1)
    {
      baseline = tr_card_add_paragraph (picture, _("The other doughs on this bench bring no further allergens."), em, 400,
                                        &look->text, 0, width, baseline, 2);
    }
  baseline = tr_card_add_paragraph (picture, cautions, 0.92 * em, 400, &look->dim, 0, width, baseline + 0.1 * em, 6);
  tr_picture_set_height (picture, baseline - 0.6 * em);
  return picture;
}

TrPicture *
tr_card_page_line (const TrCard *card,
                   double        width,
                   guint         page,
                   guint         n_pages)
{
  const TrLook *look = &card->look;
  double em = look->text_size, right;
  TrPicture *picture = tr_picture_new (look, card->reader, width, 1.4 * em);
  const char *title = card->figures->trial->title != NULL ? card->figures->trial->title : "";
  g_autofree char *text = page + 1 < n_pages ? g_strdup_printf (_("Page %u of %u, goes on"), page + 1, n_pages)
                                             : g_strdup_printf (_("Page %u of %u"), page + 1, n_pages);

  right = tr_picture_add_text (picture, text, 0.92 * em, 400, &look->dim, width, 1.0 * em, 1);
  tr_card_add_fitting (picture, title, 0.92 * em, 400, &look->dim, 0, width - right - 2 * em, 1.0 * em);
  return picture;
}
