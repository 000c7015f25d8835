/* cause.c: what the tasters found, what points there, and what would mend it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "Fat pooled, three of four tasters: proof at 31 °C; this butter should stay
 * at 28 °C or less." Never the second half without its number.
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "cause.h"
#include "say.h"

/* Of minutes a limit is said as the remedy sets it, inside what is usual. */
#define RISE_STEP_MINUTES 5.0

typedef struct {
  const TrReader *reader;
  const TrDoughFigures *figures;
  const TrCause *cause;
  char *value, *low, *high;      /* the end that is passed does not look like the value */
} TrSaidCause;

/* Complaints ******************************************************************/

static const char *
name_of (guint complaint)
{
  if (complaint < TR_N_FAULTS)
    return tr_words_fault ((TrFault) complaint);

  switch ((int) complaint)
    {
    case TR_COMPLAINT_SALT_LITTLE: return _("Not salty enough");
    case TR_COMPLAINT_SALT_MUCH: return _("Too salty");
    case TR_COMPLAINT_SWEET_LITTLE: return _("Not sweet enough");
    case TR_COMPLAINT_SWEET_MUCH: return _("Too sweet");
    case TR_COMPLAINT_BAKE_LITTLE: return _("Baked too little");
    case TR_COMPLAINT_BAKE_MUCH: return _("Baked too much");
    default: g_return_val_if_reached ("");
    }
}

static char *
count_tasters (const TrReader    *reader,
               const TrComplaint *complaint)
{
  g_autofree char *n = tr_say_small_number (reader, complaint->n);
  g_autofree char *of = tr_say_small_number (reader, complaint->of);

  if (complaint->of == 1)
    return g_strdup (_("the one taster"));
  if (complaint->n == complaint->of)
    return g_strdup_printf (dngettext (GETTEXT_PACKAGE, "all %s taster", "all %s tasters", complaint->of), of);

  /* Translators: "three of four tasters" */
  return g_strdup_printf (dngettext (GETTEXT_PACKAGE, "%s of %s taster", "%s of %s tasters", complaint->of), n, of);
}

char *
tr_words_complaint (const TrReader    *reader,
                    const TrComplaint *complaint)
{
  g_autofree char *tasters = count_tasters (reader, complaint);

  /* Translators: what was found, and by how many: "Fat pooled, three of four tasters" */
  return g_strdup_printf (_("%s, %s"), name_of (complaint->id), tasters);
}

char *
tr_words_no_cause (const TrReader    *reader,
                   const TrComplaint *complaint)
{
  g_autofree char *found = NULL;

  if (complaint == NULL)
    return g_strdup (_("No number of this dough points to a cause. The log may say what really happened."));

  found = tr_words_complaint (reader, complaint);
  return g_strdup_printf (_("%s: no number of this dough points to a cause. The log may say what really happened."), found);
}

const char *
tr_words_caution (guint complaint)
{
  if (complaint != TR_FAULT_DARK_OUTSIDE && complaint != TR_FAULT_GUMMY)
    return NULL;

  return _("What is raw inside is not for eating: raw flour and raw egg can make ill. Bake it through; your local rules decide.");
}

/* Numbers *********************************************************************/

static double
round_up (double minutes)
{
  return RISE_STEP_MINUTES * ceil (minutes / RISE_STEP_MINUTES - 1e-9);
}

static double
round_down (double minutes)
{
  return RISE_STEP_MINUTES * floor (minutes / RISE_STEP_MINUTES + 1e-9);
}

static char *
say_number (const TrReader *reader,
            double          value,
            int             decimals,
            const char     *unit)
{
  char *number = tr_say_trimmed (reader, value, decimals);

  return unit != NULL ? tr_say_with_unit (number, unit) : number;
}

