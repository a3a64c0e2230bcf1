/* The contract between the studio and a piece-type plugin: plain C, flat data, nothing owned by the plugin crosses.
 *
 * A plugin exports one symbol, the constant `quadrille_pieces_v1` of type quadrille_pieces. The studio reads it, hands
 * `build` one value per parameter and a sink, and `build` pushes records into the sink. Everything passed to a function
 * lives until that function returns; everything in the table lives as long as the library is loaded, which is for ever.
 *
 * Units: metres, kilograms, newtons, pascals, radians. Frame: x to the right as the audience sees it, y away from the
 * audience, z up; the origin is on the floor at the piece's place. Text is UTF-8, NUL-terminated, never NULL.
 *
 * Growth: a minor version may append fields to a struct and add record kinds. Every array of such structs states the
 * size of one entry, so an older plugin's shorter entries stay readable. Two structs stand in arrays that state none and
 * therefore never grow within a major version: quadrille_choice and quadrille_value. Nothing is ever removed, reordered
 * or given another meaning within a major version. */
#ifndef QUADRILLE_ABI_H
#define QUADRILLE_ABI_H

#include <stddef.h>
#include <stdint.h>

#define QUADRILLE_ABI_MAJOR 1u
#define QUADRILLE_ABI_MINOR 1u

