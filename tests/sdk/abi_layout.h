/* The layout of every struct of abi.h on 64-bit machines, in C and in C++: a plugin compiled today must be readable for
 * ever. Derived by hand from the declarations: pointers and doubles take 8 bytes at multiples of 8, uint32_t 4 at
 * multiples of 4, and a struct ends at a multiple of its widest member. */
#ifndef QUADRILLE_TESTS_ABI_LAYOUT_H
#define QUADRILLE_TESTS_ABI_LAYOUT_H

#include <assert.h>
#include <stddef.h>

#include "sdk/abi.h"

#define PIN_SIZE(type, bytes) static_assert(sizeof(type) == (bytes), "size of " #type)
#define PIN(type, field, at) static_assert(offsetof(type, field) == (at), #type "." #field)

static_assert(sizeof(void*) == 8 && sizeof(double) == 8, "these offsets are for 64-bit machines");

/* two pointers */
PIN_SIZE(quadrille_choice, 16);
PIN(quadrille_choice, key, 0);
PIN(quadrille_choice, label, 8);

/* 7 pointers (56), 2 numbers of 4 (64), 5 doubles (104), 4 numbers of 4 (120); since 1.1 a double and a pointer (136) */
PIN_SIZE(quadrille_parameter, 136);
PIN(quadrille_parameter, key, 0);
PIN(quadrille_parameter, label, 8);
PIN(quadrille_parameter, hint, 16);
PIN(quadrille_parameter, group, 24);
PIN(quadrille_parameter, aliases, 32);
PIN(quadrille_parameter, default_text, 40);
PIN(quadrille_parameter, choices, 48);
PIN(quadrille_parameter, choice_count, 56);
PIN(quadrille_parameter, kind, 60);
PIN(quadrille_parameter, hard_min, 64);
PIN(quadrille_parameter, hard_max, 72);
PIN(quadrille_parameter, display_min, 80);
PIN(quadrille_parameter, display_max, 88);
PIN(quadrille_parameter, default_number, 96);
PIN(quadrille_parameter, decimals, 104);
PIN(quadrille_parameter, handle_end, 108);
PIN(quadrille_parameter, handle_axis, 112);
PIN(quadrille_parameter, flags, 116);
PIN(quadrille_parameter, handle_gain, 120);
PIN(quadrille_parameter, only_with, 128);

/* 2 numbers of 4 (8), a double (16), 2 pointers (32) */
PIN_SIZE(quadrille_value, 32);
PIN(quadrille_value, kind, 0);
PIN(quadrille_value, list_count, 4);
PIN(quadrille_value, number, 8);
PIN(quadrille_value, text, 16);
PIN(quadrille_value, list, 24);

/* 8 doubles (64), 4 numbers of 4 (80) */
PIN_SIZE(quadrille_balloon, 80);
PIN(quadrille_balloon, centre, 0);
PIN(quadrille_balloon, neck, 24);
PIN(quadrille_balloon, diameter, 48);
PIN(quadrille_balloon, nominal, 56);
PIN(quadrille_balloon, slot, 64);
PIN(quadrille_balloon, cluster, 68);
PIN(quadrille_balloon, place, 72);
PIN(quadrille_balloon, role, 76);

/* 2 numbers of 4 (8), 8 doubles (72) */
PIN_SIZE(quadrille_cluster, 72);
PIN(quadrille_cluster, number, 0);
PIN(quadrille_cluster, reserved, 4);
PIN(quadrille_cluster, at, 8);
PIN(quadrille_cluster, centre, 16);
PIN(quadrille_cluster, axis, 40);
PIN(quadrille_cluster, turn, 64);

/* 4 doubles */
PIN_SIZE(quadrille_spine_point, 32);
PIN(quadrille_spine_point, at, 0);
PIN(quadrille_spine_point, point, 8);

/* 3 doubles */
PIN_SIZE(quadrille_frame_node, 24);
PIN(quadrille_frame_node, position, 0);

