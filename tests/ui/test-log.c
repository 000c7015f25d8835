/* test-log.c: what happened is typed, and what it teaches is used
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every figure is invented; the sums are done here by hand.
 */

#include "config.h"

#include "page-fixture.h"
#include "window/entry-field.h"

static GtkWidget *
find_field (PageFixture *fixture,
            const char  *label)
{
  GtkWidget *entry = ui_find (GTK_WIDGET (fixture->page), GTK_TYPE_ENTRY, label);

  if (entry == NULL)
    g_error ("there is no field “%s”", label);

  return entry;
}

static void
type (PageFixture *fixture,
      const char  *label,
      const char  *text)
{
  ui_type (find_field (fixture, label), text);
  page_leave (fixture);
}

static const TrLog *
get_log (PageFixture *fixture)
{
  return tr_page_get_dough (fixture->page)->log;
}

/* What is typed is an entry ************************************************/

typedef struct
{
  const char *label, *typed;
  const char *pointer, *expected;          /* what is written */
  const char *at;                          /* its date */
  const char *of, *is;                     /* what the entry is of; NULL: it stands in its place */
  const char *undo;
} Typed;

static const Typed typed[] = {
  { "Proof: Time", "165", "/log/steps/0/minutes", "165", "/log/steps/0/at", "/log/steps/0/id", "\"proof\"", "write how long a step took" },
  { "Proof: At", "27.5", "/log/steps/0/at_c", "27.5", "/log/steps/0/at", "/log/steps/0/id", "\"proof\"", "write how warm a step was" },
  { "Proof: Humidity", "70", "/log/steps/0/rh_percent", "70", "/log/steps/0/at", "/log/steps/0/id", "\"proof\"", "write how humid a step was" },
  { "Mix: Time", "9", "/log/steps/0/minutes", "9", "/log/steps/0/at", "/log/steps/0/id", "\"mix\"", "write how long a step took" },
  { "Bake: Time", "19", "/log/steps/0/minutes", "19", "/log/steps/0/at", "/log/steps/0/id", "\"bake\"", "write how long a step took" },
  { "Chill before lock-in: Time", "50", "/log/rests/0/minutes", "50", "/log/rests/0/at", "/log/rests/0/turn", "0", "write how long a rest was" },
  { "After turn 1: Core", "9.5", "/log/rests/0/core_c", "9.5", "/log/rests/0/at", "/log/rests/0/turn", "1", "write how cold a rest made it" },
  { "Turn 2: Thickness", "7", "/log/sizes/0/thickness_mm", "7", "/log/sizes/0/at", "/log/sizes/0/turn", "2", "write what was rolled" },
  { "Turn 3: Width", "21 cm", "/log/sizes/0/width_mm", "210", "/log/sizes/0/at", "/log/sizes/0/turn", "3", "write what was rolled" },
  { "Sheet: Length", "600", "/log/sizes/0/length_mm", "600", "/log/sizes/0/at", "/log/sizes/0/turn", "0", "write what was rolled" },
  { "Sheet: Relaxed", "570", "/log/sizes/0/relaxed_mm", "570", "/log/sizes/0/at", "/log/sizes/0/turn", "0", "write how the sheet shrank" },
  { "Weighing 1: Mass", "46", "/log/cuts/0/mass_g", "46", "/log/cuts/0/at", NULL, NULL, "write what was weighed" },
  { "Weighing 1: Raw", "300", "/log/pieces/0/raw_g", "300", "/log/pieces/0/at", NULL, NULL, "write what was weighed" },
  { "Weighing 1: Pieces", "6", "/log/pieces/0/count", "6", "/log/pieces/0/at", NULL, NULL, "write what was weighed" },
  { "Weighing 1: Baked height", "55", "/log/pieces/0/baked_height_mm", "55", "/log/pieces/0/at", NULL, NULL, "write what was weighed" },
};

static void
assert_dated (PageFixture *fixture,
              const char  *pointer)
{
  g_autofree char *at = page_dup_value (fixture, pointer);

  g_assert_nonnull (at);
  g_assert_true (g_regex_match_simple ("^\"[0-9]{4}-[0-9]{2}-[0-9]{2}\"$", at, 0, 0));
}

