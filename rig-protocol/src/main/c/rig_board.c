#include "rig_board.h"

#include <string.h>

enum {
    IDENTITY = 0x01,
    READINGS = 0x02,
    LEAD_CHECKED = 0x03,
    DONE = 0x04,
    REFUSED = 0x05,
    WHO = 0x41,
    HOST_ALIVE = 0x42,
    SET_LOAD = 0x43,
    CHECK_LEAD = 0x44,
    BLINK = 0x45,
    BUZZER = 0x46,
    SET_INTERVAL = 0x47,
    OPEN_ALL_LOADS = 0x48,
    LAST_HOST_KIND = 0x7F
};

enum { HAS_BUZZER = 2, HAS_RELAY = 4 };

enum {
    VOLTS_VALID = 1,
    CELSIUS_VALID = 2,
    AMPERES_VALID = 4,
    VOLTS_AT_RAIL = 8,
    CELSIUS_AT_RAIL = 16,
    LOAD_APPLIED = 32,
    OPEN_SENSOR = 64
};

enum { ATTACHED = 0, OPEN = 1, NOT_DONE = 2 };

enum {
    NO_CHANNEL = 0xFF,
    SHORTEST_MILLIS = 10,
    LONGEST_MILLIS = 60000,
    LEAST_HOST_TIMEOUT_MILLIS = 3000,
    DEAD_FRAME_MILLIS = 1000,
    LONGEST_TEXT = 32,
    LONGEST_SETTLE_MILLIS = 800
};

static uint32_t now(const struct rig_board *board)
{
    return board->hardware->millis(board->hardware->user);
}

static bool can(const struct rig_board *board, uint8_t channel, uint8_t ability)
{
    return (board->facts->channel[channel].abilities & ability) != 0;
}

static bool has_amperes(const struct rig_board *board)
{
    for (uint8_t channel = 0; channel < board->facts->channels; channel++) {
        if (can(board, channel, RIG_AMPERES)) {
            return true;
        }
    }
    return false;
}

static bool switches_loads(const struct rig_board *board)
{
    for (uint8_t channel = 0; channel < board->facts->channels; channel++) {
        if (can(board, channel, RIG_LOAD_SWITCH)) {
            return true;
        }
    }
    return false;
}

/* ---- loads ---- */

static bool switch_load(struct rig_board *board, uint8_t channel, bool applied)
{
    bool acted = board->hardware->switch_load(board->hardware->user, channel, applied);
    if (acted) {
        board->applied[channel] = applied;
    }
    return acted;
}

/* Opens every load and the relay; gives the channel that would not open, 0xFF for the relay, or `all`. */
static int open_all(struct rig_board *board, int all)
{
    int stuck = all;
    if (board->hardware->open_relay != NULL) {
        board->relay_open = board->hardware->open_relay(board->hardware->user, true);
        stuck = board->relay_open ? all : NO_CHANNEL;
    }
    for (uint8_t channel = 0; channel < board->facts->channels; channel++) {
        if (can(board, channel, RIG_LOAD_SWITCH) && !switch_load(board, channel, false)) {
            stuck = channel;
        }
    }
    return stuck;
}

bool rig_board_is_applied(const struct rig_board *board, uint8_t channel)
{
    return channel < board->facts->channels && board->applied[channel];
}

/* ---- what the board says ---- */

static void say_identity(struct rig_board *board)
{
    const struct rig_facts *facts = board->facts;
    const struct rig_hardware *hardware = board->hardware;
    struct rig_sender *sender = &board->sender;
    rig_frame_begin(sender, IDENTITY);
    rig_put_u32(sender, board->boot_number);
    rig_put_u8(sender, facts->clock);
    rig_put_u8(
        sender,
        (uint8_t)((hardware->buzz != NULL ? HAS_BUZZER : 0) | (hardware->open_relay != NULL ? HAS_RELAY : 0)));
    rig_put_u16(sender, 1);
    rig_put_u32(sender, board->interval_millis);
    rig_put_u32(sender, facts->host_timeout_millis);
    rig_put_u32(sender, facts->volts_nanovolts);
    rig_put_u32(sender, facts->amperes_nanoamperes);
    rig_put_u32(sender, facts->celsius_microkelvin);
    rig_put_i32(sender, facts->converter_low);
    rig_put_i32(sender, facts->converter_high);
    rig_put_u32(sender, facts->offset_nanovolts);
    rig_put_u32(sender, facts->gain_parts_per_million);
    rig_put_u32(sender, facts->celsius_uncertainty_microkelvin);
    rig_put_u8(sender, facts->contact_inputs);
    rig_put_text(sender, facts->serial_number);
    rig_put_text(sender, facts->firmware);
    rig_put_u8(sender, facts->channels);
    for (uint8_t channel = 0; channel < facts->channels; channel++) {
        rig_put_u8(sender, facts->channel[channel].role);
        rig_put_u8(sender, facts->channel[channel].abilities);
        rig_put_u32(sender, facts->channel[channel].load_milliohms);
    }
    rig_frame_end(sender);
}

