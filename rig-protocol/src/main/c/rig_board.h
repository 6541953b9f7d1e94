/*
 * A board that speaks the rig protocol, version 1 (docs/rig-protocol.md, part 3): scans, load switches with their fail-safe
 * on a lost host, lead checks, refusals. The hardware is the user's: four functions are needed, the others may be NULL.
 *
 * Portable C99: no heap, no dependency; below 2 KiB of RAM for 16 channels. Call everything from one loop, never from an
 * interrupt. It is no substitute for hardware: at reset, while flashing and with the watchdog biting a load must be open.
 */
#ifndef RIG_BOARD_H
#define RIG_BOARD_H

#include "rig_frame.h"

/* Most channels; up to 64. */
#ifndef RIG_CHANNELS_MOST
#define RIG_CHANNELS_MOST 16
#endif

enum rig_clock { RIG_CLOCK_CRYSTAL = 1, RIG_CLOCK_RESONATOR = 2, RIG_CLOCK_DISCIPLINED = 3 };

enum rig_role { RIG_CELL = 0, RIG_AMBIENT = 1, RIG_DUMMY = 2, RIG_WATCH = 3, RIG_BANK = 4 };

/* What a channel can do; bits. */
enum rig_ability {
    RIG_VOLTS = 1,
    RIG_CELSIUS = 2,
    RIG_AMPERES = 4,
    RIG_LOAD_SWITCH = 8,
    RIG_LEAD_CHECK = 16,
    RIG_BLINK = 32
};

enum rig_reason {
    RIG_UNKNOWN_KIND = 1,
    RIG_NO_CHANNEL = 2,
    RIG_NO_ABILITY = 3,
    RIG_OUT_OF_RANGE = 4,
    RIG_BUSY = 5,
    RIG_TOO_HOT = 6,
    RIG_HOST_LOST = 7,
    RIG_BONDED = 8,
    RIG_FAILED = 9
};

/* One measurement. */
struct rig_value {
    int32_t counts; /* what one is worth stands in rig_facts */
    bool valid;     /* measured just now, and converter and sensor answered */
    bool at_rail;   /* the lowest or the highest code: the true value may lie beyond */
    bool open;      /* of a temperature: the sensor or its lead is open */
};

struct rig_channel {
    uint8_t role;
    uint8_t abilities;
    uint32_t load_milliohms; /* 0: none, or not known */
};

/* What the board is; may lie in read-only memory. Ranges: docs/rig-protocol.md, part 2, IDENTITY. */
struct rig_facts {
    const char *serial_number; /* 1 to 32 printable ASCII; never changes */
    const char *firmware;      /* 0 to 32 */
    uint8_t clock;             /* rig_clock */
    uint32_t interval_millis;  /* at start-up */
    uint32_t shortest_interval_millis;
    uint32_t host_timeout_millis; /* 3000 or more (10000 is advice); 0: no guard */
    uint32_t volts_nanovolts;     /* a count */
    uint32_t amperes_nanoamperes;
    uint32_t celsius_microkelvin;
    int32_t converter_low;
    int32_t converter_high;
    uint32_t offset_nanovolts; /* expanded uncertainties, k = 2 */
    uint32_t gain_parts_per_million;
    uint32_t celsius_uncertainty_microkelvin;
    uint8_t contact_inputs;
    uint32_t lead_settle_millis; /* at least five time constants of the input's filter */
    int32_t lead_open_counts;    /* how far an open lead moves when it is pulled at */
    uint8_t channels;
    const struct rig_channel *channel;
};

/* The user's functions. Each gets `user`; none may take longer than a few milliseconds. */
struct rig_hardware {
    void *user;
    /* Needed. */
    struct rig_value (*read_volts)(void *user, uint8_t channel);
    struct rig_value (*read_celsius)(void *user, uint8_t channel);
    bool (*switch_load)(void *user, uint8_t channel, bool applied); /* says whether the switch did it */
    uint32_t (*millis)(void *user);                                 /* free-running, wraps at 2^32, never set */
    rig_put put;                                                    /* bytes towards the host */
    /* May be NULL. */
    struct rig_value (*read_amperes)(void *user, uint8_t channel);
    void (*pull_lead)(void *user, uint8_t channel, bool pulled);
    void (*blink)(void *user, uint8_t channel, uint8_t seconds);
    void (*buzz)(void *user, uint8_t seconds);
    uint8_t (*contacts)(void *user);
    bool (*open_relay)(void *user, bool open);
    uint8_t (*may_not_close)(void *user, uint8_t channel); /* RIG_TOO_HOT, RIG_BONDED, or 0 */
};

struct rig_board {
    const struct rig_facts *facts;
    const struct rig_hardware *hardware;
    uint32_t boot_number;
    uint32_t scan;
    uint32_t interval_millis;
    uint32_t scanned_millis;
    uint32_t host_millis;
    uint32_t byte_millis;
    bool host_lost;
    bool relay_open;
    uint8_t checking; /* the channel whose lead is being checked, or RIG_CHANNELS_MOST and more for none */
    bool pulled;
    uint16_t check_sequence;
    uint32_t check_millis;
    int32_t check_before;
    bool check_before_valid;
    bool applied[RIG_CHANNELS_MOST];
    struct rig_value volts[RIG_CHANNELS_MOST];
    struct rig_value celsius[RIG_CHANNELS_MOST];
    struct rig_value amperes[RIG_CHANNELS_MOST];
    struct rig_receiver receiver;
    struct rig_sender sender;
};

/*
 * Starts the board: every load open, then IDENTITY. `boot_number` is one more than at the last start, kept by the user in
 * non-volatile memory, after 4294967295 comes 1; or always 0 where there is none. Says whether facts and hardware fit each
 * other and the protocol; if not, nothing was done, and nothing else may be called.
 */
bool rig_board_start(
    struct rig_board *board, const struct rig_facts *facts, const struct rig_hardware *hardware, uint32_t boot_number);

/* Takes one byte from the host. */
void rig_board_receive(struct rig_board *board, uint8_t byte);

/* Does what is due; to be called at least every 10 ms. */
void rig_board_tick(struct rig_board *board);

/* Whether the load is applied, as far as the board knows. */
bool rig_board_is_applied(const struct rig_board *board, uint8_t channel);

#endif
