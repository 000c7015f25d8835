/* written-log.c: making and copying what is written down of a bake
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "written-private.h"

/* Entries are alike: numbers, when it was, and what of the file has another name. */
#define DEFINE_ENTRY(Type, name) \
  Type * \
  tr_##name##_copy (const Type *entry) \
  { \
    Type *copy = g_new (Type, 1); \
    \
    *copy = *entry; \
    copy->at = g_strdup (entry->at); \
    copy->extra = g_strdup (entry->extra); \
    \
    return copy; \
  } \
  \
  void \
  tr_##name##_free (Type *entry) \
  { \
    if (entry == NULL) \
      return; \
    \
    g_free (entry->at); \
    g_free (entry->extra); \
    g_free (entry); \
  }

DEFINE_ENTRY (TrMix, mix)
DEFINE_ENTRY (TrLoggedStep, logged_step)
DEFINE_ENTRY (TrLoggedRest, logged_rest)
DEFINE_ENTRY (TrLoggedSize, logged_size)
DEFINE_ENTRY (TrLoggedCut, logged_cut)
DEFINE_ENTRY (TrLoggedPieces, logged_pieces)

TrMix *
tr_mix_new (void)
{
  TrMix *mix = g_new0 (TrMix, 1);

  mix->dough_c = mix->flour_c = mix->room_c = mix->liquid_c = mix->preferment_c = NAN;

  return mix;
}

TrLoggedStep *
tr_logged_step_new (TrStepId id)
{
  TrLoggedStep *logged = g_new0 (TrLoggedStep, 1);

  logged->id = id;
  logged->minutes = logged->at_c = logged->rh_percent = NAN;

  return logged;
}

TrLoggedRest *
tr_logged_rest_new (int turn)
{
  TrLoggedRest *logged = g_new0 (TrLoggedRest, 1);

  logged->turn = turn;
  logged->minutes = logged->core_c = NAN;

  return logged;
}

TrLoggedSize *
tr_logged_size_new (int turn)
{
  TrLoggedSize *logged = g_new0 (TrLoggedSize, 1);

  logged->turn = turn;
  logged->length_mm = logged->width_mm = logged->thickness_mm = logged->relaxed_mm = NAN;

  return logged;
}

TrLoggedCut *
tr_logged_cut_new (void)
{
  TrLoggedCut *logged = g_new0 (TrLoggedCut, 1);

  logged->length_mm = logged->width_mm = logged->thickness_mm = logged->mass_g = NAN;

  return logged;
}

TrLoggedPieces *
tr_logged_pieces_new (void)
{
  TrLoggedPieces *logged = g_new0 (TrLoggedPieces, 1);

  logged->raw_g = logged->baked_g = logged->raw_height_mm = logged->baked_height_mm = NAN;

  return logged;
}

TrLog *
tr_log_new (void)
{
  TrLog *log = g_new0 (TrLog, 1);

  log->mixes = NEW_LIST (mix);
  log->steps = NEW_LIST (logged_step);
  log->rests = NEW_LIST (logged_rest);
  log->sizes = NEW_LIST (logged_size);
  log->cuts = NEW_LIST (logged_cut);
  log->pieces = NEW_LIST (logged_pieces);
  log->notes = g_strdup ("");

  return log;
}

TrLog *
tr_log_copy (const TrLog *log)
{
  TrLog *copy = g_new0 (TrLog, 1);

  copy->mixes = COPY_LIST (log->mixes, mix);
  copy->steps = COPY_LIST (log->steps, logged_step);
  copy->rests = COPY_LIST (log->rests, logged_rest);
  copy->sizes = COPY_LIST (log->sizes, logged_size);
  copy->cuts = COPY_LIST (log->cuts, logged_cut);
  copy->pieces = COPY_LIST (log->pieces, logged_pieces);
  copy->notes = g_strdup (log->notes);
  copy->extra = g_strdup (log->extra);

  return copy;
}

void
tr_log_free (TrLog *log)
{
  if (log == NULL)
    return;

  g_ptr_array_unref (log->mixes);
  g_ptr_array_unref (log->steps);
  g_ptr_array_unref (log->rests);
  g_ptr_array_unref (log->sizes);
  g_ptr_array_unref (log->cuts);
  g_ptr_array_unref (log->pieces);
  g_free (log->notes);
  g_free (log->extra);
  g_free (log);
}