/* Typed, taken back; typed, emptied: each time nothing is left. */
static void
test_an_entry_comes_and_goes (gconstpointer data)
{
  const Typed *row = data;
  PageFixture fixture;
  g_autofree char *before = NULL, *undone = NULL, *emptied = NULL;

  page_set_up (&fixture, tr_log_page_new, "d1");
  before = ui_dup_trial_text (fixture.document);
  type (&fixture, row->label, row->typed);
  page_assert_value (&fixture, row->pointer, row->expected);
  assert_dated (&fixture, row->at);
  if (row->of != NULL)
    page_assert_value (&fixture, row->of, row->is);
  g_assert_cmpstr (tr_document_get_undo_label (fixture.document), ==, row->undo);

  /* The way back to it, as a finding or an undo goes it. */
  g_assert_true (tr_page_go_to (fixture.page, row->pointer));
  g_assert_true (gtk_widget_is_ancestor (page_get_focus (&fixture), find_field (&fixture, row->label)));
  page_leave (&fixture);

  tr_document_undo (fixture.document);
  undone = ui_dup_trial_text (fixture.document);
  g_assert_cmpstr (undone, ==, before);
  g_assert_null (tr_document_get_undo_label (fixture.document));

  type (&fixture, row->label, row->typed);
  type (&fixture, row->label, "");
  emptied = ui_dup_trial_text (fixture.document);
  g_assert_cmpstr (emptied, ==, before);
  page_tear_down (&fixture);
}

/* Another number of the same step goes into the same entry, and it goes with its last. */
static void
test_a_step_has_one_entry (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_log_page_new, "d1");
  type (&fixture, "Bake: Time", "17");
  type (&fixture, "Proof: Time", "165");
  type (&fixture, "Proof: At", "27");
  g_assert_cmpuint (get_log (&fixture)->steps->len, ==, 2);
  page_assert_value (&fixture, "/log/steps/1/minutes", "165");
  page_assert_value (&fixture, "/log/steps/1/at_c", "27");
  type (&fixture, "Proof: Time", "");
  g_assert_cmpuint (get_log (&fixture)->steps->len, ==, 2);
  type (&fixture, "Proof: At", "");
  g_assert_cmpuint (get_log (&fixture)->steps->len, ==, 1);
  page_assert_value (&fixture, "/log/steps/0/minutes", "17");
  page_tear_down (&fixture);
}

static void
test_what_cannot_be_is_refused (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_log_page_new, "d1");
  type (&fixture, "Proof: Time", "long");
  g_assert_cmpuint (get_log (&fixture)->steps->len, ==, 0);
  g_assert_true (ui_says (GTK_WIDGET (fixture.page), "long"));
  type (&fixture, "Weighing 1: Mass", "-5");
  g_assert_cmpuint (get_log (&fixture)->cuts->len, ==, 0);
  g_assert_false (tr_document_is_modified (fixture.document));
  page_tear_down (&fixture);
}

/* Rows, and the way through them *******************************************/

static guint
count_mapped_fields (GtkWidget *root)
{
  guint n = TR_IS_ENTRY_FIELD (root) && gtk_widget_get_mapped (root) ? 1 : 0;

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    n += count_mapped_fields (child);

  return n;
}

/* The mix 2, proof and bake 3 each; two rests of 2; three turns of 3 and the sheet of 4;
 * a cut of 4 and pieces of 5: there is a field for what there is, and none besides. */
static void
test_no_rows_of_nothing (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_log_page_new, "d1");
  g_assert_cmpuint (count_mapped_fields (GTK_WIDGET (fixture.page)), ==, 8 + 4 + 13 + 4 + 5);
  type (&fixture, "Weighing 1: Mass", "46");
  g_assert_cmpuint (count_mapped_fields (GTK_WIDGET (fixture.page)), ==, 8 + 4 + 13 + 8 + 5);
  tr_document_undo (fixture.document);
  ui_settle ();
  g_assert_cmpuint (count_mapped_fields (GTK_WIDGET (fixture.page)), ==, 8 + 4 + 13 + 4 + 5);

  /* No turns and no rests: its sheet still. */
  tr_page_set_dough (fixture.page, "d2");
  ui_settle ();
  g_assert_cmpuint (count_mapped_fields (GTK_WIDGET (fixture.page)), ==, 6 + 4 + 4 + 5);
  page_tear_down (&fixture);
}

static void
assert_focused (PageFixture *fixture,
                const char  *label)
{
  GtkWidget *focus = page_get_focus (fixture);

  g_assert_nonnull (focus);
  g_assert_true (gtk_widget_is_ancestor (focus, find_field (fixture, label)));
}