/* As many decimals as it takes to see that the end is passed. */
static void
say_with_unit (TrSaidCause *said,
               double       scale,
               double       offset,
               int          decimals,
               const char  *unit)
{
  const TrReading *reading = &said->cause->reading;
  double value = reading->value * scale + offset, limit = said->cause->limit * scale + offset;

  while (decimals < 4 && fabs (tr_say_round (value, decimals) - tr_say_round (limit, decimals)) <= 0)
    decimals++;
  said->value = say_number (said->reader, value, decimals, unit);
  said->low = say_number (said->reader, reading->low * scale + offset, decimals, unit);
  said->high = say_number (said->reader, reading->high * scale + offset, decimals, unit);
}

static void
say_temperatures (TrSaidCause *said)
{
  if (tr_say_is_us (said->reader))
    say_with_unit (said, 9.0 / 5, 32, 0, tr_words_temperature_unit (said->reader));
  else
    say_with_unit (said, 1, 0, 0, tr_words_temperature_unit (said->reader));
}

static void
say_minutes (TrSaidCause *said)
{
  const TrReading *reading = &said->cause->reading;

  said->value = tr_words_minutes (said->reader, reading->value);
  said->low = tr_words_minutes (said->reader, round_up (reading->low));
  said->high = tr_words_minutes (said->reader, round_down (reading->high));
}

static void
say_whole_minutes (TrSaidCause *said)
{
  const TrReading *reading = &said->cause->reading;

  said->value = tr_words_minutes (said->reader, reading->value);
  said->low = tr_words_minutes (said->reader, ceil (reading->low - 1e-9));
  said->high = tr_words_minutes (said->reader, floor (reading->high + 1e-9));
}

static void
say_window (TrSaidCause *said)
{
  said->value = tr_words_minutes (said->reader, floor (said->cause->reading.value));
  said->low = tr_words_minutes (said->reader, ceil (said->cause->reading.low));
}

static void
say_lengths (TrSaidCause *said)
{
  const TrReading *reading = &said->cause->reading;

  tr_say_lengths_apart (said->reader, reading->value, said->cause->limit, &said->value,
                        said->cause->side == TR_SIDE_OVER ? &said->high : &said->low);
  if (said->cause->side == TR_SIDE_OVER)
    said->low = tr_words_length (said->reader, reading->low);
  else
    said->high = tr_words_length (said->reader, reading->high);
}

static void
say_numbers (TrSaidCause *said)
{
  switch (said->cause->reading.id)
    {
    case TR_READING_PROOF_C: case TR_READING_PROOF_OF_FAT_C: case TR_READING_MIXED_C: case TR_READING_ROOM_C:
    case TR_READING_CORE_C: case TR_READING_BAKE_C:
      say_temperatures (said);
      break;
    case TR_READING_PROOF_MINUTES: case TR_READING_BULK_MINUTES: case TR_READING_REST_MINUTES:
      say_minutes (said);
      break;
    case TR_READING_BAKE_MINUTES:
      say_whole_minutes (said);
      break;
    case TR_READING_WINDOW_MINUTES:
      say_window (said);
      break;
    case TR_READING_SHEET_MM:
      say_lengths (said);
      break;
    case TR_READING_FAT_LAYER_UM:
      say_with_unit (said, 1, 0, 0, _("µm"));
      break;
    case TR_READING_FAT_LAYERS:
      say_with_unit (said, 1, 0, 0, NULL);
      break;
    case TR_READING_STRETCH:
      say_with_unit (said, 1, 0, 1, NULL);
      break;
    case TR_READING_ALL_WATER: case TR_READING_ROLL_IN: case TR_READING_YEAST: case TR_READING_SALT:
    case TR_READING_SUGAR: case TR_READING_SALT_MIDDLE: case TR_READING_SUGAR_MIDDLE: case TR_READING_SALTED_FAT:
      say_with_unit (said, 1, 0, 1, "%");
      break;
    case TR_N_READINGS:
    default:
      g_return_if_reached ();
    }
}

/* Clauses *********************************************************************/

