/*
 * The board of docs/rig-protocol.md, part 5, with hardware and time that a test moves by lines on standard input:
 *
 *     start                 power-on
 *     hear HEX              these bytes come from the host
 *     pass MILLIS           time passes, the loop runs every millisecond
 *     clock MILLIS          the clock stands there at once
 *     scan NUMBER           so many scans were made
 *     sequence NUMBER       so many frames were sent
 *     volts CHANNEL COUNTS VALID RAIL            and so on for celsius (with OPEN) and amperes
 *     pulled CHANNEL COUNTS what is read while the lead is pulled at
 *     stuck CHANNEL         its switch does nothing any more
 *     hindered CHANNEL REASON
 *
 * After each line: "sent HEX", "loads 0 1 0", ".".
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "rig_board.h"

enum { CHANNELS = 3, SENT_MOST = 1 << 20 };

static const struct rig_channel channels[CHANNELS] = {
    {RIG_CELL, RIG_VOLTS | RIG_CELSIUS | RIG_AMPERES | RIG_BLINK, 4700},
    {RIG_CELL, RIG_VOLTS | RIG_CELSIUS | RIG_AMPERES | RIG_LOAD_SWITCH | RIG_LEAD_CHECK | RIG_BLINK, 10000},
    {RIG_AMBIENT, RIG_CELSIUS, 0},
};

static const struct rig_facts facts = {
    .serial_number = "EB-0042",
    .firmware = "1.0.3",
    .clock = RIG_CLOCK_CRYSTAL,
    .interval_millis = 1000,
    .shortest_interval_millis = 10,
    .host_timeout_millis = 10000,
    .volts_nanovolts = 125000,
    .amperes_nanoamperes = 100000,
    .celsius_microkelvin = 10000,
    .converter_low = -1600,
    .converter_high = 40000,
    .offset_nanovolts = 2000000,
    .gain_parts_per_million = 1500,
    .celsius_uncertainty_microkelvin = 500000,
    .contact_inputs = 2,
    .lead_settle_millis = 200,
    .lead_open_counts = 26400,
    .channels = CHANNELS,
    .channel = channels,
};

static uint32_t clock_millis;
static struct rig_value volts[CHANNELS];
static struct rig_value celsius[CHANNELS];
static struct rig_value amperes[CHANNELS];
static int32_t pulled_counts[CHANNELS];
static bool pulled[CHANNELS];
static bool stuck[CHANNELS];
static bool load[CHANNELS];
static uint8_t hindered[CHANNELS];
static uint8_t sent[SENT_MOST];
static size_t sent_count;

static struct rig_value read_volts(void *user, uint8_t channel)
{
    struct rig_value value = volts[channel];
    (void)user;
    if (pulled[channel]) {
        value.counts = pulled_counts[channel];
    }
    return value;
}

static struct rig_value read_celsius(void *user, uint8_t channel)
{
    (void)user;
    return celsius[channel];
}

static struct rig_value read_amperes(void *user, uint8_t channel)
{
    (void)user;
    return amperes[channel];
}

static bool switch_load(void *user, uint8_t channel, bool applied)
{
    (void)user;
    if (!stuck[channel]) {
        load[channel] = applied;
    }
    return !stuck[channel];
}

static uint32_t millis(void *user)
{
    (void)user;
    return clock_millis;
}

static void put(void *user, const uint8_t *bytes, size_t count)
{
    (void)user;
    if (sent_count + count > SENT_MOST) {
        abort();
    }
    memcpy(sent + sent_count, bytes, count);
    sent_count += count;
}

static void pull_lead(void *user, uint8_t channel, bool now)
{
    (void)user;
    pulled[channel] = now;
}

static void blink(void *user, uint8_t channel, uint8_t seconds)
{
    (void)user;
    (void)channel;
    (void)seconds;
}

static void buzz(void *user, uint8_t seconds)
{
    (void)user;
    (void)seconds;
}

static uint8_t contacts(void *user)
{
    (void)user;
    return 1;
}

static uint8_t may_not_close(void *user, uint8_t channel)
{
    (void)user;
    return channel < CHANNELS ? hindered[channel] : 0;
}

static void hear(struct rig_board *board, const char *hex)
{
    unsigned byte = 0;
    while (sscanf(hex, " %2x", &byte) == 1) {
        rig_board_receive(board, (uint8_t)byte);
        hex += strspn(hex, " ");
        hex += 2;
    }
}

static void set(struct rig_value *values, const char *line)
{
    unsigned channel = 0;
    int counts = 0;
    int valid = 0;
    int at_rail = 0;
    int open = 0;
    if (sscanf(line, "%u %d %d %d %d", &channel, &counts, &valid, &at_rail, &open) >= 4 && channel < CHANNELS) {
        struct rig_value value = {counts, valid != 0, at_rail != 0, open != 0};
        values[channel] = value;
    }
}

int main(void)
{
    static struct rig_board board;
    static char line[1 << 16];
    const struct rig_hardware hardware = {
        .read_volts = read_volts,
        .read_celsius = read_celsius,
        .switch_load = switch_load,
        .millis = millis,
        .put = put,
        .read_amperes = read_amperes,
        .pull_lead = pull_lead,
        .blink = blink,
        .buzz = buzz,
        .contacts = contacts,
        .may_not_close = may_not_close,
    };
    printf("%zu\n", sizeof board);
    fflush(stdout);
    while (fgets(line, sizeof line, stdin) != NULL) {
        unsigned number = 0;
        unsigned reason = 0;
        int counts = 0;
        if (strncmp(line, "start", 5) == 0) {
            printf("started %d\n", rig_board_start(&board, &facts, &hardware, 17));
        } else if (strncmp(line, "hear", 4) == 0) {
            hear(&board, line + 4);
        } else if (sscanf(line, "pass %u", &number) == 1) {
            for (; number > 0; number--) {
                clock_millis++;
                rig_board_tick(&board);
            }
        } else if (sscanf(line, "clock %u", &number) == 1) {
            clock_millis = number;
        } else if (sscanf(line, "scan %u", &number) == 1) {
            board.scan = number;
        } else if (sscanf(line, "sequence %u", &number) == 1) {
            board.sender.sequence = (uint16_t)number;
        } else if (strncmp(line, "volts", 5) == 0) {
            set(volts, line + 5);
        } else if (strncmp(line, "celsius", 7) == 0) {
            set(celsius, line + 7);
        } else if (strncmp(line, "amperes", 7) == 0) {
            set(amperes, line + 7);
        } else if (sscanf(line, "pulled %u %d", &number, &counts) == 2 && number < CHANNELS) {
            pulled_counts[number] = counts;
        } else if (sscanf(line, "stuck %u", &number) == 1 && number < CHANNELS) {
            stuck[number] = true;
        } else if (sscanf(line, "hindered %u %u", &number, &reason) == 2 && number < CHANNELS) {
            hindered[number] = (uint8_t)reason;
        } else {
            printf("what? %s", line);
        }
        printf("sent ");
        for (size_t at = 0; at < sent_count; at++) {
            printf("%02X", sent[at]);
        }
        sent_count = 0;
        printf("\nloads %d %d %d\n.\n", load[0], load[1], load[2]);
        fflush(stdout);
    }
    return 0;
}