static void
test_return_goes_on (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_log_page_new, "d1");
  ui_type (find_field (&fixture, "Proof: Time"), "165");
  g_signal_emit_by_name (find_field (&fixture, "Proof: Time"), "activate");
  assert_focused (&fixture, "Proof: At");
  ui_type (find_field (&fixture, "Proof: At"), "27");
  g_signal_emit_by_name (find_field (&fixture, "Proof: At"), "activate");
  assert_focused (&fixture, "Proof: Humidity");
  g_signal_emit_by_name (find_field (&fixture, "Proof: Humidity"), "activate");
  assert_focused (&fixture, "Bake: Time");

  /* What is not understood is not left behind. */
  ui_type (find_field (&fixture, "Bake: Time"), "long");
  g_signal_emit_by_name (find_field (&fixture, "Bake: Time"), "activate");
  assert_focused (&fixture, "Bake: Time");
  page_assert_value (&fixture, "/log/steps/0/at_c", "27");
  page_tear_down (&fixture);
}

/* Emptied to be typed anew, the first of three does not become the second. */
static void
test_weighings_keep_their_place (void)
{
  PageFixture fixture;

  page_set_up (&fixture, tr_log_page_new, "d1");
  type (&fixture, "Weighing 1: Raw", "100");
  type (&fixture, "Weighing 2: Raw", "200");
  type (&fixture, "Weighing 3: Raw", "300");
  ui_type (find_field (&fixture, "Weighing 1: Raw"), "");
  ui_settle ();
  ui_type (find_field (&fixture, "Weighing 1: Raw"), "150");
  page_leave (&fixture);
  page_assert_value (&fixture, "/log/pieces/0/raw_g", "150");
  page_assert_value (&fixture, "/log/pieces/1/raw_g", "200");
  page_assert_value (&fixture, "/log/pieces/2/raw_g", "300");

  /* At the end they go, and with the last the empty ones before it. */
  type (&fixture, "Weighing 2: Raw", "");
  g_assert_cmpuint (get_log (&fixture)->pieces->len, ==, 3);
  type (&fixture, "Weighing 3: Raw", "");
  g_assert_cmpuint (get_log (&fixture)->pieces->len, ==, 1);
  page_assert_value (&fixture, "/log/pieces/0/raw_g", "150");
  page_tear_down (&fixture);
}

/* Another bake leaves the first as it was, and is one step back. */
static void
test_another_bake (void)
{
  PageFixture fixture;
  GtkWidget *again;

  page_set_up (&fixture, tr_log_page_new, "d1");
  g_assert_null (ui_find (GTK_WIDGET (fixture.page), GTK_TYPE_BUTTON, "Log another bake"));
  type (&fixture, "Proof: Time", "165");
  type (&fixture, "After turn 1: Core", "9.5");
  type (&fixture, "Sheet: Length", "600");
  g_autofree char *first = ui_dup_trial_text (fixture.document), *back = NULL;

  again = ui_find (GTK_WIDGET (fixture.page), GTK_TYPE_BUTTON, "Log another bake");
  g_assert_nonnull (again);
  g_signal_emit_by_name (again, "clicked");
  ui_settle ();
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (find_field (&fixture, "Proof: Time"))), ==, "");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (find_field (&fixture, "Sheet: Length"))), ==, "");
  /* There is nothing yet to begin again from. */
  g_assert_false (gtk_widget_get_visible (again));
  g_assert_cmpstr (tr_document_get_undo_label (fixture.document), ==, "log another bake");
  tr_document_undo (fixture.document);
  back = ui_dup_trial_text (fixture.document);
  g_assert_cmpstr (back, ==, first);

  g_signal_emit_by_name (again, "clicked");
  type (&fixture, "Proof: Time", "180");
  page_assert_value (&fixture, "/log/steps/0/minutes", "165");
  page_assert_value (&fixture, "/log/steps/1/minutes", "180");
  page_assert_value (&fixture, "/log/rests/0/core_c", "9.5");
  page_assert_value (&fixture, "/log/sizes/0/length_mm", "600");
  page_tear_down (&fixture);
}

/* What it teaches **********************************************************/

typedef struct
{
  const char *name;
  const char *typed[20];         /* a field, a text, … */
  const char *says[3];
  const char *use, *undo;
  const char *pointer, *expected;
} Offer;

