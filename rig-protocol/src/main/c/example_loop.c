/*
 * A board of four channels on a microcontroller: three cells with switched loads and the room. Fill in the functions under
 * "hardware" for your chip; everything else stays as it is. Compile with rig_frame.c and rig_board.c.
 *
 * Before any of this runs, every load must be open by hardware: a pull-down at each switch.
 */
#include "rig_board.h"

/* ---- hardware: yours ---- */

extern uint32_t chip_millis(void);                               /* free-running milliseconds since power-on */
extern int32_t chip_read_microvolts(uint8_t channel, bool *ok);  /* at the cell's own sense leads */
extern int32_t chip_read_millikelvin(uint8_t channel, bool *ok); /* above 0 degC; not ok: the sensor does not answer */
extern bool chip_switch_load(uint8_t channel, bool applied);     /* says whether the switch did it */
extern void chip_send(const uint8_t *bytes, size_t count);       /* waits until all are on their way */
extern int chip_received(void);                                  /* the next byte from the host, -1 for none */
extern uint32_t chip_next_boot_number(void);                     /* in non-volatile memory; 0 where there is none */

/* ---- what the board is ---- */

enum { MICROVOLTS_A_COUNT = 100, MILLIKELVIN_A_COUNT = 10 };

static const struct rig_channel channels[] = {
    {RIG_CELL, RIG_VOLTS | RIG_CELSIUS | RIG_LOAD_SWITCH, 4700},
    {RIG_CELL, RIG_VOLTS | RIG_CELSIUS | RIG_LOAD_SWITCH, 4700},
    {RIG_CELL, RIG_VOLTS | RIG_CELSIUS | RIG_LOAD_SWITCH, 10000},
    {RIG_AMBIENT, RIG_CELSIUS, 0},
};

static const struct rig_facts facts = {
    .serial_number = "BENCH-1", /* the chip's own number is better: no two boards may share one */
    .firmware = "1",
    .clock = RIG_CLOCK_CRYSTAL,
    .interval_millis = 1000,
    .shortest_interval_millis = 200,
    .host_timeout_millis = 10000,
    .volts_nanovolts = MICROVOLTS_A_COUNT * 1000,
    .celsius_microkelvin = MILLIKELVIN_A_COUNT * 1000,
    .converter_low = -2000, /* -0.2 V: lower than 0 V, or a reversed cell cannot be told from an empty one */
    .converter_high = 50000,
    .offset_nanovolts = 2000000,
    .gain_parts_per_million = 1500,
    .celsius_uncertainty_microkelvin = 500000,
    .channels = sizeof channels / sizeof channels[0],
    .channel = channels,
};

/* ---- from one to the other ---- */

static struct rig_value read_volts(void *user, uint8_t channel)
{
    struct rig_value value = {0, false, false, false};
    (void)user;
    value.counts = chip_read_microvolts(channel, &value.valid) / MICROVOLTS_A_COUNT;
    value.at_rail = value.valid && (value.counts <= facts.converter_low || value.counts >= facts.converter_high);
    return value;
}

static struct rig_value read_celsius(void *user, uint8_t channel)
{
    struct rig_value value = {0, false, false, false};
    (void)user;
    value.counts = chip_read_millikelvin(channel, &value.valid) / MILLIKELVIN_A_COUNT;
    value.open = !value.valid;
    return value;
}

static bool switch_load(void *user, uint8_t channel, bool applied)
{
    (void)user;
    return chip_switch_load(channel, applied);
}

static uint32_t millis(void *user)
{
    (void)user;
    return chip_millis();
}

static void put(void *user, const uint8_t *bytes, size_t count)
{
    (void)user;
    chip_send(bytes, count);
}

int main(void)
{
    static struct rig_board board;
    static const struct rig_hardware hardware = {
        .read_volts = read_volts,
        .read_celsius = read_celsius,
        .switch_load = switch_load,
        .millis = millis,
        .put = put,
    };
    if (!rig_board_start(&board, &facts, &hardware, chip_next_boot_number())) {
        return 1;
    }
    for (;;) {
        for (int byte = chip_received(); byte >= 0; byte = chip_received()) {
            rig_board_receive(&board, (uint8_t)byte);
        }
        rig_board_tick(&board); /* feed the chip's watchdog here, and nowhere else */
    }
}
