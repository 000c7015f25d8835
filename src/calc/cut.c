/* cut.c: the sheet and the pieces cut from it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How large the sheet must be for so many pieces, or how many pieces a given
 * mass makes; which of the possible ways fits the bench best. Sizes are those
 * of the relaxed sheet, [along a row, across]; only `rolled_mm` is what it is
 * rolled to before it shrinks.
 *
 * Not here: from which block the sheet is rolled (lamination.c), where each piece
 * lies (outline.c).
 */

#include "cut.h"

#include "lamination.h"
#include "measure.h"
#include "shape.h"

#define MAX_ROWS 12
#define MAX_SHEETS 12
#define MAX_LAYOUTS (MAX_ROWS * MAX_SHEETS)
#define MAX_ON_A_SHEET 1e6              /* more is a slip of the pen, and no bench */
#define SCRAP_ALIKE_PERCENT 2.0         /* scrap that is as good as the least */
#define WORTH_A_SHEET 0.02              /* share of pieces that each further sheet must bring */

/* What is asked: so many pieces, or (wanted NaN) a mass. */
typedef struct {
  const TrCut *cut;
  const TrBench *bench;
  double wanted;
  double net_mm3;
  double thickness_mm, density_g_ml;
  int blocks;
} Question;

/* One way of cutting. */
typedef struct {
  int rows, per_row, sheets;
  gboolean hexagonal, rotated;
  double length_mm, width_mm;
  TrBreaks breaks;
  double pieces, spare, scrap_percent;
} Layout;

/* Sheet and bench */

static double
share_kept_by_shrinking (const TrCut *cut)
{
  return 1 - cut->shrink_percent / 100;
}

static TrSize
size_before_shrinking (const TrCut *cut,
                       double       length_mm,
                       double       width_mm,
                       double       thickness_mm)
{
  double kept = share_kept_by_shrinking (cut);

  return (TrSize) { { length_mm / kept, width_mm, thickness_mm * kept } };
}

static gboolean
can_answer (const Question *q)
{
  return tr_is_positive (tr_cut_piece_area_mm2 (q->cut)) && tr_is_positive (q->thickness_mm)
         && tr_is_positive (q->density_g_ml) && tr_is_positive (share_kept_by_shrinking (q->cut))
         && (tr_is_positive (q->wanted) || tr_is_positive (q->net_mm3));
}

static Question
ask (const TrDough *dough,
     const TrBench *bench,
     double         density_g_ml,
     double         total_g)
{
  const TrCut *cut = dough->cut;
  gboolean by_pieces = dough->batch_by == TR_BATCH_PIECES;
  double net_g = total_g * (1 - dough->handling_loss_percent / 100);

  return (Question) {
    .cut = cut,
    .bench = bench,
    .wanted = by_pieces ? ceil (dough->batch_value - TR_HAIR) : NAN,
    .net_mm3 = by_pieces ? NAN : net_g / density_g_ml * TR_MM3_PER_ML,
    .thickness_mm = tr_is_written (cut->piece_mass_g)
                      ? cut->piece_mass_g / density_g_ml * TR_MM3_PER_ML / tr_cut_piece_area_mm2 (cut)
                      : cut->thickness_mm,
    .density_g_ml = density_g_ml,
    .blocks = dough->lock_in != NULL ? MAX (dough->lock_in->blocks, 1) : 1,
  };
}

/* Sizes of a layout whose rows and sheets are set: for the pieces wanted, or
 * from the mass, all of which is rolled. FALSE: not one piece. */
static gboolean
size_layout (const Question *q,
             gboolean        hexagonal,
             Layout         *layout)
{
  double trims = 2 * q->cut->trim_mm;
  double per_row;

  layout->hexagonal = hexagonal;
  layout->width_mm = tr_shape_rows_width (q->cut, layout->rows, hexagonal) + trims;
  if (isnan (q->wanted))
    {
      layout->length_mm = q->net_mm3 / q->thickness_mm / layout->sheets / layout->width_mm;
      per_row = tr_shape_count_in_row (q->cut, layout->length_mm - trims, hexagonal);
    }
  else
    {
      per_row = tr_shape_complete_row (q->cut, ceil (ceil (q->wanted / layout->sheets) / layout->rows));
      layout->length_mm = tr_shape_row_length (q->cut, per_row, hexagonal) + trims;
    }
  if (!(per_row >= 1 && per_row * layout->rows <= MAX_ON_A_SHEET))
    return FALSE;

  layout->per_row = (int) per_row;
  layout->pieces = (double) layout->sheets * layout->rows * layout->per_row;

  TrSize rolled = size_before_shrinking (q->cut, layout->length_mm, layout->width_mm, q->thickness_mm);

  layout->breaks = tr_bench_check_sheet (q->bench, &rolled, &layout->rotated);

  return TRUE;
}