static char *
say_usual (const TrSaidCause *said)
{
  const TrReading *reading = &said->cause->reading;

  if (said->cause->beside >= 0)
    {
      g_autofree char *name = tr_say_quote (reading->name != NULL ? reading->name : "");

      /* Translators: a dough, and its number: "in “Overnight sponge”, found just right, it is 1.7 %" */
      return g_strdup_printf (_("in %s, found just right, it is %s"), name,
                              said->cause->side == TR_SIDE_OVER ? said->high : said->low);
    }
  if (isnan (reading->high))
    return g_strdup_printf (_("usual is at least %s"), said->low);
  if (isnan (reading->low))
    return g_strdup_printf (_("usual is at most %s"), said->high);

  return g_strdup_printf (_("usual is %s to %s"), said->low, said->high);
}

/* What follows is the usual range; takes the text. */
static char *
with_usual (const TrSaidCause *said,
            char              *clause)
{
  g_autofree char *owned = clause, *usual = say_usual (said);

  /* Translators: a number of this dough, and what is usual: "proof at 22 °C; usual is 26 °C to 30 °C" */
  return g_strdup_printf (_("%s; %s"), owned, usual);
}

static const char *
this_fat (const TrSaidCause *said)
{
  TrIngredient fat;

  if (said->cause->reading.name != NULL && tr_ingredient_resolve (said->figures->pantry, said->cause->reading.name, &fat)
      && tr_ingredient_is_like (&fat, "butter-"))
    return _("this butter");

  return _("this fat");
}

static char *
clause_of_rise (const TrSaidCause *said,
                gboolean           is_proof)
{
  g_autofree char *at = tr_words_temperature (said->reader, said->cause->reading.at);
  g_autofree char *usual = say_usual (said);

  return is_proof ? g_strdup_printf (_("a proof of %s at %s; %s when it is that warm"), said->value, at, usual)
                  : g_strdup_printf (_("a bulk rise of %s at %s; %s when it is that warm"), said->value, at, usual);
}

static char *
clause_of_rest (const TrSaidCause *said)
{
  return with_usual (said, g_strdup_printf (_("a rest of %s after turn %d"), said->value, (int) said->cause->reading.at));
}

static char *
clause_of_core (const TrSaidCause *said)
{
  return g_strdup_printf (_("the core is still at %s after the rest of turn %d; %s is soft from %s"),
                          said->value, (int) said->cause->reading.at, this_fat (said), said->high);
}

static char *
clause_of_window (const TrSaidCause *said)
{
  int turn = (int) said->cause->reading.at;

  if (turn == 0)
    return g_strdup_printf (_("the fat can be rolled for at most %s, and rolling the sheet takes %s"), said->value, said->low);

  return g_strdup_printf (_("the fat can be rolled for at most %s, and turn %d takes %s"), said->value, turn, said->low);
}

static char *
clause_of_bake_minutes (const TrSaidCause *said)
{
  g_autofree char *piece = tr_words_mass (said->reader, said->cause->reading.at);
  g_autofree char *usual = say_usual (said);

  if (said->cause->beside >= 0)
    return g_strdup_printf (_("a bake of %s; %s"), said->value, usual);

  return g_strdup_printf (_("a bake of %s; %s for a raw piece of %s"), said->value, usual, piece);
}

static char *
clause_of_stretch (const TrSaidCause *said)
{
  int turn = (int) said->cause->reading.at;

  if (turn == 0)
    return g_strdup_printf (_("the roll-out to the sheet stretches %s times in one go; usual is at most %s times"),
                            said->value, said->high);

  return g_strdup_printf (_("turn %d stretches the block %s times in one go; usual is at most %s times"),
                          turn, said->value, said->high);
}

static char *
clause_of_layers (const TrSaidCause *said)
{
  return with_usual (said, g_strdup_printf (dngettext (GETTEXT_PACKAGE, "%s fat layer", "%s fat layers",
                                                       tr_say_plural (said->cause->reading.value)), said->value));
}

