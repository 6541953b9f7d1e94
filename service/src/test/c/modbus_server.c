/*
 * A Modbus unit made with libmodbus, for tests: what the service reads here was encoded by somebody else.
 *
 *   modbus_server rtu TERMINAL UNIT      modbus_server tcp PORT UNIT
 *
 * Holding registers: 0 int16 -20, 1 uint16 65000, 2-3 int32 3712345 high word first, 4-5 float 25.25 high word first,
 * 6-7 the same float low word first, 8 int16 32767. Coils 0-7, input bits 0-7 follow the coils. Every other register is
 * answered with exception 2. A read from 800 on is answered as if by another unit, one from 900 on not at all.
 */
#include <errno.h>
#include <modbus/modbus.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

enum { REGISTERS = 1000, KNOWN_REGISTERS = 9, BITS = 8, IMPOSTOR_FROM = 800, DEAF_FROM = 900 };

static void fill(modbus_mapping_t *map) {
    map->tab_registers[0] = (uint16_t) -20;
    map->tab_registers[1] = 65000;
    map->tab_registers[2] = (uint16_t) (3712345 >> 16);
    map->tab_registers[3] = (uint16_t) (3712345 & 0xFFFF);
    const float celsius = 25.25f;
    uint32_t bits;
    memcpy(&bits, &celsius, sizeof bits);
    map->tab_registers[4] = map->tab_registers[7] = (uint16_t) (bits >> 16);
    map->tab_registers[5] = map->tab_registers[6] = (uint16_t) (bits & 0xFFFF);
    map->tab_registers[8] = 32767;
}

static void serve(modbus_t *ctx, modbus_mapping_t *map, int header) {
    uint8_t query[MODBUS_TCP_MAX_ADU_LENGTH];
    for (;;) {
        int length = modbus_receive(ctx, query);
        if (length == -1) {
            if (errno == ECONNRESET || errno == EBADF || errno == EIO) {
                return;
            }
            continue;
        }
        if (length == 0) {
            continue;
        }
        int function = query[header];
        int address = query[header + 1] << 8 | query[header + 2];
        if (function == 3 && address >= DEAF_FROM) {
            continue;
        }
        if (function == 3 && address >= IMPOSTOR_FROM) {
            query[header - 1]++;
        } else if (function == 3 && address >= KNOWN_REGISTERS) {
            modbus_reply_exception(ctx, query, MODBUS_EXCEPTION_ILLEGAL_DATA_ADDRESS);
            continue;
        }
        if (modbus_reply(ctx, query, length, map) == -1) {
            continue;
        }
        memcpy(map->tab_input_bits, map->tab_bits, BITS);
    }
}

int main(int argc, char **argv) {
    if (argc != 4) {
        fprintf(stderr, "usage: modbus_server rtu|tcp TERMINAL|PORT UNIT\n");
        return 2;
    }
    modbus_mapping_t *map = modbus_mapping_new(BITS, BITS, REGISTERS, 0);
    if (map == NULL) {
        return 1;
    }
    fill(map);
    if (strcmp(argv[1], "rtu") == 0) {
        modbus_t *ctx = modbus_new_rtu(argv[2], 19200, 'N', 8, 1);
        if (ctx == NULL || modbus_set_slave(ctx, atoi(argv[3])) == -1 || modbus_connect(ctx) == -1) {
            fprintf(stderr, "%s\n", modbus_strerror(errno));
            return 1;
        }
        puts("ready");
        fflush(stdout);
        serve(ctx, map, modbus_get_header_length(ctx));
        return 0;
    }
    modbus_t *ctx = modbus_new_tcp("127.0.0.1", atoi(argv[2]));
    int listening = ctx == NULL ? -1 : modbus_tcp_listen(ctx, 1);
    if (listening == -1) {
        fprintf(stderr, "%s\n", modbus_strerror(errno));
        return 1;
    }
    puts("ready");
    fflush(stdout);
    for (;;) {
        if (modbus_tcp_accept(ctx, &listening) == -1) {
            return 1;
        }
        serve(ctx, map, modbus_get_header_length(ctx));
    }
}
