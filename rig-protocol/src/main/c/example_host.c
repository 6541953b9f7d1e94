/*
 * The same board on a POSIX computer, behind a pseudo-terminal: a rack to try the service with, and the tests' own board.
 * Its two cells are invented and simple: 3.7 V, and on their load 30 mV less and falling by 1 mV a second.
 *
 *     example_host LINK [BOOT]     makes LINK a symbolic link to the terminal's name, tells it, and runs until its input ends
 *
 * A line on its standard input is a mishap: "reboot", "open 0" (a sensor falls off), "lead 0" (so does a lead), "stop"
 * (nothing is sent or heard any more) and "go". After each it says "ok" and, for every channel, whether its load is on.
 */
#define _XOPEN_SOURCE 600

#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <termios.h>
#include <time.h>
#include <unistd.h>

#include "rig_board.h"

enum { CELLS = 2, CHANNELS = 3, TICK_MILLIS = 5, FULL = 37000, SAG = 300, OPEN_LEAD = 33000, WARM = 2200 };

static const struct rig_channel channels[CHANNELS] = {
    {RIG_CELL, RIG_VOLTS | RIG_CELSIUS | RIG_AMPERES | RIG_LOAD_SWITCH | RIG_LEAD_CHECK | RIG_BLINK, 4700},
    {RIG_CELL, RIG_VOLTS | RIG_CELSIUS | RIG_AMPERES | RIG_LOAD_SWITCH | RIG_LEAD_CHECK | RIG_BLINK, 10000},
    {RIG_AMBIENT, RIG_CELSIUS, 0},
};

static const struct rig_facts facts = {
    .serial_number = "C-0001",
    .firmware = "example",
    .clock = RIG_CLOCK_CRYSTAL,
    .interval_millis = 200,
    .shortest_interval_millis = 50,
    .host_timeout_millis = 3000,
    .volts_nanovolts = 100000,
    .amperes_nanoamperes = 100000,
    .celsius_microkelvin = 10000,
    .converter_low = -2000,
    .converter_high = 50000,
    .offset_nanovolts = 2000000,
    .gain_parts_per_million = 1500,
    .celsius_uncertainty_microkelvin = 500000,
    .contact_inputs = 1,
    .lead_settle_millis = 100,
    .lead_open_counts = OPEN_LEAD,
    .channels = CHANNELS,
    .channel = channels,
};

struct bench {
    int terminal;
    struct timespec began;
    bool stopped;
    bool load[CELLS];
    uint32_t load_since[CELLS];
    int32_t fallen[CELLS];
    bool lead_off[CELLS];
    bool pulled[CELLS];
    bool sensor_off[CHANNELS];
};

static uint32_t millis(void *user)
{
    const struct bench *bench = user;
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (uint32_t)((now.tv_sec - bench->began.tv_sec) * 1000 + (now.tv_nsec - bench->began.tv_nsec) / 1000000);
}

static int32_t volts_counts(const struct bench *bench, uint8_t channel, uint32_t now)
{
    if (bench->lead_off[channel]) {
        return bench->pulled[channel] ? OPEN_LEAD : 0;
    }
    int32_t fallen = bench->fallen[channel];
    if (bench->load[channel]) {
        fallen += SAG + (int32_t)((now - bench->load_since[channel]) / 100);
    }
    return FULL - fallen;
}

static struct rig_value measured(int32_t counts)
{
    struct rig_value value = {counts, true, false, false};
    return value;
}

static struct rig_value read_volts(void *user, uint8_t channel)
{
    return measured(volts_counts(user, channel, millis(user)));
}

static struct rig_value read_amperes(void *user, uint8_t channel)
{
    const struct bench *bench = user;
    int64_t microvolts = (int64_t)volts_counts(bench, channel, millis(user)) * 100;
    return measured(bench->load[channel] ? (int32_t)(microvolts * 10 / channels[channel].load_milliohms) : 0);
}

static struct rig_value read_celsius(void *user, uint8_t channel)
{
    const struct bench *bench = user;
    struct rig_value value = measured(WARM + channel);
    value.open = bench->sensor_off[channel];
    value.valid = !value.open;
    return value;
}

static bool switch_load(void *user, uint8_t channel, bool applied)
{
    struct bench *bench = user;
    uint32_t now = millis(user);
    if (bench->load[channel] && !applied) {
        bench->fallen[channel] += (int32_t)((now - bench->load_since[channel]) / 100);
    }
    if (!bench->load[channel] && applied) {
        bench->load_since[channel] = now;
    }
    bench->load[channel] = applied;
    return true;
}