/* What is staggered is narrower and longer, and may fit where straight rows do not. */
static gboolean
gives_more (const Layout *staggered,
            const Layout *straight)
{
  return staggered->per_row > straight->per_row
         || (staggered->per_row == straight->per_row && tr_breaks_count (staggered->breaks) < tr_breaks_count (straight->breaks));
}

/* Round pieces in staggered rows, if that needs less, or gives more. */
static void
stagger_if_better (const Question *q,
                   gboolean       *is_possible,
                   Layout         *layout)
{
  Layout staggered = *layout;
  double trims = 2 * q->cut->trim_mm;

  if (q->cut->shape != TR_SHAPE_ROUND || layout->rows < 2 || !size_layout (q, TRUE, &staggered))
    return;

  double needs = (staggered.length_mm - trims) * (staggered.width_mm - trims);
  double straight_needs = (layout->length_mm - trims) * (layout->width_mm - trims);
  gboolean is_better = isnan (q->wanted) ? gives_more (&staggered, layout)
                                         : needs < straight_needs * (1 - TR_HAIR);

  if (*is_possible && !is_better)
    return;
  *layout = staggered;
  *is_possible = TRUE;
}

static gboolean
lay_out (const Question *q,
         int             rows,
         int             sheets,
         Layout         *layout)
{
  *layout = (Layout) { .rows = rows, .sheets = sheets };

  gboolean is_possible = size_layout (q, FALSE, layout);

  stagger_if_better (q, &is_possible, layout);
  if (!is_possible)
    return FALSE;

  double sheets_mm2 = sheets * layout->length_mm * layout->width_mm;

  layout->spare = layout->pieces - q->wanted;
  layout->scrap_percent = 100 * (1 - layout->pieces * tr_cut_piece_area_mm2 (q->cut) / sheets_mm2);

  return TRUE;
}

/* Choosing */

typedef double (*LayoutKey) (const Layout *layout);

static double key_broken (const Layout *l) { return tr_breaks_count (l->breaks); }
static double key_sheets (const Layout *l) { return l->sheets; }
static double key_spare (const Layout *l) { return l->spare; }
static double key_fewer (const Layout *l) { return -l->pieces; }
static double key_scrap (const Layout *l) { return l->scrap_percent; }
static double key_longer_side (const Layout *l) { return fmax (l->length_mm, l->width_mm); }

/* Keeps the layouts whose key is at most `slack` over the least, in their
 * order. Returns how many. */
static guint
keep_least (Layout    *layouts,
            guint      n,
            LayoutKey  key,
            double     slack)
{
  double least = G_MAXDOUBLE;
  guint kept = 0;

  for (guint i = 0; i < n; i++)
    least = fmin (least, key (&layouts[i]));
  for (guint i = 0; i < n; i++)
    if (key (&layouts[i]) <= least + slack)
      layouts[kept++] = layouts[i];

  return kept;
}

static double
most_pieces_of (const Layout *layouts,
                guint         n,
                int           sheets)
{
  double most = 0;

  for (guint i = 0; i < n; i++)
    if (layouts[i].sheets == sheets)
      most = fmax (most, layouts[i].pieces);

  return most;
}

/* Mass given: the number of sheets that gives most pieces, where each further
 * one must be worth it. */
static guint
keep_worthwhile_sheets (Layout *layouts,
                        guint   n,
                        int     most_sheets)
{
  int best = 0;
  guint kept = 0;

  for (int sheets = 1; sheets <= most_sheets; sheets++)
    {
      double pieces = most_pieces_of (layouts, n, sheets);

      double worth = most_pieces_of (layouts, n, best) * (1 + WORTH_A_SHEET * (sheets - best));

      if (pieces > 0 && pieces >= worth - TR_HAIR)
        best = sheets;
    }
  for (guint i = 0; i < n; i++)
    if (layouts[i].sheets == best)
      layouts[kept++] = layouts[i];

  return kept;
}

static int
most_sheets (const Question *q)
{
  return MAX (MAX_SHEETS / q->blocks, 1) * q->blocks;
}

/* Rows that are written are kept. */
static int
first_rows (const TrCut *cut)
{
  return cut->rows > 0 ? cut->rows : 1;
}

static int
last_rows (const TrCut *cut)
{
  return cut->rows > 0 ? cut->rows : MAX_ROWS;
}

static guint
list_layouts (const Question *q,
              Layout          layouts[MAX_LAYOUTS])
{
  int first = first_rows (q->cut), last = last_rows (q->cut);
  guint n = 0;

  for (int sheets = q->blocks; sheets <= most_sheets (q); sheets += q->blocks)
    for (int rows = first; rows <= last; rows++)
      if (lay_out (q, rows, sheets, &layouts[n]))
        n++;

  return n;
}

