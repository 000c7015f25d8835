/* card.c: the bench card, laid out on pages
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   ┌──────────────────────────────┐
 *   │ name, kind, count, mass      │ head
 *   ├──────────────┬───────────────┤
 *   │ weigh        │ lock in, turn │ two columns; the layers go under
 *   │ mix          │               │ the shorter one
 *   ├──────────────┴──┬────────────┤
 *   │ sheet and cuts  │ cut, bake  │
 *   ├─────────────────┴────────────┤
 *   │ allergens, cautions          │ foot
 *   └──────────────────────────────┘
 *
 * One page is tried at several sizes of text. Many turns make the right
 * column long: then what comes after them goes under the mixing, on the left,
 * and the layers beside the sheet. Where even the smallest text is too much,
 * the columns flow over as many pages as they need, at a comfortable size,
 * and the sheet with all that follows it goes on the last.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "card.h"

#define MARGIN_PT 34.0
#define SMALLEST_EM 7.0
#define EM_STEP 0.2
#define N_STEPS 18
#define FLOWING_EM 8.6
#define EXTRAS_MAY_COST_STEPS 3
/* The drawing of the sheet is not made smaller than this, in em. */
#define LEAST_SHEET_EM 18.0
#define MOST_SHEET_EM 42.0

/* Where the layers and what comes after the turns go. In order of preference. */
typedef enum {
  LAYERS_IN_COLUMN,              /* under the shorter column */
  LAYERS_UNDER_SHEET,
  AFTER_IN_COLUMN,               /* what comes after the turns on the left, the layers beside the sheet */
  N_ARRANGEMENTS,
  FLOWING = N_ARRANGEMENTS       /* over several pages, in columns of one width */
} Arrangement;

/* What is printed besides what must be: the more the better, where there is room. */
typedef enum { NO_EXTRAS, WITH_GAPS, WITH_EFFECTIVE, WITH_TOTAL, N_EXTRAS } Extras;

typedef struct {
  TrCard card;
  double page_width, page_height, width;
  double left_width, right_width, right_x;
  GArray *left, *right, *bake;
  TrPicture *layers;             /* under the sheet; NULL: in a column, or none */
  TrPicture *weighed_cut;        /* right under the sheet; NULL: no sheet */
  Arrangement arrangement;
  double sheet_width, bake_x, bake_height, foot_height, line_height;
} Layout;

typedef struct { guint page; double y; } Place;

static double
em_of (const Layout *layout)
{
  return layout->card.look.text_size;
}

static double
height_of (const TrPicture *picture)
{
  double height;

  tr_picture_get_size (picture, NULL, &height);
  return height;
}

static double
sum_heights (const GArray *blocks)
{
  double sum = 0;

  for (guint i = 0; i < blocks->len; i++)
    sum += height_of (g_array_index (blocks, TrCardBlock, i).picture);
  return sum;
}

static void
add_layers_to_column (Layout *layout)
{
  gboolean is_left = sum_heights (layout->left) <= sum_heights (layout->right);
  TrCardBlock block = { tr_card_layers (&layout->card, is_left ? layout->left_width : layout->right_width), FALSE };

  if (block.picture != NULL)
    g_array_append_val (is_left ? layout->left : layout->right, block);
}

static void
add_total_to_column (Layout *layout)
{
  gboolean is_left = sum_heights (layout->left) <= sum_heights (layout->right);

  tr_card_add_total (is_left ? layout->left : layout->right, &layout->card, is_left ? layout->left_width : layout->right_width);
}

static void
move_bake_to_left (Layout *layout)
{
  double em = em_of (layout);
  TrPicture *title = tr_card_add_block (layout->left, &layout->card, layout->left_width, 2.9 * em);

  g_array_index (layout->left, TrCardBlock, layout->left->len - 1).keeps_with_next = TRUE;
  tr_card_add_heading (title, _("After the turns"), 2.0 * em);
  for (guint i = 0; i < layout->bake->len; i++)
    {
      TrCardBlock block = g_array_index (layout->bake, TrCardBlock, i);

      tr_picture_ref (block.picture);
      g_array_append_val (layout->left, block);
    }
  g_array_set_size (layout->bake, 0);
}