/* The middle itself is nobody's limit: its half of the band is said. */
static char *
clause_of_middle (const TrSaidCause *said,
                  const char        *what)
{
  const TrReading *reading = &said->cause->reading;
  g_autofree char *low = say_number (said->reader, reading->low - reading->at / 2, 1, "%");
  g_autofree char *high = say_number (said->reader, reading->high + reading->at / 2, 1, "%");

  return said->cause->side == TR_SIDE_OVER
           ? g_strdup_printf (_("%s at %s of the flour, in the upper half of the usual %s to %s"), what, said->value, low, high)
           : g_strdup_printf (_("%s at %s of the flour, in the lower half of the usual %s to %s"), what, said->value, low, high);
}

static char *
clause_of_salted_fat (const TrSaidCause *said)
{
  g_autofree char *name = tr_say_ingredient (said->figures, said->cause->reading.name);
  g_autofree char *all = say_number (said->reader, said->figures->formula.salt_percent, 1, "%");

  return g_strdup_printf (_("%s brings salt, %s of the flour, into the %s there are"),
                          name != NULL ? name : _("the salted fat"), said->value, all);
}

static char *
clause_of (const TrSaidCause *said)
{
  const char *value = said->value;

  switch (said->cause->reading.id)
    {
    case TR_READING_PROOF_C: return with_usual (said, g_strdup_printf (_("proof at %s"), value));
    case TR_READING_PROOF_OF_FAT_C:
      return g_strdup_printf (_("proof at %s; %s should stay at %s or less"), value, this_fat (said), said->high);
    case TR_READING_PROOF_MINUTES: return clause_of_rise (said, TRUE);
    case TR_READING_BULK_MINUTES: return clause_of_rise (said, FALSE);
    case TR_READING_MIXED_C: return with_usual (said, g_strdup_printf (_("the dough is mixed to %s"), value));
    case TR_READING_ROOM_C:
      return g_strdup_printf (_("the room is at %s; %s is soft from %s"), value, this_fat (said), said->high);
    case TR_READING_REST_MINUTES: return clause_of_rest (said);
    case TR_READING_CORE_C: return clause_of_core (said);
    case TR_READING_WINDOW_MINUTES: return clause_of_window (said);
    case TR_READING_BAKE_C: return with_usual (said, g_strdup_printf (_("baked at %s"), value));
    case TR_READING_BAKE_MINUTES: return clause_of_bake_minutes (said);
    case TR_READING_SHEET_MM: return with_usual (said, g_strdup_printf (_("the sheet is %s thick"), value));
    case TR_READING_STRETCH: return clause_of_stretch (said);
    case TR_READING_FAT_LAYERS: return clause_of_layers (said);
    case TR_READING_FAT_LAYER_UM: return with_usual (said, g_strdup_printf (_("fat layers of %s"), value));
    case TR_READING_ALL_WATER: return with_usual (said, g_strdup_printf (_("all water at %s of the flour"), value));
    case TR_READING_ROLL_IN: return with_usual (said, g_strdup_printf (_("roll-in at %s of the dough"), value));
    case TR_READING_YEAST: return with_usual (said, g_strdup_printf (_("yeast, counted as fresh, at %s of the flour"), value));
    case TR_READING_SALT: return with_usual (said, g_strdup_printf (_("effective salt at %s of the flour"), value));
    case TR_READING_SUGAR: return with_usual (said, g_strdup_printf (_("sugar at %s of the flour"), value));
    case TR_READING_SALT_MIDDLE: return clause_of_middle (said, _("effective salt"));
    case TR_READING_SUGAR_MIDDLE: return clause_of_middle (said, _("sugar"));
    case TR_READING_SALTED_FAT: return clause_of_salted_fat (said);
    case TR_N_READINGS:
    default: g_return_val_if_reached (g_strdup (""));
    }
}

