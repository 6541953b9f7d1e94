#include "rig_frame.h"

#include <string.h>

uint32_t rig_crc32c(uint32_t crc, const uint8_t *bytes, size_t count)
{
    crc = ~crc;
    for (size_t at = 0; at < count; at++) {
        crc ^= bytes[at];
        for (int bit = 0; bit < 8; bit++) {
            crc = (crc & 1u) != 0 ? (crc >> 1) ^ 0x82F63B78u : crc >> 1;
        }
    }
    return ~crc;
}

/* ---- sending ---- */

static void end_block(struct rig_sender *sender)
{
    sender->block[0] = (uint8_t)(sender->length + 1);
    sender->put(sender->user, sender->block, (size_t)sender->length + 1);
    sender->length = 0;
}

/* A full block ends only when another byte follows: the last block's zero does not exist. */
static void put_stuffed(struct rig_sender *sender, uint8_t byte)
{
    if (sender->length == RIG_BLOCK_MOST) {
        end_block(sender);
    }
    if (byte == 0) {
        end_block(sender);
    } else {
        sender->length++;
        sender->block[sender->length] = byte;
    }
}

void rig_sender_begin(struct rig_sender *sender, rig_put put, void *user)
{
    static const uint8_t delimiter = 0;
    sender->put = put;
    sender->user = user;
    sender->sequence = 0;
    sender->crc = 0;
    sender->length = 0;
    put(user, &delimiter, 1);
}

void rig_frame_begin(struct rig_sender *sender, uint8_t kind)
{
    sender->crc = 0;
    sender->length = 0;
    rig_put_u8(sender, RIG_VERSION);
    rig_put_u8(sender, kind);
    rig_put_u16(sender, sender->sequence);
    sender->sequence = (uint16_t)(sender->sequence + 1u);
}

void rig_put_u8(struct rig_sender *sender, uint8_t value)
{
    sender->crc = rig_crc32c(sender->crc, &value, 1);
    put_stuffed(sender, value);
}

void rig_put_u16(struct rig_sender *sender, uint16_t value)
{
    rig_put_u8(sender, (uint8_t)(value & 0xFFu));
    rig_put_u8(sender, (uint8_t)(value >> 8));
}

void rig_put_u32(struct rig_sender *sender, uint32_t value)
{
    rig_put_u16(sender, (uint16_t)(value & 0xFFFFu));
    rig_put_u16(sender, (uint16_t)(value >> 16));
}

void rig_put_i32(struct rig_sender *sender, int32_t value)
{
    rig_put_u32(sender, (uint32_t)value);
}

void rig_put_text(struct rig_sender *sender, const char *text)
{
    size_t length = strlen(text);
    rig_put_u8(sender, (uint8_t)length);
    for (size_t at = 0; at < length; at++) {
        rig_put_u8(sender, (uint8_t)text[at]);
    }
}

void rig_frame_end(struct rig_sender *sender)
{
    static const uint8_t delimiter = 0;
    rig_put_u32(sender, sender->crc);
    end_block(sender);
    sender->put(sender->user, &delimiter, 1);
}

/* ---- receiving ---- */

void rig_receiver_drop(struct rig_receiver *receiver)
{
    receiver->count = 0;
    receiver->overlong = false;
}

/* In place: what is decoded is never longer than what it came from. Returns the length, or -1 where it is no COBS. */
static int unstuff(uint8_t *bytes, int count)
{
    int from = 0;
    int to = 0;
    while (from < count) {
        int code = bytes[from++];
        if (code == 0 || code - 1 > count - from) {
            return -1;
        }
        for (int follows = 1; follows < code; follows++) {
            bytes[to++] = bytes[from++];
        }
        if (code != RIG_BLOCK_MOST + 1 && from < count) {
            bytes[to++] = 0;
        }
    }
    return to;
}

uint32_t rig_u32_at(const uint8_t *bytes)
{
    return (uint32_t)bytes[0] | (uint32_t)bytes[1] << 8 | (uint32_t)bytes[2] << 16 | (uint32_t)bytes[3] << 24;
}

static bool open_frame(uint8_t *bytes, int count, struct rig_frame *frame)
{
    int length = unstuff(bytes, count);
    if (length < RIG_HEADER_BYTES + RIG_CRC_BYTES) {
        return false;
    }
    size_t covered = (size_t)(length - RIG_CRC_BYTES);
    if (rig_crc32c(0, bytes, covered) != rig_u32_at(bytes + covered) || bytes[0] != RIG_VERSION) {
        return false;
    }
    frame->kind = bytes[1];
    frame->sequence = (uint16_t)(bytes[2] | (unsigned)bytes[3] << 8);
    frame->payload = bytes + RIG_HEADER_BYTES;
    frame->length = (uint16_t)(covered - RIG_HEADER_BYTES);
    return true;
}

bool rig_receive(struct rig_receiver *receiver, uint8_t byte, struct rig_frame *frame)
{
    if (byte != 0) {
        if (receiver->count < RIG_RECEIVED_MOST) {
            receiver->bytes[receiver->count++] = byte;
        } else {
            receiver->overlong = true;
        }
        return false;
    }
    bool whole = receiver->count > 0 && !receiver->overlong && open_frame(receiver->bytes, receiver->count, frame);
    rig_receiver_drop(receiver);
    return whole;
}