static const Offer offers[] = {
  { "shrink", { "Sheet: Length", "600", "Sheet: Relaxed", "570" },
    { "The sheet relaxed from 600 mm to 570 mm: it shrinks by 5 %." }, "Use 5 %", "use how the sheet shrank",
    "/cut/shrink_percent", "5" },
  /* 45 g of 400 g, 11.25 %, to a tenth */
  { "loss", { "Weighing 1: Raw", "100", "Weighing 1: Baked", "90", "Weighing 2: Raw", "300", "Weighing 2: Baked", "265" },
    { "2 weighings, 400 g raw and 355 g baked together:", "One by one 10 % to 11.7 %.", "None is written so far." },
    "Use 11.3 %", "use the loss of the weighed pieces", "/bake_loss_percent", "11.3" },
  { "loss-the-wrong-way", { "Weighing 1: Raw", "100", "Weighing 1: Baked", "110" },
    { "1 measurement cannot be and is left out; look at it again." }, NULL, NULL, NULL, NULL },
  { "one-number-is-no-loss", { "Weighing 1: Raw", "100" }, { NULL }, NULL, NULL, NULL, NULL },
};

/* The one button that uses what was learned. NULL: none is shown. */
static GtkWidget *
find_use (GtkWidget *root)
{
  if (!gtk_widget_get_mapped (root))
    return NULL;
  if (GTK_IS_BUTTON (root) && g_str_has_prefix (gtk_button_get_label (GTK_BUTTON (root)), "Use "))
    return root;

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_use (child);

      if (found != NULL)
        return found;
    }

  return NULL;
}

/* Its no-break spaces are spaces. */
static void
assert_plain (const char *text,
              const char *expected)
{
  g_auto (GStrv) parts = g_strsplit (text, "\u00a0", -1);
  g_autofree char *plain = g_strjoinv (" ", parts);

  g_assert_cmpstr (plain, ==, expected);
}

static void
test_an_offer (gconstpointer data)
{
  const Offer *row = data;
  PageFixture fixture;
  GtkWidget *use;

  page_set_up (&fixture, tr_log_page_new, "d1");
  for (guint i = 0; row->typed[i] != NULL; i += 2)
    type (&fixture, row->typed[i], row->typed[i + 1]);
  for (guint i = 0; i < G_N_ELEMENTS (row->says) && row->says[i] != NULL; i++)
    if (!ui_says (GTK_WIDGET (fixture.page), row->says[i]))
      g_error ("it does not say “%s”", row->says[i]);
  if (row->use == NULL)
    {
      g_assert_null (find_use (GTK_WIDGET (fixture.page)));
      page_tear_down (&fixture);
      return;
    }

  g_autofree char *before = ui_dup_trial_text (fixture.document), *after = NULL;

  use = find_use (GTK_WIDGET (fixture.page));
  g_assert_nonnull (use);
  assert_plain (gtk_button_get_label (GTK_BUTTON (use)), row->use);
  g_signal_emit_by_name (use, "clicked");
  ui_settle ();
  page_assert_value (&fixture, row->pointer, row->expected);
  g_assert_true (ui_says (GTK_WIDGET (fixture.page), "That is in use."));
  g_assert_false (gtk_widget_get_mapped (use));
  g_assert_cmpstr (tr_document_get_undo_label (fixture.document), ==, row->undo);
  tr_document_undo (fixture.document);
  after = ui_dup_trial_text (fixture.document);
  g_assert_cmpstr (after, ==, before);
  page_tear_down (&fixture);
}

/* Two cuts of 50 ml each, 106 g: the sheet of the dough then has 1.06 g/ml. */
static void
test_density_of_two_cuts (void)
{
  static const char *const cuts[2][4] = { { "100", "100", "5", "50" }, { "200", "100", "2.5", "56" } };
  static const char *const members[] = { "Length", "Width", "Thickness", "Mass" };
  PageFixture fixture;
  GtkWidget *use;

  page_set_up (&fixture, tr_log_page_new, "d1");
  for (guint c = 0; c < 2; c++)
    for (guint m = 0; m < 4; m++)
      {
        g_autofree char *label = g_strdup_printf ("Weighing %u: %s", c + 1, members[m]);

        type (&fixture, label, cuts[c][m]);
      }
  g_assert_true (ui_says (GTK_WIDGET (fixture.page), "2 weighed cuts, 106 g of 100 ml together"));
  use = find_use (GTK_WIDGET (fixture.page));
  g_assert_nonnull (use);
  g_signal_emit_by_name (use, "clicked");
  ui_settle ();

  /* To what a density is rounded to. */
  g_assert_cmpfloat_with_epsilon (tr_page_get_figures (fixture.page)->lamination.mix_density_g_ml, 1.06, 0.0026);
  g_assert_cmpstr (tr_document_get_undo_label (fixture.document), ==, "use the density of the weighed cuts");
  tr_document_undo (fixture.document);
  g_assert_cmpfloat_with_epsilon (tr_page_get_dough (fixture.page)->dough_density_g_ml, 1.15, 1e-12);
  page_tear_down (&fixture);
}