static void
layout_init (Layout            *layout,
             const TrFigures   *figures,
             guint              index,
             const TrReader    *reader,
             TrPaperSize        size,
             double             em,
             Arrangement        arrangement,
             Extras             extras)
{
  double gap = 2.6 * em;
  g_autoptr (TrPicture) foot = NULL, line = NULL;

  *layout = (Layout) {
    .card = { .figures = figures, .dough = tr_figures_get_dough (figures, index), .index = index, .reader = reader,
              .has_gaps = extras >= WITH_GAPS, .has_effective = extras >= WITH_EFFECTIVE },
  };
  tr_look_init_paper (&layout->card.look);
  layout->card.look.text_size = em;
  tr_paper_get_size (size, &layout->page_width, &layout->page_height);
  layout->width = layout->page_width - 2 * MARGIN_PT;
  layout->left_width = layout->width * (arrangement == FLOWING ? 0.5 : 0.44) - gap / 2;
  layout->right_width = layout->width - layout->left_width - gap;
  layout->right_x = layout->left_width + gap;
  layout->left = tr_card_weigh_blocks (&layout->card, layout->left_width);
  layout->right = tr_card_turn_blocks (&layout->card, layout->right_width);
  layout->sheet_width = layout->card.dough->has_sheet ? layout->width * 0.55 : 0;
  layout->bake_x = layout->sheet_width > 0 ? layout->sheet_width + gap : 0;
  layout->arrangement = arrangement;
  layout->bake = tr_card_bake_blocks (&layout->card, arrangement == AFTER_IN_COLUMN ? layout->left_width
                                                                                    : layout->width - layout->bake_x);
  if (layout->sheet_width > 0)
    layout->weighed_cut = tr_card_weighed_cut (&layout->card, layout->sheet_width);
  if (extras >= WITH_TOTAL)
    add_total_to_column (layout);
  if (arrangement == LAYERS_IN_COLUMN || arrangement == FLOWING)
    add_layers_to_column (layout);
  else
    layout->layers = tr_card_layers (&layout->card, arrangement == LAYERS_UNDER_SHEET ? layout->sheet_width
                                                                                      : layout->width - layout->bake_x);
  if (arrangement == AFTER_IN_COLUMN)
    move_bake_to_left (layout);
  layout->bake_height = sum_heights (layout->bake);
  foot = tr_card_foot (&layout->card, layout->width);
  line = tr_card_page_line (&layout->card, layout->width, 0, 1);
  layout->foot_height = height_of (foot);
  layout->line_height = height_of (line);
}

static void
layout_clear (Layout *layout)
{
  g_clear_pointer (&layout->left, g_array_unref);
  g_clear_pointer (&layout->right, g_array_unref);
  g_clear_pointer (&layout->bake, g_array_unref);
  g_clear_pointer (&layout->layers, tr_picture_unref);
  g_clear_pointer (&layout->weighed_cut, tr_picture_unref);
}

static double
bottom_heading_height (const Layout *layout)
{
  return 2.6 * em_of (layout);
}

/* What the part under the columns needs at least. */
static double
bottom_height (const Layout *layout)
{
  double sheet = layout->sheet_width > 0 ? LEAST_SHEET_EM * em_of (layout) + height_of (layout->weighed_cut) : 0;

  if (layout->layers != NULL && layout->arrangement == LAYERS_UNDER_SHEET)
    sheet += height_of (layout->layers);
  return bottom_heading_height (layout) + MAX (sheet, layout->bake_height);
}

static double
head_height (const Layout *layout,
             guint         page)
{
  g_autoptr (TrPicture) head = tr_card_head (&layout->card, layout->width, page, 1);

  return height_of (head);
}

static double
page_bottom (const Layout *layout)
{
  return layout->page_height - MARGIN_PT - layout->line_height;
}

static gboolean
fits_one_page (const Layout *layout)
{
  double columns = MAX (sum_heights (layout->left), sum_heights (layout->right));

  return MARGIN_PT + head_height (layout, 0) + columns + bottom_height (layout) + layout->foot_height <= page_bottom (layout);
}

/* ---- putting blocks on pages ---- */

static TrPicture *
page_at (GPtrArray    *pages,
         const Layout *layout,
         guint         index)
{
  while (pages->len <= index)
    g_ptr_array_add (pages, tr_picture_new (&layout->card.look, layout->card.reader, layout->page_width, layout->page_height));
  return g_ptr_array_index (pages, index);
}

static double
page_top (const Layout *layout,
          guint         page)
{
  return MARGIN_PT + head_height (layout, MIN (page, 1));
}

/* A heading goes on only together with what follows it. */
static double
height_with_next (const GArray *blocks,
                  guint         index)
{
  double height = 0;

  for (guint i = index; i < blocks->len; i++)
    {
      const TrCardBlock *block = &g_array_index (blocks, TrCardBlock, i);

      height += height_of (block->picture);
      if (!block->keeps_with_next)
        break;
    }
  return height;
}

/* Down one column, then down the same column of the next page. From page
 * `free_from` on the other column is free as well. Returns where it ends. */
