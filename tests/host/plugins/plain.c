/* A sound plugin in plain C without parameters: one balloon. What it says of itself can be set from outside. */
#include "sdk/abi.h"

#ifndef PLAIN_SYMBOL
#define PLAIN_SYMBOL quadrille_pieces_v1
#endif
#ifndef PLAIN_MAJOR
#define PLAIN_MAJOR QUADRILLE_ABI_MAJOR
#endif
#ifndef PLAIN_MINOR
#define PLAIN_MINOR QUADRILLE_ABI_MINOR
#endif
#ifndef PLAIN_STRUCT_SIZE
#define PLAIN_STRUCT_SIZE sizeof(quadrille_pieces)
#endif
#ifndef PLAIN_TYPE_SIZE
#define PLAIN_TYPE_SIZE sizeof(quadrille_piece_type)
#endif
#ifndef PLAIN_TYPE_COUNT
#define PLAIN_TYPE_COUNT 1
#endif
#ifndef PLAIN_PLUGIN_ID
#define PLAIN_PLUGIN_ID "test.plain"
#endif

#ifdef PLAIN_TELLTALE
#include <stdlib.h>
/* Leaves a sign in the program when it is loaded, which a refused plugin must not be. */
int setenv(const char*, const char*, int);
__attribute__((constructor)) static void leave_a_sign(void) { setenv("QUADRILLE_TEST_LOADED", "yes", 1); }
#endif

static int32_t build(const quadrille_value* values, uint32_t count, const quadrille_sink* sink) {
  const quadrille_balloon balloon = {{0, 0, 1}, {0, 0, 0.8}, 0.28, 11, 0, 0, 0, QUADRILLE_ROLE_BODY};
  (void)values;
  (void)count;
  return sink->push(sink->self, QUADRILLE_RECORD_BALLOON, &balloon, 1, sizeof balloon) == 0 ? QUADRILLE_OK
                                                                                            : QUADRILLE_INTERNAL;
}

static const quadrille_piece_type types[] = {
    {"plain", "Plain", "One balloon.", NULL, 0, sizeof(quadrille_parameter), build}};

extern QUADRILLE_EXPORT const quadrille_pieces PLAIN_SYMBOL;
const quadrille_pieces PLAIN_SYMBOL = {
    PLAIN_STRUCT_SIZE, PLAIN_MAJOR, PLAIN_MINOR, PLAIN_TYPE_COUNT, PLAIN_TYPE_SIZE, 0, PLAIN_PLUGIN_ID, "1.0.0", types};