/* Mixes before the last ****************************************************/

static void
add_mix (PageFixture *fixture,
         const char  *at,
         double       dough_c)
{
  TrTrial *draft = tr_document_draft (fixture->document);
  TrMix *mix = tr_mix_new ();
  g_autoptr (GError) error = NULL;

  tr_set_text (&mix->at, at);
  mix->dough_c = dough_c;
  mix->flour_c = 20;
  mix->room_c = 21;
  mix->liquid_c = 12;
  g_ptr_array_add (tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (fixture->page))->log->mixes, mix);
  tr_document_commit (fixture->document, draft, "log", NULL, "/doughs/1/log/mixes", &error);
  g_assert_no_error (error);
}

/* 3 × 23 - 20 - 21 - 12 = 16 and 3 × 24 - 53 = 19. */
static void
test_earlier_mixes (void)
{
  PageFixture fixture;
  GtkWidget *page;

  page_set_up (&fixture, tr_method_page_new, "d2");
  page = GTK_WIDGET (fixture.page);
  add_mix (&fixture, "2027-03-07", 23);
  ui_settle ();
  g_assert_false (ui_says (page, "2027-03-07"));
  g_assert_true (ui_says (page, "the friction is 16.0 °C over 3 temperatures"));
  add_mix (&fixture, "2027-03-14", 24);
  add_mix (&fixture, "2027-03-21", 17);
  ui_settle ();
  g_assert_true (ui_says (page, "2027-03-07: out at 23 °C, friction 16.0 °C over 3 temperatures"));
  g_assert_true (ui_says (page, "2027-03-14: out at 24 °C, friction 19.0 °C over 3 temperatures"));

  /* 51 against the 53 that went in. */
  g_assert_true (ui_says (page, "colder than what went in"));
  g_assert_null (ui_find (page, GTK_TYPE_BUTTON, "Use friction -2.0\u00a0°C"));

  /* The bad one goes, then the oldest; each comes back. */
  g_signal_emit_by_name (ui_find (page, GTK_TYPE_BUTTON, "Remove this mix"), "clicked");
  ui_settle ();
  page_assert_value (&fixture, "/log/mixes/1/at", "\"2027-03-14\"");
  g_assert_cmpuint (get_log (&fixture)->mixes->len, ==, 2);
  g_assert_true (ui_says (page, "the friction is 19.0 °C over 3 temperatures"));
  g_assert_false (ui_says (page, "2027-03-14: out"));
  g_signal_emit_by_name (ui_find (page, GTK_TYPE_BUTTON, "Remove the mix of 2027-03-07: out at 23\u00a0°C, friction 16.0\u00a0°C over 3 temperatures"), "clicked");
  ui_settle ();
  g_assert_cmpuint (get_log (&fixture)->mixes->len, ==, 1);
  page_assert_value (&fixture, "/log/mixes/0/at", "\"2027-03-14\"");
  g_assert_cmpstr (tr_document_get_undo_label (fixture.document), ==, "take a mix out of the log");
  tr_document_undo (fixture.document);
  tr_document_undo (fixture.document);
  g_assert_cmpuint (get_log (&fixture)->mixes->len, ==, 3);
  page_tear_down (&fixture);
}

/* Ways there ***************************************************************/

static void
test_ways_there (void)
{
  static const char *const there[] = { "/log", "/log/steps", "/log/rests", "/log/sizes", "/log/cuts", "/log/pieces", "/log/notes" };
  PageFixture fixture;

  page_set_up (&fixture, tr_log_page_new, "d1");
  for (guint i = 0; i < G_N_ELEMENTS (there); i++)
    {
      page_leave (&fixture);
      g_test_message ("%s", there[i]);
      g_assert_true (tr_page_go_to (fixture.page, there[i]));
      g_assert_true (gtk_widget_is_ancestor (page_get_focus (&fixture), GTK_WIDGET (fixture.page)));
      g_assert_true (gtk_widget_get_mapped (page_get_focus (&fixture)));
    }
  page_leave (&fixture);
  g_assert_false (tr_page_go_to (fixture.page, "/log/mixes/0/dough_c"));
  g_assert_false (tr_page_go_to (fixture.page, "/method/steps/0/minutes"));

  /* A dough without turns, lock-in and steps still has something to write. */
  tr_page_set_dough (fixture.page, "d2");
  ui_settle ();
  g_assert_true (tr_page_go_to (fixture.page, "/log/steps"));
  page_leave (&fixture);
  g_assert_false (tr_page_go_to (fixture.page, "/log/rests"));
  page_tear_down (&fixture);
}

