/* members.h: the objects of a trial document, their members and their ranges
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One table that the reader, the writer and the validator all walk, so that
 * none of them can know a member, a range or an order that the others do not.
 * The JSON Schema in data/ says the same to other programs; a test holds the
 * two together. Defaults are not here: they are what the constructors of
 * calc/written.h hold.
 */

#pragma once

#include <json-glib/json-glib.h>

#include "../calc/written.h"
#include "disk.h"

G_BEGIN_DECLS

typedef enum {
  TR_MEMBER_FORMAT,              /* what says that this is a trial */
  TR_MEMBER_VERSION,
  TR_MEMBER_NUMBER,              /* double; NaN: not written */
  TR_MEMBER_PAIR,                /* double[2] */
  TR_MEMBER_PART,                /* double; null means not known, see TrOwnIngredient */
  TR_MEMBER_WHOLE,               /* int; `none`: not written */
  TR_MEMBER_FLAG,                /* int 0 or 1; `none`: not written */
  TR_MEMBER_WORD,                /* an enumeration; `none`: not written */
  TR_MEMBER_TEXT,                /* char *; NULL: not written */
  TR_MEMBER_TEXTS,               /* char **; NULL: not written */
  TR_MEMBER_OBJECT,              /* pointer to a struct; NULL: not written */
  TR_MEMBER_INSIDE,              /* an object in the document whose members lie in this struct */
  TR_MEMBER_LIST,                /* GPtrArray of structs */
  TR_MEMBER_OPAQUE,              /* char *, the text of an array; NULL: empty */
  TR_MEMBER_PANTRY,              /* TrPantry: the list in it */
  TR_MEMBER_HOUSEHOLD,           /* GArray of TrHousehold, as an object */
  TR_MEMBER_CODES,               /* GPtrArray of TrCode, as an object */
  TR_MEMBER_ORDERS,              /* GPtrArray of TrOrder, as an object */
} TrMemberType;

typedef enum {
  TR_MEMBER_REQUIRED = 1 << 0,   /* must be present */
  TR_MEMBER_NULLABLE = 1 << 1,   /* null says: not written */
  TR_MEMBER_SAYS_NULL = 1 << 2,  /* not written is written as null: absent means something else */
  TR_MEMBER_FILLED = 1 << 3,     /* a text may not be empty */
  TR_MEMBER_OF_OBJECTS = 1 << 4, /* what is in an opaque array */
  TR_MEMBER_OMITS_ZERO = 1 << 5, /* 0 is the default and is left out */
} TrMemberFlags;

#define TR_FORMAT "tourier-trial"
#define TR_FORMAT_VERSION 1

typedef struct _TrObject TrObject;

typedef struct {
  const char *(*id) (guint value);
  int (*from_id) (const char *id);
  guint n;
} TrWords;

typedef struct {
  const char *name;
  TrMemberType type;
  TrMemberFlags flags;
  gsize offset;
  double min, max;               /* of a number, of a text's bytes (0: any), of a list's length (0: any) */
  int none;
  const TrWords *words;
  const TrObject *object;
} TrMember;

struct _TrObject {
  const TrMember *members;
  guint n_members;
  gsize extra;                   /* offset of the unknown members' text */
  gboolean is_inline;            /* written on one line */
  gboolean is_short_when_empty;  /* on one line while its lists are empty */
  gpointer (*create) (void);     /* with the defaults; NULL for INSIDE */
  GDestroyNotify free;
  /* After reading: the defaults that depend on what was written. */
  void (*complete) (gpointer object);
  /* What no single member can tell: what was expected (NULL: nothing is
   * wrong), and the name of the member that was found instead. */
  const char *(*check) (gconstpointer object, const char **name);
};

extern const TrObject tr_trial_object, tr_bench_object, tr_own_ingredient_object, tr_dough_object;
extern const TrObject tr_prediction_object, tr_plan_object, tr_tasting_object;

#define TR_AT(object, member, Type) ((Type *) (gpointer) ((char *) (object) + (member)->offset))
#define TR_AT_CONST(object, member, Type) ((Type const *) (gconstpointer) ((const char *) (object) + (member)->offset))

char       **tr_object_extra         (const TrObject *type, gpointer object);

/* tr_trial_read_file, and what the file was like on disk. */
TrTrial     *tr_trial_read_path      (const char *path, TrDiskState *state, GError **error);

/* The text of one object as the document has it, without a newline at the end. */
void         tr_object_append_text   (const TrObject *type, gconstpointer object, GString *out);

/* Whether two trials have the same text. Only what they do not share is looked
 * at; `bytes` is how long that is in `a`. */
gboolean     tr_trial_is_same        (const TrTrial *a, const TrTrial *b, gsize *bytes);

/* Whether a number stands inside the member's range (whole, where it must be). */
gboolean     tr_member_accepts       (const TrMember *member, double value);
/* "a number from 0 to 100", "one of half, gate, …": what the member takes. */
char        *tr_member_dup_expected  (const TrMember *member);

/* What the tables say about every member. The trial's text is not longer than `bound`. */
gboolean     tr_trial_check_members  (const TrTrial *trial, gsize *bound, GError **error);
/* Unique ids and references, in a trial whose members are all in range. */
gboolean     tr_trial_check_references (const TrTrial *trial, GError **error);

/* A JSON Pointer (RFC 6901) that grows and shrinks with a walk. Both return the
 * length to give to g_string_truncate on leaving. */
gsize        tr_pointer_push         (GString *pointer, const char *name);
gsize        tr_pointer_push_index   (GString *pointer, guint index);
/* FALSE, with "At POINTER expected …, found …." */
gboolean     tr_pointer_refuse       (const GString *pointer,
                                      int            code,
                                      const char    *expected,
                                      const char    *found,
                                      GError       **error);

G_END_DECLS