/* Leaves the best first. */
static void
choose_layout (const Question *q,
               Layout         *layouts,
               guint           n)
{
  n = keep_least (layouts, n, key_broken, 0);
  if (isnan (q->wanted))
    {
      n = keep_worthwhile_sheets (layouts, n, most_sheets (q));
      n = keep_least (layouts, n, key_fewer, 0);
    }
  else
    {
      n = keep_least (layouts, n, key_sheets, 0);
      n = keep_least (layouts, n, key_spare, 0);
    }
  n = keep_least (layouts, n, key_scrap, SCRAP_ALIKE_PERCENT + TR_HAIR);
  keep_least (layouts, n, key_longer_side, TR_HAIR);
}

static int
compare_keys (const Layout    *a,
              const Layout    *b,
              const LayoutKey *keys,
              guint            n_keys)
{
  for (guint i = 0; i < n_keys; i++)
    {
      double difference = keys[i] (a) - keys[i] (b);

      if (fabs (difference) > TR_HAIR)
        return difference < 0 ? -1 : 1;
    }

  return a->rows - b->rows;
}

/* The chosen one (user_data) first, then as they would be chosen. */
static int
compare_alternatives (gconstpointer a,
                      gconstpointer b,
                      gpointer      user_data)
{
  static const LayoutKey for_pieces[] = { key_sheets, key_spare, key_scrap, key_longer_side };
  static const LayoutKey for_mass[] = { key_fewer, key_sheets, key_scrap, key_longer_side };
  const Layout *chosen = user_data, *first = a, *second = b;
  gboolean is_first = first->rows == chosen->rows && first->sheets == chosen->sheets;
  gboolean is_second = second->rows == chosen->rows && second->sheets == chosen->sheets;

  if (is_first != is_second)
    return is_first ? -1 : 1;

  return compare_keys (first, second, isnan (chosen->spare) ? for_mass : for_pieces, 4);
}

static void
list_alternatives (Layout       *layouts,
                   guint         n,
                   const Layout *chosen,
                   TrSheet      *sheet)
{
  g_qsort_with_data (layouts, (int) n, sizeof *layouts, compare_alternatives, (gpointer) chosen);
  for (guint i = 0; i < n && sheet->n_alternatives < TR_MAX_ALTERNATIVES; i++)
    if (layouts[i].breaks == 0)
      sheet->alternatives[sheet->n_alternatives++] = (TrAlternative) {
        .rows = layouts[i].rows,
        .per_row = layouts[i].per_row,
        .sheets = layouts[i].sheets,
        .length_mm = layouts[i].length_mm,
        .width_mm = layouts[i].width_mm,
        .pieces_cut = layouts[i].pieces,
        .scrap_percent = layouts[i].scrap_percent,
        .rotated = layouts[i].rotated,
        .hexagonal = layouts[i].hexagonal,
      };
}

/* What is made of a piece */

/* The side that is rolled up; NaN: a round piece has none. */
static double
rolled_up_side (const TrCut *cut)
{
  double along, across;

  tr_shape_get_sides (cut, &along, &across);

  return cut->shape == TR_SHAPE_ROUND ? NAN : across;
}

/* L = h(1 + e), t = T/(1 + e): a spiral without a core covers L·t = π(nt)². */
double
tr_cut_count_windings (const TrCut *cut,
                       double       thickness_mm,
                       double      *diameter_mm)
{
  double stretched = 1 + cut->stretch_percent / 100;
  double length = rolled_up_side (cut) * stretched;
  double thickness = thickness_mm / stretched;
  double windings = sqrt (length / (G_PI * thickness));

  *diameter_mm = 2 * windings * thickness;

  return windings;
}

static void
roll_pieces_up (const TrCut *cut,
                double       fat_layers,
                TrSheet     *sheet)
{
  sheet->windings = sheet->diameter_mm = sheet->layers_across = NAN;
  if (!tr_cut_is_rolled_up (cut))
    return;

  sheet->windings = tr_cut_count_windings (cut, sheet->thickness_mm, &sheet->diameter_mm);
  sheet->layers_across = 2 * sheet->windings * fat_layers;
}

/* What a piece stands on, and how high it is. A slice lies on the face it was
 * cut at; its log is rolled whether or not that is written. */
static TrSize
find_footprint (const TrCut   *cut,
                const TrSheet *sheet)
{
  double along, across, diameter;

  tr_shape_get_sides (cut, &along, &across);
  if (cut->shape == TR_SHAPE_SLICES)
    {
      tr_cut_count_windings (cut, sheet->thickness_mm, &diameter);
      return (TrSize) { { diameter, diameter, along } };
    }
  if (tr_is_positive (sheet->diameter_mm))
    return (TrSize) { { along, sheet->diameter_mm, sheet->diameter_mm } };

  return (TrSize) { { along, across, sheet->thickness_mm } };
}

