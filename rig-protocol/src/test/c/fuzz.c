/*
 * Feeds a board with frames, damaged frames and noise; compiled with the address and undefined-behaviour sanitizers.
 *
 *     fuzz BYTES SEED
 *
 * Aborts where the board touches a channel it does not have, closes a load that no intact frame asked for, or closes one
 * while the host is lost.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "rig_board.h"

enum { CHANNELS = 5, FRAME_MOST = 80 };

static struct rig_channel channels[CHANNELS];
static uint32_t clock_millis;
static uint64_t random_state;
static uint8_t frame[FRAME_MOST];
static size_t frame_count;
static uint64_t asked_to_close;
static uint64_t closed;
static struct rig_board board;

static uint32_t any(void)
{
    random_state ^= random_state << 13;
    random_state ^= random_state >> 7;
    random_state ^= random_state << 17;
    return (uint32_t)(random_state >> 16);
}

static void expect(bool holds, const char *what)
{
    if (!holds) {
        fprintf(stderr, "%s\n", what);
        abort();
    }
}

static struct rig_value read_value(void *user, uint8_t channel)
{
    struct rig_value value = {(int32_t)any(), (any() & 1u) != 0, (any() & 1u) != 0, (any() & 1u) != 0};
    (void)user;
    expect(channel < CHANNELS, "a channel that is not there was read");
    return value;
}

static bool switch_load(void *user, uint8_t channel, bool applied)
{
    (void)user;
    expect(channel < CHANNELS && (channels[channel].abilities & RIG_LOAD_SWITCH) != 0, "a switch that is not there");
    if (applied) {
        closed++;
        expect(closed <= asked_to_close, "a load closed that nobody asked for");
        expect(!board.host_lost, "a load closed while the host is lost");
    }
    return (any() & 15u) != 0;
}

static uint32_t millis(void *user)
{
    (void)user;
    return clock_millis;
}

static void put(void *user, const uint8_t *bytes, size_t count)
{
    (void)user;
    (void)bytes;
    expect(count > 0 && count <= 255, "more than a block");
}

static void collect(void *user, const uint8_t *bytes, size_t count)
{
    (void)user;
    expect(frame_count + count <= FRAME_MOST, "a frame too long");
    memcpy(frame + frame_count, bytes, count);
    frame_count += count;
}

static void pull_lead(void *user, uint8_t channel, bool pulled)
{
    (void)user;
    (void)pulled;
    expect(channel < CHANNELS, "a lead that is not there");
}

static void blink(void *user, uint8_t channel, uint8_t seconds)
{
    (void)user;
    (void)seconds;
    expect(channel < CHANNELS, "a lamp that is not there");
}

static bool open_relay(void *user, bool open)
{
    (void)user;
    (void)open;
    return (any() & 15u) != 0;
}

/* One request, mostly one the protocol names; then, mostly, left whole. Says whether it may close a load. */
static bool make_frame(struct rig_sender *sender)
{
    frame_count = 0;
    uint8_t kind = (any() & 7u) != 0 ? (uint8_t)(0x41 + any() % 9) : (uint8_t)any();
    rig_frame_begin(sender, kind);
    for (uint32_t length = any() % 12; length > 0; length--) {
        rig_put_u8(sender, (uint8_t)(any() % ((any() & 1u) != 0 ? 7 : 256)));
    }
    rig_frame_end(sender);
    if ((any() & 3u) == 0) {
        frame[any() % frame_count] = (uint8_t)any();
    }
    return kind == 0x43;
}

int main(int count, char **arguments)
{
    if (count != 3) {
        return 2;
    }
    uint64_t bytes = strtoull(arguments[1], NULL, 10);
    random_state = strtoull(arguments[2], NULL, 10) * 0x9E3779B97F4A7C15u + 1;
    for (uint8_t channel = 0; channel < CHANNELS; channel++) {
        channels[channel].role = channel;
        channels[channel].abilities = channel < 3 ? 0x3F : 0x02;
        channels[channel].load_milliohms = 1000;
    }
    const struct rig_facts facts = {
        .serial_number = "F",
        .firmware = "",
        .clock = RIG_CLOCK_RESONATOR,
        .interval_millis = 50,
        .shortest_interval_millis = 10,
        .host_timeout_millis = 3000,
        .volts_nanovolts = 1,
        .amperes_nanoamperes = 1,
        .celsius_microkelvin = 1,
        .converter_high = 1,
        .lead_settle_millis = 20,
        .lead_open_counts = INT32_MAX,
        .channels = CHANNELS,
        .channel = channels,
    };
    const struct rig_hardware hardware = {
        .read_volts = read_value,
        .read_celsius = read_value,
        .switch_load = switch_load,
        .millis = millis,
        .put = put,
        .read_amperes = read_value,
        .pull_lead = pull_lead,
        .blink = blink,
        .open_relay = open_relay,
    };
    struct rig_sender sender;
    frame_count = 0;
    rig_sender_begin(&sender, collect, NULL);
    expect(rig_board_start(&board, &facts, &hardware, 1), "the board did not start");
    uint64_t fed = 0;
    while (fed < bytes) {
        asked_to_close += make_frame(&sender) ? 1 : 0;
        for (size_t at = 0; at < frame_count; at++, fed++) {
            rig_board_receive(&board, frame[at]);
        }
        for (uint32_t noise = (any() & 31u) == 0 ? any() % 200 : 0; noise > 0; noise--, fed++) {
            rig_board_receive(&board, (uint8_t)any());
        }
        clock_millis += (any() & 1023u) == 0 ? any() : any() % 20;
        rig_board_tick(&board);
    }
    printf("%llu bytes, %llu asked to close, %llu closed\n", (unsigned long long)fed,
        (unsigned long long)asked_to_close, (unsigned long long)closed);
    return 0;
}