static void pull_lead(void *user, uint8_t channel, bool pulled)
{
    struct bench *bench = user;
    bench->pulled[channel] = pulled;
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

/* A terminal nobody reads fills up: what does not fit is thrown away, as a board without a connection does. */
static void put(void *user, const uint8_t *bytes, size_t count)
{
    const struct bench *bench = user;
    if (!bench->stopped && write(bench->terminal, bytes, count) < 0 && errno != EAGAIN && errno != EIO) {
        perror("write");
        exit(1);
    }
}

static int open_terminal(const char *link)
{
    int terminal = posix_openpt(O_RDWR | O_NOCTTY);
    struct termios raw;
    if (terminal < 0 || grantpt(terminal) < 0 || unlockpt(terminal) < 0 || tcgetattr(terminal, &raw) < 0) {
        perror("pseudo-terminal");
        exit(1);
    }
    raw.c_iflag = 0;
    raw.c_oflag = 0;
    raw.c_lflag = 0;
    raw.c_cflag = (raw.c_cflag & ~(tcflag_t)(CSIZE | PARENB)) | CS8 | CREAD | CLOCAL;
    const char *name = ptsname(terminal);
    (void)unlink(link);
    if (tcsetattr(terminal, TCSANOW, &raw) < 0 || fcntl(terminal, F_SETFL, O_NONBLOCK) < 0 || name == NULL
        || symlink(name, link) < 0) {
        perror(link);
        exit(1);
    }
    /* Held open, so that the terminal does not hang up while no service has it. */
    if (open(name, O_RDWR | O_NOCTTY) < 0) {
        perror(name);
        exit(1);
    }
    return terminal;
}

static void hear(struct rig_board *board, struct bench *bench)
{
    uint8_t bytes[256];
    ssize_t count = read(bench->terminal, bytes, sizeof bytes);
    for (ssize_t at = 0; at < count && !bench->stopped; at++) {
        rig_board_receive(board, bytes[at]);
    }
}

static void mishap(struct rig_board *board, struct bench *bench, const struct rig_hardware *hardware, const char *line)
{
    unsigned channel = 0;
    if (strncmp(line, "reboot", 6) == 0) {
        clock_gettime(CLOCK_MONOTONIC, &bench->began);
        (void)rig_board_start(board, &facts, hardware, board->boot_number + 1);
    } else if (strncmp(line, "stop", 4) == 0) {
        bench->stopped = true;
    } else if (strncmp(line, "go", 2) == 0) {
        bench->stopped = false;
    } else if (sscanf(line, "open %u", &channel) == 1 && channel < CHANNELS) {
        bench->sensor_off[channel] = true;
    } else if (sscanf(line, "lead %u", &channel) == 1 && channel < CELLS) {
        bench->lead_off[channel] = true;
    } else {
        printf("what? %s\n", line);
        return;
    }
    printf("ok %d %d\n", bench->load[0], bench->load[1]);
}

int main(int count, char **arguments)
{
    if (count < 2) {
        fprintf(stderr, "usage: %s LINK [BOOT]\n", arguments[0]);
        return 2;
    }
    static struct bench bench;
    static struct rig_board board;
    const struct rig_hardware hardware = {
        .user = &bench,
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
    };
    clock_gettime(CLOCK_MONOTONIC, &bench.began);
    bench.terminal = open_terminal(arguments[1]);
    setvbuf(stdout, NULL, _IOLBF, 0);
    printf("%s\n", arguments[1]);
    uint32_t boot = count > 2 ? (uint32_t)strtoul(arguments[2], NULL, 10) : 1;
    if (!rig_board_start(&board, &facts, &hardware, boot)) {
        return 1;
    }
    for (;;) {
        struct pollfd ready[2] = {{bench.terminal, POLLIN, 0}, {STDIN_FILENO, POLLIN, 0}};
        (void)poll(ready, 2, TICK_MILLIS);
        if ((ready[0].revents & POLLIN) != 0) {
            hear(&board, &bench);
        }
        if (ready[1].revents != 0) {
            char line[80];
            if (fgets(line, sizeof line, stdin) == NULL) {
                (void)unlink(arguments[1]);
                return 0;
            }
            mishap(&board, &bench, &hardware, line);
        }
        rig_board_tick(&board);
    }
}