static void say_done(struct rig_board *board, const struct rig_frame *request)
{
    rig_frame_begin(&board->sender, DONE);
    rig_put_u16(&board->sender, request->sequence);
    rig_put_u8(&board->sender, request->kind);
    rig_frame_end(&board->sender);
}

static void say_refused(struct rig_board *board, const struct rig_frame *request, uint8_t channel, uint8_t reason)
{
    rig_frame_begin(&board->sender, REFUSED);
    rig_put_u16(&board->sender, request->sequence);
    rig_put_u8(&board->sender, request->kind);
    rig_put_u8(&board->sender, channel);
    rig_put_u8(&board->sender, reason);
    rig_frame_end(&board->sender);
}

static void say_checked(
    struct rig_board *board, uint16_t sequence, uint8_t channel, uint8_t outcome, int32_t before, int32_t during)
{
    rig_frame_begin(&board->sender, LEAD_CHECKED);
    rig_put_u16(&board->sender, sequence);
    rig_put_u8(&board->sender, channel);
    rig_put_u8(&board->sender, outcome);
    rig_put_i32(&board->sender, before);
    rig_put_i32(&board->sender, during);
    rig_frame_end(&board->sender);
}

/* ---- the lead check: measured, pulled, measured, let go, and settled ---- */

static bool is_checking(const struct rig_board *board)
{
    return board->checking < RIG_CHANNELS_MOST;
}

static void pull(struct rig_board *board, bool pulled)
{
    board->hardware->pull_lead(board->hardware->user, board->checking, pulled);
    board->pulled = pulled;
    board->check_millis = now(board);
}

static void begin_check(struct rig_board *board, const struct rig_frame *request, uint8_t channel)
{
    struct rig_value before = board->hardware->read_volts(board->hardware->user, channel);
    if (board->applied[channel]) {
        say_checked(board, request->sequence, channel, NOT_DONE, before.counts, before.counts);
        return;
    }
    board->checking = channel;
    board->check_sequence = request->sequence;
    board->check_before = before.counts;
    board->check_before_valid = before.valid;
    pull(board, true);
}

/* An attached cell moves by at most a tenth of what an open lead does, an open lead by at least half. */
static uint8_t outcome(const struct rig_board *board, struct rig_value during)
{
    if (!board->check_before_valid || !during.valid) {
        return NOT_DONE;
    }
    int64_t moved = (int64_t)during.counts - board->check_before;
    int64_t open = board->facts->lead_open_counts;
    moved = moved < 0 ? -moved : moved;
    return moved * 10 <= open ? ATTACHED : moved * 2 >= open ? OPEN : NOT_DONE;
}

static void end_check(struct rig_board *board)
{
    struct rig_value during = board->hardware->read_volts(board->hardware->user, board->checking);
    uint8_t found = outcome(board, during);
    pull(board, false);
    say_checked(board, board->check_sequence, board->checking, found, board->check_before, during.counts);
}

static void abandon_check(struct rig_board *board)
{
    if (is_checking(board) && board->pulled) {
        pull(board, false);
        say_checked(
            board, board->check_sequence, board->checking, NOT_DONE, board->check_before, board->check_before);
    }
}

static void tick_check(struct rig_board *board)
{
    if (!is_checking(board) || now(board) - board->check_millis < board->facts->lead_settle_millis) {
        return;
    }
    if (board->pulled) {
        end_check(board);
    } else {
        board->checking = RIG_CHANNELS_MOST;
    }
}

