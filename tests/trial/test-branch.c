/* test-branch.c: what is made of a dough can be kept in a file, and nothing that differs is passed over
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "calc/branch.h"
#include "calc/causes.h"
#include "calc/differences.h"
#include "sample.h"
#include "trial/members.h"

#define ROUNDS 60

static void
assert_valid (const TrTrial *trial)
{
  g_autoptr (GError) error = NULL;

  tr_trial_validate (trial, &error);
  g_assert_no_error (error);
}

/* Each remedy of each cause of a random dough. */
static void
check_remedies (const TrFigures *figures,
                guint            index)
{
  const TrDoughFigures *dough = tr_figures_get_dough (figures, index);

  for (guint complaint = 0; complaint < TR_N_COMPLAINTS; complaint++)
    {
      g_autoptr (GPtrArray) causes = tr_causes_find (dough, complaint);

      for (guint i = 0; i < causes->len; i++)
        {
          const TrCause *cause = causes->pdata[i];
          g_autoptr (TrTrial) draft = tr_trial_copy (figures->trial);
          g_autoptr (GError) error = NULL;
          TrDough *branch = tr_trial_branch_dough (draft, index, "branch");

          g_assert_true (isfinite (cause->reading.value) && isfinite (cause->limit));
          if (branch == NULL || cause->remedy.kind == TR_REMEDY_NONE)
            continue;
          g_assert_true (tr_remedy_apply (branch, dough, &cause->remedy, &error));
          g_assert_no_error (error);
          assert_valid (draft);

          g_autoptr (GPtrArray) differences = tr_dough_differences (dough->dough, branch);

          g_assert_cmpuint (differences->len, >, 0);
        }
    }
}

static void
test_remedies_change_something_and_leave_a_valid_trial (void)
{
  for (guint round = 0; round < ROUNDS; round++)
    {
      g_autoptr (TrTrial) trial = random_trial ();
      g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);

      for (guint i = 0; i < trial->doughs->len; i++)
        check_remedies (figures, i);
    }
}

static void
test_what_is_carried_is_a_valid_trial (void)
{
  for (guint round = 0; round < ROUNDS; round++)
    {
      g_autoptr (TrTrial) trial = random_trial ();
      g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
      g_auto (GStrv) chosen = NULL;

      for (guint i = 0; i < trial->doughs->len; i++)
        if (g_test_rand_bit ())
          g_strv_builder_add (builder, tr_trial_get_dough (trial, i)->id);
      chosen = g_strv_builder_end (builder);

      g_autoptr (TrTrial) next = tr_trial_carry (trial, (const char *const *) chosen, "next");

      g_assert_cmpuint (next->doughs->len, ==, g_strv_length (chosen));
      assert_valid (next);
    }
}

/* What the document can say of a dough *****************************************/

/* Changes that make no other bread. */
static gboolean
is_passed_over (const char *name)
{
  static const char *const names[] = { "id", "name", "from", "notes", "log", "group", "stage", "text", NULL };

  return g_strv_contains (names, name);
}

static void
change_member (gpointer        object,
               const TrMember *member)
{
  switch (member->type)
    {
    case TR_MEMBER_NUMBER: case TR_MEMBER_PAIR:
      *TR_AT (object, member, double) = isnan (*TR_AT (object, member, double)) ? 1 : *TR_AT (object, member, double) + 1;
      break;
    case TR_MEMBER_WHOLE: case TR_MEMBER_FLAG:
      *TR_AT (object, member, int) = *TR_AT (object, member, int) == member->none ? 1 : *TR_AT (object, member, int) + 1;
      break;
    case TR_MEMBER_WORD:
      *TR_AT (object, member, int) = *TR_AT (object, member, int) == 0 ? 1 : 0;
      break;
    case TR_MEMBER_TEXT:
      tr_set_text (TR_AT (object, member, char *), "another");
      break;
    default:
      g_error ("a member “%s” of a type this test does not know", member->name);
    }
}

/* Walks to the `wanted`-th member that holds a value, and changes it. Its
 * name; NULL: there are not so many. */
static const char *
change_nth (gpointer        object,
            const TrObject *type,
            guint          *wanted)
{
  for (guint i = 0; i < type->n_members; i++)
    {
      const TrMember *member = &type->members[i];
      const char *name = NULL;

      if (is_passed_over (member->name) && !(g_str_equal (member->name, "id") && member->type == TR_MEMBER_WORD))
        continue;
      if (member->type == TR_MEMBER_INSIDE)
        name = change_nth (object, member->object, wanted);
      else if (member->type == TR_MEMBER_OBJECT && *TR_AT (object, member, gpointer) != NULL)
        name = change_nth (*TR_AT (object, member, gpointer), member->object, wanted);
      else if (member->type == TR_MEMBER_LIST)
        for (guint k = 0; name == NULL && k < (*TR_AT (object, member, GPtrArray *))->len; k++)
          name = change_nth ((*TR_AT (object, member, GPtrArray *))->pdata[k], member->object, wanted);
      else if (member->type != TR_MEMBER_OBJECT && (*wanted)-- == 0)
        {
          change_member (object, member);
          name = member->name;
        }
      if (name != NULL)
        return name;
    }

  return NULL;
}

static void
test_no_member_of_a_dough_is_passed_over (void)
{
  g_autoptr (TrTrial) trial = sample_trial ();
  const TrDough *was = tr_trial_get_dough (trial, 0);
  guint n = 0;

  for (;; n++)
    {
      g_autoptr (TrDough) is = tr_dough_copy (was);
      guint wanted = n;
      const char *name = change_nth (is, &tr_dough_object, &wanted);

      if (name == NULL)
        break;

      g_autoptr (GPtrArray) differences = tr_dough_differences (was, is);

      if (differences->len == 0)
        g_error ("“%s” differs and is not found", name);
    }
  g_assert_cmpuint (n, >, 60);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/branch/remedies", test_remedies_change_something_and_leave_a_valid_trial);
  g_test_add_func ("/branch/carried", test_what_is_carried_is_a_valid_trial);
  g_test_add_func ("/branch/every-member", test_no_member_of_a_dough_is_passed_over);

  return g_test_run ();
}