static Place
flow (const Layout *layout,
      GPtrArray    *pages,
      const GArray *blocks,
      gboolean      is_right,
      guint         free_from,
      double        bottom)
{
  Place place = { 0, page_top (layout, 0) };
  gboolean in_right = is_right, was_both = FALSE;

  for (guint i = 0; i < blocks->len; i++)
    {
      const TrPicture *picture = g_array_index (blocks, TrCardBlock, i).picture;
      gboolean is_group_start = i == 0 || !g_array_index (blocks, TrCardBlock, i - 1).keeps_with_next;

      if (is_group_start && place.y + height_with_next (blocks, i) > bottom && place.y > page_top (layout, place.page) + 1)
        {
          if (place.page >= free_from && !in_right && layout->left_width > 0)
            {
              in_right = TRUE;
              was_both = TRUE;
            }
          else
            {
              place.page++;
              in_right = place.page >= free_from ? FALSE : is_right;
              was_both = FALSE;
            }
          place.y = page_top (layout, place.page);
        }
      tr_picture_place (page_at (pages, layout, place.page), picture, MARGIN_PT + (in_right ? layout->right_x : 0), place.y);
      place.y += height_of (picture);
    }
  if (was_both)
    place.y = bottom;
  return place;
}

static void
place_bottom (const Layout *layout,
              TrPicture    *page,
              double        y,
              double        bottom,
              gboolean      is_first)
{
  double em = em_of (layout), heading = bottom_heading_height (layout), top;
  g_autoptr (TrPicture) title = tr_picture_new (&layout->card.look, layout->card.reader, layout->width, heading);

  if (!is_first)
    tr_card_add_rule (title, 0.4 * em, layout->width, TRUE);
  tr_card_add_heading (title, layout->arrangement == AFTER_IN_COLUMN ? _("Sheet and layers") : layout->sheet_width > 0 ? _("Roll out, cut, bake") : _("Shape and bake"), (is_first ? 1.0 : 1.9) * em);
  tr_picture_place (page, title, MARGIN_PT, y);
  top = y + heading;

  if (layout->sheet_width > 0)
    {
      double layers = layout->layers != NULL && layout->arrangement == LAYERS_UNDER_SHEET ? height_of (layout->layers) : 0;
      double height = MIN (MOST_SHEET_EM * em, bottom - top - layers - height_of (layout->weighed_cut));
      g_autoptr (TrPicture) sheet = tr_sheet_picture_new (layout->card.dough, layout->card.reader, &layout->card.look,
                                                          layout->sheet_width, height);

      tr_picture_place (page, sheet, MARGIN_PT, top);
      tr_picture_place (page, layout->weighed_cut, MARGIN_PT, top + height);
      if (layout->layers != NULL && layout->arrangement == AFTER_IN_COLUMN)
        tr_picture_place (page, layout->layers, MARGIN_PT + layout->bake_x, top);
      else if (layout->layers != NULL)
        tr_picture_place (page, layout->layers, MARGIN_PT, bottom - layers);
    }
  for (guint i = 0; i < layout->bake->len; i++)
    {
      const TrPicture *picture = g_array_index (layout->bake, TrCardBlock, i).picture;

      tr_picture_place (page, picture, MARGIN_PT + layout->bake_x, top);
      top += height_of (picture);
    }
}

static void
place_frames (const Layout *layout,
              GPtrArray    *pages,
              guint         first)
{
  guint n = pages->len - first;

  for (guint i = 0; i < n; i++)
    {
      TrPicture *page = g_ptr_array_index (pages, first + i);
      g_autoptr (TrPicture) head = tr_card_head (&layout->card, layout->width, MIN (i, 1), n);
      g_autoptr (TrPicture) line = tr_card_page_line (&layout->card, layout->width, i, n);

      tr_picture_place (page, head, MARGIN_PT, MARGIN_PT);
      tr_picture_place (page, line, MARGIN_PT, page_bottom (layout));
    }
}

static void
place_foot (const Layout *layout,
            TrPicture    *page)
{
  g_autoptr (TrPicture) foot = tr_card_foot (&layout->card, layout->width);

  tr_picture_place (page, foot, MARGIN_PT, page_bottom (layout) - layout->foot_height);
}