/* ---- scans ---- */

static struct rig_value none(void)
{
    struct rig_value value = {0, false, false, false};
    return value;
}

static void measure(struct rig_board *board)
{
    const struct rig_hardware *hardware = board->hardware;
    for (uint8_t channel = 0; channel < board->facts->channels; channel++) {
        bool disturbed = is_checking(board) && board->checking == channel;
        board->volts[channel] =
            can(board, channel, RIG_VOLTS) && !disturbed ? hardware->read_volts(hardware->user, channel) : none();
        board->celsius[channel] =
            can(board, channel, RIG_CELSIUS) ? hardware->read_celsius(hardware->user, channel) : none();
        board->amperes[channel] =
            can(board, channel, RIG_AMPERES) ? hardware->read_amperes(hardware->user, channel) : none();
    }
}

static uint8_t state(const struct rig_board *board, uint8_t channel)
{
    struct rig_value volts = board->volts[channel];
    struct rig_value celsius = board->celsius[channel];
    return (uint8_t)((volts.valid ? VOLTS_VALID : 0) | (celsius.valid && !celsius.open ? CELSIUS_VALID : 0)
        | (board->amperes[channel].valid ? AMPERES_VALID : 0) | (volts.at_rail ? VOLTS_AT_RAIL : 0)
        | (celsius.at_rail ? CELSIUS_AT_RAIL : 0) | (board->applied[channel] ? LOAD_APPLIED : 0)
        | (celsius.open ? OPEN_SENSOR : 0));
}

static int32_t counts(struct rig_value value)
{
    return value.valid && !value.open ? value.counts : 0;
}

static void scan(struct rig_board *board)
{
    struct rig_sender *sender = &board->sender;
    uint32_t began = now(board);
    bool amperes = has_amperes(board);
    measure(board);
    board->scan = board->scan == UINT32_MAX ? 1 : board->scan + 1;
    rig_frame_begin(sender, READINGS);
    rig_put_u32(sender, board->boot_number);
    rig_put_u32(sender, began);
    rig_put_u32(sender, board->scan);
    rig_put_u8(sender, board->hardware->contacts != NULL ? board->hardware->contacts(board->hardware->user) : 0);
    rig_put_u8(sender, amperes ? 1 : 0);
    rig_put_u8(sender, 0);
    rig_put_u8(sender, board->facts->channels);
    for (uint8_t channel = 0; channel < board->facts->channels; channel++) {
        rig_put_u8(sender, state(board, channel));
        rig_put_i32(sender, counts(board->volts[channel]));
        rig_put_i32(sender, counts(board->celsius[channel]));
        if (amperes) {
            rig_put_i32(sender, counts(board->amperes[channel]));
        }
    }
    rig_frame_end(sender);
}

/* ---- what the host asks ---- */

static void answer_load(struct rig_board *board, const struct rig_frame *request)
{
    const struct rig_hardware *hardware = board->hardware;
    uint8_t channel = request->payload[0];
    bool applied = request->payload[1] != 0;
    uint8_t hindered =
        applied && hardware->may_not_close != NULL ? hardware->may_not_close(hardware->user, channel) : 0;
    if (!can(board, channel, RIG_LOAD_SWITCH)) {
        say_refused(board, request, channel, RIG_NO_ABILITY);
    } else if (applied && board->host_lost) {
        say_refused(board, request, channel, RIG_HOST_LOST);
    } else if (hindered != 0) {
        say_refused(board, request, channel, hindered);
    } else if (applied && is_checking(board) && board->checking == channel) {
        say_refused(board, request, channel, RIG_BUSY);
    } else {
        if (is_checking(board) && board->checking == channel) {
            abandon_check(board);
        }
        bool passes = true;
        if (applied && board->relay_open) {
            board->relay_open = !hardware->open_relay(hardware->user, false);
            passes = !board->relay_open;
        }
        if (passes && switch_load(board, channel, applied)) {
            say_done(board, request);
        } else {
            say_refused(board, request, channel, RIG_FAILED);
        }
    }
}

