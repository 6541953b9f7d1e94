/*
 * Frames of the rig protocol, version 1 (docs/rig-protocol.md, part 1): CRC-32C, COBS, and the fields of a payload.
 *
 * Portable C99: no heap, no dependency. Not safe for use by several threads or by an interrupt and the loop at once.
 */
#ifndef RIG_FRAME_H
#define RIG_FRAME_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* Longest encoded frame that is received, its delimiter left out. The host sends nothing longer to a board. */
#ifndef RIG_RECEIVED_MOST
#define RIG_RECEIVED_MOST 64
#endif

/* Of a frame: version, kind, sequence; and at its end the CRC. */
enum { RIG_VERSION = 1, RIG_HEADER_BYTES = 4, RIG_CRC_BYTES = 4, RIG_BLOCK_MOST = 254 };

/* Takes bytes towards the host; must take all of them. */
typedef void (*rig_put)(void *user, const uint8_t *bytes, size_t count);

/* Carries on a CRC-32C over more bytes; begins with 0. */
uint32_t rig_crc32c(uint32_t crc, const uint8_t *bytes, size_t count);

/* Sends one frame, field by field, as it is made: only one COBS block is kept. */
struct rig_sender {
    rig_put put;
    void *user;
    uint16_t sequence;
    uint32_t crc;
    uint8_t block[RIG_BLOCK_MOST + 1];
    uint8_t length;
};

/* Begins with one delimiter, so that whatever stood on the line before ends. */
void rig_sender_begin(struct rig_sender *sender, rig_put put, void *user);

void rig_frame_begin(struct rig_sender *sender, uint8_t kind);
void rig_put_u8(struct rig_sender *sender, uint8_t value);
void rig_put_u16(struct rig_sender *sender, uint16_t value);
void rig_put_u32(struct rig_sender *sender, uint32_t value);
void rig_put_i32(struct rig_sender *sender, int32_t value);
/* Printable ASCII after its length; the sender cuts nothing, so at most 255 characters. */
void rig_put_text(struct rig_sender *sender, const char *text);
void rig_frame_end(struct rig_sender *sender);

/* Collects bytes until a delimiter. */
struct rig_receiver {
    uint8_t bytes[RIG_RECEIVED_MOST];
    uint16_t count;
    bool overlong;
};

/* A frame that arrived whole; the payload lies in the receiver, until the next byte is taken. */
struct rig_frame {
    uint8_t kind;
    uint16_t sequence;
    const uint8_t *payload;
    uint16_t length;
};

/* Drops what has been collected of a frame. */
void rig_receiver_drop(struct rig_receiver *receiver);

/* Takes one byte; says whether it ended a frame of this version that is intact, and then what it is. */
bool rig_receive(struct rig_receiver *receiver, uint8_t byte, struct rig_frame *frame);

/* The u32 that begins at these bytes. */
uint32_t rig_u32_at(const uint8_t *bytes);

#endif