/* The pages of one dough, appended to `all`. */
static void
compose (const Layout *layout,
         GPtrArray    *all)
{
  g_autoptr (GPtrArray) pages = g_ptr_array_new ();
  double bottom = page_bottom (layout), needed = bottom_height (layout) + layout->foot_height;
  double left = sum_heights (layout->left), right = sum_heights (layout->right);
  gboolean left_first = left < right;
  Place one = flow (layout, pages, left_first ? layout->left : layout->right, !left_first, G_MAXUINT, bottom);
  Place other = flow (layout, pages, left_first ? layout->right : layout->left, left_first, one.page + 1, bottom);
  Place end = one.page == other.page ? (Place) { one.page, MAX (one.y, other.y) } : one.page > other.page ? one : other;

  if (end.y + needed > bottom + 0.01)
    end = (Place) { end.page + 1, page_top (layout, end.page + 1) };
  page_at (pages, layout, end.page);
  place_bottom (layout, g_ptr_array_index (pages, end.page), end.y, bottom - layout->foot_height,
                end.y <= page_top (layout, end.page) + 0.01);
  place_foot (layout, g_ptr_array_index (pages, end.page));
  place_frames (layout, pages, 0);
  for (guint i = 0; i < pages->len; i++)
    g_ptr_array_add (all, g_ptr_array_index (pages, i));
}

static gboolean
fits_at (const TrFigures *figures,
         guint            index,
         const TrReader  *reader,
         TrPaperSize      size,
         Arrangement      arrangement,
         Extras           extras,
         int              step)
{
  gboolean fits;
  Layout layout;

  if (step >= N_STEPS)
    return FALSE;
  layout_init (&layout, figures, index, reader, size, SMALLEST_EM + step * EM_STEP, arrangement, extras);
  fits = fits_one_page (&layout);
  layout_clear (&layout);
  return fits;
}

/* The arrangement with the largest step of text with which one page is
 * enough; -1: none. */
static int
find_step (const TrFigures *figures,
           guint            index,
           const TrReader  *reader,
           TrPaperSize      size,
           Extras           extras,
           Arrangement     *best)
{
  int n = tr_figures_get_dough (figures, index)->has_sheet ? N_ARRANGEMENTS : 1, step = -1;

  *best = LAYERS_IN_COLUMN;
  for (int i = 0; i < n; i++)
    {
      int low, high = N_STEPS - 1;

      /* Another arrangement must be better than what is already known. */
      if (!fits_at (figures, index, reader, size, (Arrangement) i, extras, step + 1))
        continue;
      for (low = step + 1; low < high;)
        {
          int middle = (low + high + 1) / 2;

          if (fits_at (figures, index, reader, size, (Arrangement) i, extras, middle))
            low = middle;
          else
            high = middle - 1;
        }
      step = low;
      *best = (Arrangement) i;
    }
  return step;
}

static void
add_dough (GPtrArray       *pages,
           const TrFigures *figures,
           guint            index,
           const TrReader  *reader,
           TrPaperSize      size)
{
  Arrangement arrangements[N_EXTRAS];
  int steps[N_EXTRAS];
  Extras extras = WITH_TOTAL;
  Layout layout;

  for (guint i = 0; i < N_EXTRAS; i++)
    steps[i] = find_step (figures, index, reader, size, (Extras) i, &arrangements[i]);

  /* The weights are read at arm's length: what is extra may not cost them much. */
  while (extras > NO_EXTRAS && steps[extras] < MAX (0, steps[NO_EXTRAS] - EXTRAS_MAY_COST_STEPS))
    extras = (Extras) (extras - 1);

  if (steps[NO_EXTRAS] < 0)
    layout_init (&layout, figures, index, reader, size, FLOWING_EM, FLOWING, WITH_TOTAL);
  else
    layout_init (&layout, figures, index, reader, size, SMALLEST_EM + steps[extras] * EM_STEP, arrangements[extras], extras);
  compose (&layout, pages);
  layout_clear (&layout);
}

static char *
dup_title (const TrFigures *figures,
           const guint     *doughs,
           guint            n_doughs)
{
  const char *title = figures->trial->title;

  if (doughs != NULL && n_doughs == 1)
    title = tr_figures_get_dough (figures, doughs[0])->dough->name;
  return g_strdup (title != NULL ? title : "");
}

TrPages *
tr_cards_new (const TrFigures *figures,
              const guint     *doughs,
              guint            n_doughs,
              const TrReader  *reader,
              TrPaperSize      size)
{
  GPtrArray *pages;

  g_return_val_if_fail (figures != NULL, NULL);
  g_return_val_if_fail (reader != NULL, NULL);

  pages = g_ptr_array_new_with_free_func ((GDestroyNotify) tr_picture_unref);
  for (guint i = 0; i < (doughs != NULL ? n_doughs : figures->doughs->len); i++)
    add_dough (pages, figures, doughs != NULL ? doughs[i] : i, reader, size);

  return tr_pages_new_take (pages, dup_title (figures, doughs, n_doughs));
}