static void answer_check(struct rig_board *board, const struct rig_frame *request)
{
    uint8_t channel = request->payload[0];
    if (!can(board, channel, RIG_LEAD_CHECK)) {
        say_refused(board, request, channel, RIG_NO_ABILITY);
    } else if (is_checking(board)) {
        say_refused(board, request, channel, RIG_BUSY);
    } else {
        begin_check(board, request, channel);
    }
}

static void answer_blink(struct rig_board *board, const struct rig_frame *request)
{
    uint8_t channel = request->payload[0];
    if (!can(board, channel, RIG_BLINK)) {
        say_refused(board, request, channel, RIG_NO_ABILITY);
        return;
    }
    board->hardware->blink(board->hardware->user, channel, request->payload[1]);
    say_done(board, request);
}

static void answer_buzzer(struct rig_board *board, const struct rig_frame *request)
{
    if (board->hardware->buzz == NULL) {
        say_refused(board, request, NO_CHANNEL, RIG_NO_ABILITY);
        return;
    }
    board->hardware->buzz(board->hardware->user, request->payload[0]);
    say_done(board, request);
}

static void answer_interval(struct rig_board *board, const struct rig_frame *request)
{
    uint32_t millis = rig_u32_at(request->payload);
    if (millis < board->facts->shortest_interval_millis || millis > LONGEST_MILLIS) {
        say_refused(board, request, NO_CHANNEL, RIG_OUT_OF_RANGE);
        return;
    }
    board->interval_millis = millis;
    say_done(board, request);
}

static void answer_open_all(struct rig_board *board, const struct rig_frame *request)
{
    enum { ALL_OPEN = -1 };
    if (!switches_loads(board)) {
        say_refused(board, request, NO_CHANNEL, RIG_NO_ABILITY);
        return;
    }
    abandon_check(board);
    int stuck = open_all(board, ALL_OPEN);
    if (stuck == ALL_OPEN) {
        say_done(board, request);
    } else {
        say_refused(board, request, (uint8_t)stuck, RIG_FAILED);
    }
}

static uint8_t payload_least(uint8_t kind)
{
    switch (kind) {
    case HOST_ALIVE:
        return 8;
    case SET_INTERVAL:
        return 4;
    case SET_LOAD:
    case BLINK:
        return 2;
    case CHECK_LEAD:
    case BUZZER:
        return 1;
    default:
        return 0;
    }
}

static bool names_channel(uint8_t kind)
{
    return kind == SET_LOAD || kind == CHECK_LEAD || kind == BLINK;
}

static bool is_malformed(const struct rig_frame *request)
{
    return request->length < payload_least(request->kind)
        || (names_channel(request->kind) && request->payload[0] == NO_CHANNEL)
        || (request->kind == SET_LOAD && request->payload[1] > 1);
}

static void answer(struct rig_board *board, const struct rig_frame *request)
{
    if (request->kind < WHO || request->kind > LAST_HOST_KIND) {
        return;
    }
    if (request->kind > OPEN_ALL_LOADS) {
        say_refused(board, request, NO_CHANNEL, RIG_UNKNOWN_KIND);
    } else if (is_malformed(request)) {
        if (request->kind != HOST_ALIVE) {
            say_refused(board, request, NO_CHANNEL, RIG_OUT_OF_RANGE);
        }
    } else if (names_channel(request->kind) && request->payload[0] >= board->facts->channels) {
        say_refused(board, request, request->payload[0], RIG_NO_CHANNEL);
    } else if (request->kind == WHO) {
        say_identity(board);
    } else if (request->kind == HOST_ALIVE) {
        board->host_millis = now(board);
        board->host_lost = false;
    } else if (request->kind == SET_LOAD) {
        answer_load(board, request);
    } else if (request->kind == CHECK_LEAD) {
        answer_check(board, request);
    } else if (request->kind == BLINK) {
        answer_blink(board, request);
    } else if (request->kind == BUZZER) {
        answer_buzzer(board, request);
    } else if (request->kind == SET_INTERVAL) {
        answer_interval(board, request);
    } else {
        answer_open_all(board, request);
    }
}

void rig_board_receive(struct rig_board *board, uint8_t byte)
{
    struct rig_frame request;
    if (now(board) - board->byte_millis >= DEAD_FRAME_MILLIS) {
        rig_receiver_drop(&board->receiver);
    }
    board->byte_millis = now(board);
    if (rig_receive(&board->receiver, byte, &request)) {
        answer(board, &request);
    }
}