static double
count_on_tray (const TrBench *bench,
               double         along_mm,
               double         across_mm)
{
  double gap = bench->piece_gap_mm;

  return floor (bench->tray_mm[0] / (along_mm + gap) + TR_HAIR)
         * floor (bench->tray_mm[1] / (across_mm + gap) + TR_HAIR);
}

static void
fill_trays (const TrCut   *cut,
            const TrBench *bench,
            TrSheet       *sheet)
{
  TrTrays *trays = &sheet->trays;
  const double *foot;

  trays->footprint_mm = find_footprint (cut, sheet);
  foot = trays->footprint_mm.mm;
  trays->per_tray = fmax (count_on_tray (bench, foot[0], foot[1]), count_on_tray (bench, foot[1], foot[0]));
  trays->trays = trays->per_tray >= 1 ? ceil (sheet->pieces_cut / trays->per_tray) : NAN;
  trays->loads = bench->trays_in_oven >= 1 ? ceil (trays->trays / bench->trays_in_oven) : NAN;
}

static void
fill_sheet (const Question *q,
            const Layout   *layout,
            double          fat_layers,
            TrSheet        *sheet)
{
  const double *printed = q->cut->printed_sheet_mm;

  sheet->rows = layout->rows;
  sheet->per_row = layout->per_row;
  sheet->sheets = layout->sheets;
  sheet->length_mm = layout->length_mm;
  sheet->width_mm = layout->width_mm;
  sheet->thickness_mm = q->thickness_mm;
  sheet->rolled_mm = size_before_shrinking (q->cut, layout->length_mm, layout->width_mm, q->thickness_mm);
  sheet->mass_g = layout->length_mm * layout->width_mm * q->thickness_mm / TR_MM3_PER_ML * q->density_g_ml;
  sheet->pieces_cut = layout->pieces;
  sheet->wanted = q->wanted;
  sheet->spare_pieces = layout->spare;
  sheet->scrap_percent = layout->scrap_percent;
  sheet->printed_thickness_mm = sheet->mass_g / q->density_g_ml * TR_MM3_PER_ML / (printed[0] * printed[1]);
  sheet->breaks = layout->breaks;
  sheet->piece_area_mm2 = tr_cut_piece_area_mm2 (q->cut);
  sheet->hexagonal = layout->hexagonal;
  roll_pieces_up (q->cut, fat_layers, sheet);
  fill_trays (q->cut, q->bench, sheet);
}

gboolean
tr_sheet_compute (const TrDough *dough,
                  const TrBench *bench,
                  double         density_g_ml,
                  double         total_g,
                  double         fat_layers,
                  TrSheet       *sheet)
{
  g_return_val_if_fail (dough->cut != NULL, FALSE);

  Question q = ask (dough, bench, density_g_ml, total_g);
  Layout layouts[MAX_LAYOUTS], possible[MAX_LAYOUTS];

  *sheet = (TrSheet) { 0 };
  if (!can_answer (&q))
    return FALSE;

  guint n = list_layouts (&q, layouts);
  if (n == 0)
    return FALSE;

  memcpy (possible, layouts, n * sizeof *layouts);
  choose_layout (&q, layouts, n);
  fill_sheet (&q, &layouts[0], fat_layers, sheet);
  list_alternatives (possible, n, &layouts[0], sheet);

  return TRUE;
}

double
tr_cut_smallest_g (const TrDough *dough,
                   double         density_g_ml)
{
  Question q = ask (dough, NULL, density_g_ml, NAN);
  double trims = 2 * q.cut->trim_mm;
  int rows = first_rows (q.cut);
  double length = tr_shape_row_length (q.cut, tr_shape_complete_row (q.cut, 1), FALSE) + trims;
  double width = tr_shape_rows_width (q.cut, rows, FALSE) + trims;

  return q.blocks * length * width * q.thickness_mm / TR_MM3_PER_ML * density_g_ml;
}

int
tr_cut_sheets_that_fit (const TrDough *dough,
                        const TrBench *bench,
                        double         density_g_ml,
                        double         total_g)
{
  const TrBreaks sizes = TR_BREAK_WORKTOP_LENGTH | TR_BREAK_WORKTOP_WIDTH | TR_BREAK_ROLL_WIDTH;
  Question q = ask (dough, bench, density_g_ml, total_g);
  Layout layout;

  if (!can_answer (&q))
    return 0;

  for (int sheets = q.blocks; sheets <= TR_MAX_SHEETS_TRIED; sheets += q.blocks)
    for (int rows = first_rows (q.cut); rows <= last_rows (q.cut); rows++)
      if (lay_out (&q, rows, sheets, &layout) && (layout.breaks & sizes) == 0)
        return sheets;

  return 0;
}