#ifdef __cplusplus
extern "C" {
#endif

/* What a parameter holds. In a quadrille_value, kinds up to QUADRILLE_SEED use `number`, CHOICE and ROWS use `text`,
 * PATH uses `list` as x,y,z per point and MIX uses `list` as nominal size [in], inflated diameter [m], share per entry. */
enum {
  QUADRILLE_LENGTH = 1,  /* metres */
  QUADRILLE_ANGLE = 2,   /* radians */
  QUADRILLE_MASS = 3,    /* kilograms */
  QUADRILLE_COUNT = 4,   /* a whole number */
  QUADRILLE_RATIO = 5,   /* dimensionless */
  QUADRILLE_FLAG = 6,    /* 0 or 1 */
  QUADRILLE_BALLOON = 7, /* nominal size of a balloon, in inches: a name of the trade rather than a measurement */
  QUADRILLE_SLOTS = 8,   /* how many colour slots the piece uses, 1 to 6 */
  QUADRILLE_SEED = 9,    /* a whole number from 0 to 2^32-1 */
  QUADRILLE_CHOICE = 10, /* the key of one of the parameter's choices */
  QUADRILLE_ROWS = 11,   /* pattern text: one word of slot letters per cluster */
  QUADRILLE_PATH = 12,   /* points */
  QUADRILLE_MIX = 13     /* balloon sizes with shares */
};

typedef struct quadrille_choice { /* never grows */
  const char* key;   /* stable: this is what files save */
  const char* label; /* for people */
} quadrille_choice;

typedef struct quadrille_parameter {
  const char* key;          /* stable, lower case, words joined by '-' */
  const char* label;        /* for people, e.g. "Rod length" */
  const char* hint;         /* one sentence: what it does */
  const char* group;        /* heading of the form under which it stands */
  const char* aliases;      /* keys it had in earlier versions, separated by spaces; "" for none */
  const char* default_text; /* default of CHOICE, ROWS, PATH and MIX in their written form; "" otherwise */
  const quadrille_choice* choices; /* CHOICE only */
  uint32_t choice_count;
  uint32_t kind;         /* QUADRILLE_LENGTH … */
  double hard_min;       /* values outside [hard_min, hard_max] are refused before build is called */
  double hard_max;
  double display_min;    /* what a slider offers; within the hard range */
  double display_max;
  double default_number; /* default of the kinds that use `number` */
  uint32_t decimals;     /* decimals worth showing in the SI unit */
  uint32_t handle_end;   /* where a drag handle sits: QUADRILLE_NO_HANDLE … */
  uint32_t handle_axis;  /* 0 x, 1 y, 2 z: the axis along which dragging the handle changes the value */
  uint32_t flags;        /* QUADRILLE_ADVANCED or 0; until 1.0 always 0 */
  /* since 1.1 */
  double handle_gain;    /* change of the value per metre that the handle is dragged outward (to its own side, up or away
                            from the audience): 2 where both ends of a span move apart; 0 counts as 1 */
  const char* only_with; /* when the parameter matters, for forms; "" or NULL: always. Words between blanks must all hold;
                            of alternatives joined by '|' in a word one must: key=choice, key!=choice (choice keys; yes or
                            no for a FLAG), key>0 (a number above 0), as in "frame=square height>0|span>0" */
} quadrille_parameter;

enum { QUADRILLE_NO_HANDLE = 0, QUADRILLE_HANDLE_LEFT = 1, QUADRILLE_HANDLE_RIGHT = 2, QUADRILLE_HANDLE_TOP = 3,
       QUADRILLE_HANDLE_POINTS = 4 };

/* Few people ever change it: forms keep it out of the way until it is asked for, or stands at other than its default. */
enum { QUADRILLE_ADVANCED = 1 };

typedef struct quadrille_value { /* never grows */
  uint32_t kind;
  uint32_t list_count; /* doubles in list */
  double number;
  const char* text;
  const double* list;
} quadrille_value;

/* ---- records a plugin pushes ---- */
enum {
  QUADRILLE_RECORD_BALLOON = 1,
  QUADRILLE_RECORD_CLUSTER = 2,
  QUADRILLE_RECORD_SPINE_POINT = 3,
  QUADRILLE_RECORD_FRAME_NODE = 4,
  QUADRILLE_RECORD_FRAME_MEMBER = 5,
  QUADRILLE_RECORD_SUPPORT = 6,
  QUADRILLE_RECORD_TIE_POINT = 7,
  QUADRILLE_RECORD_SUPPLY = 8,
  QUADRILLE_RECORD_WORK = 9,
  QUADRILLE_RECORD_ANCHORING = 10,
  QUADRILLE_RECORD_MESSAGE = 11,
  QUADRILLE_RECORD_FACT = 12
};

enum { QUADRILLE_ROLE_BODY = 0, QUADRILLE_ROLE_FILLER = 1, QUADRILLE_ROLE_ACCENT = 2, QUADRILLE_ROLE_TOPPER = 3,
       QUADRILLE_ROLE_COLLAR = 4 };

/* A balloon as it is tied: a sphere of `diameter` about `centre` that tapers to its neck. */
typedef struct quadrille_balloon {
  double centre[3];
  double neck[3];     /* where the neck is tied */
  double diameter;    /* inflated, m */
  double nominal;     /* nominal size, in */
  uint32_t slot;      /* colour slot, 0 = A … 5 = F */
  uint32_t cluster;   /* number of its cluster, from 1; 0 = in no cluster */
  uint32_t place;     /* place in the cluster, from 0, counted anticlockwise seen from the far end of the spine */
  uint32_t role;
} quadrille_balloon;

typedef struct quadrille_cluster {
  uint32_t number;  /* from 1, in the order of building */
  uint32_t reserved;
  double at;        /* arc length of its centre along the spine, m */
  double centre[3];
  double axis[3];   /* unit tangent of the spine there */
  double turn;      /* angle of place 0 about the axis, rad, from the piece's reference direction, accumulated */
} quadrille_cluster;

typedef struct quadrille_spine_point { /* the line that the balloons are meant to hide, in order */
  double at; /* arc length, m, rising from 0 */
  double point[3];
} quadrille_spine_point;

typedef struct quadrille_frame_node { double position[3]; } quadrille_frame_node;

enum { QUADRILLE_JOINT_RIGID = 0, QUADRILLE_JOINT_SLEEVE = 1, QUADRILLE_JOINT_HINGE = 2 };
enum { QUADRILLE_REST_AS_DRAWN = 0, QUADRILLE_REST_STRAIGHT = 1 };

typedef struct quadrille_frame_member { /* a round tube or rod between two nodes */
  uint32_t from, to;         /* nodes, from 0 in the order pushed */
  uint32_t joint_from;       /* how it is joined to what comes before, QUADRILLE_JOINT_… */
  uint32_t rest;             /* its stress-free shape, QUADRILLE_REST_… */
  double outer, inner;       /* diameters, m; inner 0 = solid */
  double young;              /* Pa */
  double density;            /* kg/m3 */
  double strength;           /* Pa, bending */
} quadrille_frame_member;

enum { QUADRILLE_SUPPORT_PLATE = 0, QUADRILLE_SUPPORT_SOCKET = 1, QUADRILLE_SUPPORT_HOOK = 2,
       QUADRILLE_SUPPORT_SURFACE = 3 };

typedef struct quadrille_support { /* where the piece meets the ground, or hangs */
  uint32_t kind;
  uint32_t node;
  uint32_t turns;       /* 1 if the foot may turn freely in it, 0 if it is held upright */
  uint32_t reserved;
  double width, depth;  /* of the plate, m; 0 where there is none */
  double own_mass;      /* kg */
  double ballast;       /* kg that the design puts on it */
  double ballast_limit; /* kg that it can carry */
} quadrille_support;

enum { QUADRILLE_TIE_FRONT = 0, QUADRILLE_TIE_BACK = 1, QUADRILLE_TIE_SIDE = 2 };

typedef struct quadrille_tie_point { /* where a line may be tied */
  uint32_t node;
  uint32_t purpose;
  double point[3];
  const char* label; /* e.g. "crown, to the front" */
} quadrille_tie_point;

typedef struct quadrille_supply {
  const char* key;
  const char* label;
  const char* unit; /* "piece", "m", "kg", "l" */
  double quantity;
} quadrille_supply;

typedef struct quadrille_work { /* units of labour, priced in time by the decorator's own rates */
  const char* key;
  const char* label;
  double quantity;
} quadrille_work;

enum { QUADRILLE_WHEN_ALWAYS = 0, QUADRILLE_WHEN_OUTDOORS = 1, QUADRILLE_WHEN_WALKWAY = 2,
       QUADRILLE_WHEN_HARD_GROUND = 3, QUADRILLE_WHEN_SOFT_GROUND = 4, QUADRILLE_WHEN_INDOORS = 5 };
enum { QUADRILLE_SECURE_CLUSTERS_TO_FRAME = 0, QUADRILLE_SECURE_CLUSTERS_TOGETHER = 1,
       QUADRILLE_SECURE_FRONT_AND_BACK = 2, QUADRILLE_SECURE_BALLAST = 3, QUADRILLE_SECURE_JOINTS = 4,
       QUADRILLE_SECURE_CLEARANCE = 5, QUADRILLE_SECURE_OTHER = 6 };

typedef struct quadrille_anchoring { /* a requirement, with the condition under which it holds */
  uint32_t requirement;
  uint32_t when;
  const char* key;    /* stable, unique within the piece */
  const char* text;   /* what to do, one sentence */
  const char* reason; /* why, one sentence */
  const char* source; /* where that is known from, or "common practice, no source" */
} quadrille_anchoring;

enum { QUADRILLE_NOTE = 0, QUADRILLE_WARNING = 1, QUADRILLE_REFUSAL = 2 };
/* What a message is about, where the studio would else say it itself. */
enum { QUADRILLE_ABOUT_OTHER = 0, QUADRILLE_ABOUT_BARE_FRAME = 1 };

typedef struct quadrille_message {
  uint32_t severity;
  uint32_t topic;   /* QUADRILLE_ABOUT_…; one that the studio does not know counts as OTHER */
  const char* key;  /* the parameter to blame, or "" */
  const char* text; /* one sentence: what is wrong, and what would be accepted */
  /* since 1.1 */
  const char* remedy; /* one change that is known to mend just this, as key=value in its written form, such as
                         "slots=3"; "" or NULL: none is known */
} quadrille_message;

typedef struct quadrille_fact { /* a number the piece type computed, e.g. "foot_push_n" */
  const char* key; /* snake_case with the unit in the name */
  double number;
} quadrille_fact;

/* Takes `count` records of `record_size` bytes each. Returns 0 to go on; anything else means that the studio takes no
 * more, and build should return. */
typedef struct quadrille_sink {
  uint32_t struct_size;
  uint32_t reserved;
  void* self;
  int32_t (*push)(void* self, uint32_t record, const void* records, size_t count, size_t record_size);
} quadrille_sink;

enum { QUADRILLE_OK = 0, QUADRILLE_BAD_PARAMETER = 1, QUADRILLE_INFEASIBLE = 2, QUADRILLE_INTERNAL = 3 };

typedef struct quadrille_piece_type {
  const char* id;          /* stable, unique among all piece types, e.g. "arch" */
  const char* name;        /* for people */
  const char* description; /* one line */
  const quadrille_parameter* parameters;
  uint32_t parameter_count;
  uint32_t parameter_size; /* sizeof(quadrille_parameter) as the plugin was compiled */
  /* Pushes one piece. `values` holds one value per parameter, in the order of the table, each inside its hard range.
   * Pure and thread-safe: same values, same records. Must not throw. After a status other than QUADRILLE_OK
   * what was pushed may be shown, so that people see why, but is never counted; one of the messages is then a
   * refusal. */
  int32_t (*build)(const quadrille_value* values, uint32_t value_count, const quadrille_sink* sink);
} quadrille_piece_type;

typedef struct quadrille_pieces {
  uint32_t struct_size; /* these three fields are for ever */
  uint32_t abi_major;
  uint32_t abi_minor;
  uint32_t type_count;
  uint32_t type_size;   /* sizeof(quadrille_piece_type) as the plugin was compiled */
  uint32_t reserved;
  const char* plugin_id;
  const char* plugin_version;
  const quadrille_piece_type* types;
} quadrille_pieces;

#ifdef __cplusplus
}
#endif

#if defined(_WIN32)
#define QUADRILLE_EXPORT __declspec(dllexport)
#else
#define QUADRILLE_EXPORT __attribute__((visibility("default")))
#endif

#endif