char *
tr_words_cause (const TrReader       *reader,
                const TrDoughFigures *figures,
                const TrComplaint    *complaint,
                const TrCause        *cause)
{
  TrSaidCause said = { .reader = reader, .figures = figures, .cause = cause };
  g_autofree char *clause = NULL, *found = NULL, *start = NULL;

  say_numbers (&said);
  if (cause->reading.is_logged)
    {
      g_autofree char *value = said.value;

      /* Translators: a number as it was logged, and not as it was planned: "31 °C (logged)" */
      said.value = g_strdup_printf (_("%s (logged)"), value);
    }
  clause = clause_of (&said);
  g_free (said.value);
  g_free (said.low);
  g_free (said.high);
  if (complaint == NULL)
    {
      start = tr_say_capital (clause);
      return g_strconcat (start, ".", NULL);
    }

  found = tr_words_complaint (reader, complaint);
  /* Translators: what was found and by how many, and what points there */
  return g_strdup_printf (_("%s: %s."), found, clause);
}

/* Remedies ********************************************************************/

static char *
remedy_of_minutes (const TrReader *reader,
                   const TrRemedy *remedy)
{
  g_autofree char *minutes = tr_words_minutes (reader, remedy->target);
  gboolean is_less = remedy->side == TR_SIDE_OVER;

  switch ((int) remedy->kind)
    {
    case TR_REMEDY_PROOF_MINUTES:
      return g_strdup_printf (is_less ? _("Proof at most %s") : _("Proof at least %s"), minutes);
    case TR_REMEDY_BULK_MINUTES:
      return g_strdup_printf (is_less ? _("Let the bulk rise at most %s") : _("Let the bulk rise at least %s"), minutes);
    case TR_REMEDY_BAKE_MINUTES:
      return g_strdup_printf (_("Bake %s"), minutes);
    default:
      return g_strdup_printf (_("Rest %s after turn %u"), minutes, remedy->turn);
    }
}

static char *
remedy_of_turn (const TrReader *reader,
                const TrRemedy *remedy)
{
  g_autofree char *fold = isfinite (remedy->target) ? tr_words_fold ((int) remedy->target) : NULL;

  switch ((int) remedy->kind)
    {
    case TR_REMEDY_FOLD:
      /* Translators: "Make turn 3 a letter fold (3)" */
      return g_strdup_printf (_("Make turn %u a %s"), remedy->turn, fold);
    case TR_REMEDY_DROP_TURN:
      return g_strdup_printf (_("Leave out turn %u"), remedy->turn);
    default:
      return g_strdup_printf (_("Add a %s"), fold);
    }
}

char *
tr_words_remedy (const TrReader *reader,
                 const TrRemedy *remedy)
{
  g_autofree char *celsius = tr_words_temperature (reader, remedy->target);
  g_autofree char *length = tr_words_length (reader, remedy->target);

  switch (remedy->kind)
    {
    case TR_REMEDY_PROOF_C: return g_strdup_printf (_("Proof at %s"), celsius);
    case TR_REMEDY_MIXED_C: return g_strdup_printf (_("Mix to %s"), celsius);
    case TR_REMEDY_BAKE_C: return g_strdup_printf (_("Bake at %s"), celsius);
    case TR_REMEDY_PROOF_MINUTES: case TR_REMEDY_BULK_MINUTES: case TR_REMEDY_BAKE_MINUTES: case TR_REMEDY_REST_MINUTES:
      return remedy_of_minutes (reader, remedy);
    case TR_REMEDY_TURN_MM: return g_strdup_printf (_("Roll turn %u to %s"), remedy->turn, length);
    case TR_REMEDY_SHEET_MM: return g_strdup_printf (_("Roll the sheet to %s"), length);
    case TR_REMEDY_FOLD: case TR_REMEDY_DROP_TURN: case TR_REMEDY_ADD_TURN:
      return remedy_of_turn (reader, remedy);
    case TR_REMEDY_RATIO:
      return tr_words_repair (reader, &(TrRepair) { remedy->ratio, remedy->target, remedy->adds_line });
    case TR_REMEDY_NONE: case TR_N_REMEDIES:
    default: return NULL;
    }
}