/* In the window: whichever page is shown. */
static void
test_window_finds_the_log (UiFixture     *fixture,
                           gconstpointer  data)
{
  ui_act (fixture->window, "win.go-formula");
  ui_act_on (fixture->window, "win.go-to", "/log/steps");
  ui_settle ();

  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (fixture->window));

  g_assert_nonnull (focus);
  g_assert_true (gtk_widget_get_mapped (focus));
  while (focus != NULL && !TR_IS_PAGE (focus))
    focus = gtk_widget_get_parent (focus);
  g_assert_cmpstr (G_OBJECT_TYPE_NAME (focus), ==, "TrLogPage");
}

/* The usual steps **********************************************************/

static void
test_usual_steps (void)
{
  PageFixture fixture;
  GtkWidget *fill;

  page_set_up (&fixture, tr_method_page_new, "d1");
  g_autofree char *before = ui_dup_trial_text (fixture.document), *filled = NULL, *again = NULL, *after = NULL;

  fill = ui_find (GTK_WIDGET (fixture.page), GTK_TYPE_BUTTON, "Fill in the usual steps");
  g_assert_nonnull (fill);
  g_signal_emit_by_name (fill, "clicked");
  ui_settle ();
  filled = ui_dup_trial_text (fixture.document);
  g_assert_cmpfloat_with_epsilon (tr_dough_find_step (tr_page_get_dough (fixture.page), TR_STEP_MIX)->minutes, 12, 1e-12);
  g_assert_cmpfloat_with_epsilon (tr_dough_find_step (tr_page_get_dough (fixture.page), TR_STEP_PROOF)->minutes, 150, 1e-12);
  g_assert_nonnull (tr_dough_find_step (tr_page_get_dough (fixture.page), TR_STEP_RIPEN));
  g_assert_nonnull (tr_dough_find_step (tr_page_get_dough (fixture.page), TR_STEP_COOL));
  g_assert_cmpstr (tr_document_get_undo_label (fixture.document), ==, "fill in the usual steps");

  g_signal_emit_by_name (fill, "clicked");
  ui_settle ();
  again = ui_dup_trial_text (fixture.document);
  g_assert_cmpstr (again, ==, filled);
  tr_document_undo (fixture.document);
  after = ui_dup_trial_text (fixture.document);
  g_assert_cmpstr (after, ==, before);
  g_assert_null (tr_document_get_undo_label (fixture.document));
  page_tear_down (&fixture);
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;

  for (guint i = 0; i < G_N_ELEMENTS (typed); i++)
    {
      g_autofree char *path = g_strdup_printf ("/log/an-entry-comes-and-goes/%s", typed[i].label);

      g_test_add_data_func (g_strdelimit (g_strdelimit (path, " ", '-'), ":", '-'), &typed[i], test_an_entry_comes_and_goes);
    }
  g_test_add_func ("/log/a-step-has-one-entry", test_a_step_has_one_entry);
  g_test_add_func ("/log/what-cannot-be-is-refused", test_what_cannot_be_is_refused);
  g_test_add_func ("/log/no-rows-of-nothing", test_no_rows_of_nothing);
  g_test_add_func ("/log/another-bake", test_another_bake);
  g_test_add_func ("/log/return-goes-on", test_return_goes_on);
  g_test_add_func ("/log/weighings-keep-their-place", test_weighings_keep_their_place);
  for (guint i = 0; i < G_N_ELEMENTS (offers); i++)
    {
      g_autofree char *path = g_strdup_printf ("/log/an-offer/%s", offers[i].name);

      g_test_add_data_func (path, &offers[i], test_an_offer);
    }
  g_test_add_func ("/log/density-of-two-cuts", test_density_of_two_cuts);
  g_test_add_func ("/log/earlier-mixes", test_earlier_mixes);
  g_test_add_func ("/log/ways-there", test_ways_there);
  g_test_add_func ("/log/usual-steps", test_usual_steps);
  UI_ADD ("/log/window-finds-it", test_window_finds_the_log);

  return ui_run ();
}