/* ---- the loop ---- */

static void tick_host(struct rig_board *board)
{
    uint32_t timeout = board->facts->host_timeout_millis;
    if (timeout == 0 || board->host_lost || now(board) - board->host_millis < timeout) {
        return;
    }
    board->host_lost = true;
    abandon_check(board);
    (void)open_all(board, 0);
}

void rig_board_tick(struct rig_board *board)
{
    tick_host(board);
    tick_check(board);
    if (now(board) - board->scanned_millis >= board->interval_millis) {
        uint32_t late = now(board) - board->scanned_millis - board->interval_millis;
        board->scanned_millis = now(board) - (late < board->interval_millis ? late : 0);
        scan(board);
    }
}

static bool is_text(const char *text, size_t least)
{
    size_t length = text == NULL ? 0 : strlen(text);
    if (length < least || length > LONGEST_TEXT) {
        return false;
    }
    for (size_t at = 0; at < length; at++) {
        if (text[at] < 0x20 || text[at] > 0x7E) {
            return false;
        }
    }
    return text != NULL;
}

static bool fits_channel(
    const struct rig_facts *facts, const struct rig_hardware *hardware, const struct rig_channel *channel)
{
    uint8_t abilities = channel->abilities;
    return channel->role <= RIG_BANK && ((abilities & RIG_VOLTS) == 0 || facts->volts_nanovolts > 0)
        && ((abilities & RIG_CELSIUS) == 0 || facts->celsius_microkelvin > 0)
        && ((abilities & RIG_AMPERES) == 0 || (facts->amperes_nanoamperes > 0 && hardware->read_amperes != NULL))
        && ((abilities & RIG_BLINK) == 0 || hardware->blink != NULL)
        && ((abilities & RIG_LEAD_CHECK) == 0
            || (hardware->pull_lead != NULL && facts->lead_open_counts > 0
                && facts->lead_settle_millis <= LONGEST_SETTLE_MILLIS));
}

static bool fits(const struct rig_facts *facts, const struct rig_hardware *hardware)
{
    if (hardware->read_volts == NULL || hardware->read_celsius == NULL || hardware->switch_load == NULL
        || hardware->millis == NULL || hardware->put == NULL) {
        return false;
    }
    bool timeout = facts->host_timeout_millis == 0 || facts->host_timeout_millis >= LEAST_HOST_TIMEOUT_MILLIS;
    bool interval = facts->shortest_interval_millis >= SHORTEST_MILLIS
        && facts->interval_millis >= facts->shortest_interval_millis && facts->interval_millis <= LONGEST_MILLIS;
    bool clock = facts->clock >= RIG_CLOCK_CRYSTAL && facts->clock <= RIG_CLOCK_DISCIPLINED;
    if (!timeout || !interval || !clock || facts->converter_low >= facts->converter_high || facts->contact_inputs > 8
        || !is_text(facts->serial_number, 1) || !is_text(facts->firmware, 0) || facts->channels < 1
        || facts->channels > RIG_CHANNELS_MOST) {
        return false;
    }
    for (uint8_t channel = 0; channel < facts->channels; channel++) {
        if (!fits_channel(facts, hardware, &facts->channel[channel])) {
            return false;
        }
    }
    return true;
}

bool rig_board_start(
    struct rig_board *board, const struct rig_facts *facts, const struct rig_hardware *hardware, uint32_t boot_number)
{
    memset(board, 0, sizeof *board);
    board->facts = facts;
    board->hardware = hardware;
    board->boot_number = boot_number;
    board->checking = RIG_CHANNELS_MOST;
    if (!fits(facts, hardware)) {
        return false;
    }
    (void)open_all(board, 0);
    if (hardware->buzz != NULL) {
        hardware->buzz(hardware->user, 0);
    }
    board->interval_millis = facts->interval_millis;
    board->scanned_millis = now(board);
    board->host_millis = now(board);
    board->byte_millis = now(board);
    rig_sender_begin(&board->sender, hardware->put, hardware->user);
    say_identity(board);
    return true;
}