/* 4 numbers of 4 (16), 5 doubles (56) */
PIN_SIZE(quadrille_frame_member, 56);
PIN(quadrille_frame_member, from, 0);
PIN(quadrille_frame_member, to, 4);
PIN(quadrille_frame_member, joint_from, 8);
PIN(quadrille_frame_member, rest, 12);
PIN(quadrille_frame_member, outer, 16);
PIN(quadrille_frame_member, inner, 24);
PIN(quadrille_frame_member, young, 32);
PIN(quadrille_frame_member, density, 40);
PIN(quadrille_frame_member, strength, 48);

/* 4 numbers of 4 (16), 5 doubles (56) */
PIN_SIZE(quadrille_support, 56);
PIN(quadrille_support, kind, 0);
PIN(quadrille_support, node, 4);
PIN(quadrille_support, turns, 8);
PIN(quadrille_support, reserved, 12);
PIN(quadrille_support, width, 16);
PIN(quadrille_support, depth, 24);
PIN(quadrille_support, own_mass, 32);
PIN(quadrille_support, ballast, 40);
PIN(quadrille_support, ballast_limit, 48);

/* 2 numbers of 4 (8), 3 doubles (32), a pointer (40) */
PIN_SIZE(quadrille_tie_point, 40);
PIN(quadrille_tie_point, node, 0);
PIN(quadrille_tie_point, purpose, 4);
PIN(quadrille_tie_point, point, 8);
PIN(quadrille_tie_point, label, 32);

/* 3 pointers (24), a double (32) */
PIN_SIZE(quadrille_supply, 32);
PIN(quadrille_supply, key, 0);
PIN(quadrille_supply, label, 8);
PIN(quadrille_supply, unit, 16);
PIN(quadrille_supply, quantity, 24);

/* 2 pointers (16), a double (24) */
PIN_SIZE(quadrille_work, 24);
PIN(quadrille_work, key, 0);
PIN(quadrille_work, label, 8);
PIN(quadrille_work, quantity, 16);

/* 2 numbers of 4 (8), 4 pointers (40) */
PIN_SIZE(quadrille_anchoring, 40);
PIN(quadrille_anchoring, requirement, 0);
PIN(quadrille_anchoring, when, 4);
PIN(quadrille_anchoring, key, 8);
PIN(quadrille_anchoring, text, 16);
PIN(quadrille_anchoring, reason, 24);
PIN(quadrille_anchoring, source, 32);

/* 2 numbers of 4 (8), 2 pointers (24); since 1.1 another (32) */
PIN_SIZE(quadrille_message, 32);
PIN(quadrille_message, severity, 0);
PIN(quadrille_message, topic, 4);
PIN(quadrille_message, key, 8);
PIN(quadrille_message, text, 16);
PIN(quadrille_message, remedy, 24);

/* a pointer (8), a double (16) */
PIN_SIZE(quadrille_fact, 16);
PIN(quadrille_fact, key, 0);
PIN(quadrille_fact, number, 8);

/* 2 numbers of 4 (8), 2 pointers (24) */
PIN_SIZE(quadrille_sink, 24);
PIN(quadrille_sink, struct_size, 0);
PIN(quadrille_sink, reserved, 4);
PIN(quadrille_sink, self, 8);
PIN(quadrille_sink, push, 16);

/* 4 pointers (32), 2 numbers of 4 (40), a pointer (48) */
PIN_SIZE(quadrille_piece_type, 48);
PIN(quadrille_piece_type, id, 0);
PIN(quadrille_piece_type, name, 8);
PIN(quadrille_piece_type, description, 16);
PIN(quadrille_piece_type, parameters, 24);
PIN(quadrille_piece_type, parameter_count, 32);
PIN(quadrille_piece_type, parameter_size, 36);
PIN(quadrille_piece_type, build, 40);

/* 6 numbers of 4 (24), 3 pointers (48) */
PIN_SIZE(quadrille_pieces, 48);
PIN(quadrille_pieces, struct_size, 0);
PIN(quadrille_pieces, abi_major, 4);
PIN(quadrille_pieces, abi_minor, 8);
PIN(quadrille_pieces, type_count, 12);
PIN(quadrille_pieces, type_size, 16);
PIN(quadrille_pieces, reserved, 20);
PIN(quadrille_pieces, plugin_id, 24);
PIN(quadrille_pieces, plugin_version, 32);
PIN(quadrille_pieces, types, 40);

#endif
