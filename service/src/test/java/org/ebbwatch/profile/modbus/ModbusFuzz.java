package org.ebbwatch.profile.modbus;

import com.digitalpetri.modbus.Crc16;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.ebbwatch.profile.FuzzCount;

/**
 * Requests of every kind and size, answered rightly, wrongly, too late, by another unit, cut, joined with noise, or by noise alone.
 * What is taken for data must be what the unit asked sent for this request.
 */
public final class ModbusFuzz {
    private static final List<Table> TABLES = List.of(Table.values());

    private final SplittableRandom dice;
    private final FuzzCount count = new FuzzCount();
    private final boolean rtu;
    private Wire wire;
    private int transaction;

    /** For one framing. */
    public ModbusFuzz(ModbusProfile.Framing framing, long seed) {
        dice = new SplittableRandom(seed);
        rtu = framing == ModbusProfile.Framing.RTU;
        connect();
    }

    /** Feeds at least so many bytes. */
    public FuzzCount run(long bytes) {
        while (count.bytes() < bytes) {
            Request request = anyRequest();
            byte[] sent = data(request);
            byte[] asked = wire.begin(request);
            transaction = rtu ? 0 : ((asked[0] & 0xFF) << 8) | (asked[1] & 0xFF);
            byte[] answer = framed(request.unitId(), answerPdu(request, sent));
            if (dice.nextInt(2) == 0) {
                count.sent();
                judge(feed(answer), sent);
            } else {
                count.damaged();
                damage(request, sent, answer);
            }
        }
        return count;
    }

    private void damage(Request request, byte[] sent, byte[] answer) {
        switch (dice.nextInt(rtu ? 8 : 6)) {
            case 0 -> judge(feed(noise()), sent);
            case 1 -> judge(feed(Arrays.copyOf(answer, dice.nextInt(answer.length))), sent);
            case 2 -> judge(feed(framed(request.unitId() ^ (1 + dice.nextInt(255)), answerPdu(request, sent))), null);
            case 3 -> judge(feed(framed(request.unitId(), exception(request))), null);
            case 4 -> {
                byte[] pdu = answerPdu(request, sent);
                byte[] longer = Arrays.copyOf(pdu, pdu.length + 1 + dice.nextInt(4));
                judge(feed(framed(request.unitId(), longer)), sent);
            }
            case 5 -> {
                byte[] pdu = answerPdu(request, sent);
                pdu[0] = (byte) (1 + (pdu[0] + dice.nextInt(5)) % 6);
                judge(feed(framed(request.unitId(), pdu)), pdu[0] == request.pdu()[0] ? sent : null);
            }
            case 6 -> judge(feed(burst(answer)), null);
            default -> scrambled(answer, sent);
        }
        if (!rtu) {
            connect();
        }
    }

    /** Up to 16 neighbouring bits: no such damage has the right CRC-16. */
    private byte[] burst(byte[] answer) {
        int bits = 1 + dice.nextInt(16);
        int from = dice.nextInt(8 * answer.length - bits + 1);
        for (int bit = from; bit < from + bits; bit++) {
            if (bit == from || bit == from + bits - 1 || dice.nextBoolean()) {
                answer[bit / 8] ^= (byte) (1 << (bit % 8));
            }
        }
        return answer;
    }

    /** Random bytes behind a right beginning: one in 65,536 has the right CRC-16, so they are counted apart. */
    private void scrambled(byte[] answer, byte[] sent) {
        for (int i = 3; i < answer.length; i++) {
            answer[i] = (byte) dice.nextInt(256);
        }
        Optional<Answer> taken = feed(answer);
        boolean passed =
                taken.isPresent() && taken.get() instanceof Answer.Data data && !Arrays.equals(data.data(), sent);
        count.unnoticeable("a right beginning, then random bytes", passed);
    }

    private void judge(Optional<Answer> taken, byte[] sent) {
        if (taken.isPresent() && taken.get() instanceof Answer.Data data) {
            if (sent != null && Arrays.equals(data.data(), sent)) {
                count.right();
            } else {
                count.wrong(HexFormat.of().formatHex(data.data()));
            }
        }
    }

    private Request anyRequest() {
        int unitId = 1 + dice.nextInt(247);
        if (dice.nextInt(8) == 0) {
            return Request.write(new Spot(unitId, Table.COILS, dice.nextInt(0x1_0000)), dice.nextBoolean());
        }
        Table table = TABLES.get(dice.nextInt(TABLES.size()));
        int quantity = 1 + dice.nextInt(dice.nextInt(4) == 0 ? table.mostRead() : 8);
        return Request.read(new Span(new Spot(unitId, table, dice.nextInt(0xF000)), quantity));
    }

    private byte[] data(Request request) {
        byte[] data = new byte[request.pdu()[0] == 5 ? 0 : request.answerBytes(request.pdu()[0]) - 2];
        for (int i = 0; i < data.length; i++) {
            data[i] = (byte) dice.nextInt(256);
        }
        return data;
    }

    private static byte[] answerPdu(Request request, byte[] data) {
        if (request.pdu()[0] == 5) {
            return request.pdu().clone();
        }
        return ByteBuffer.allocate(2 + data.length)
                .put(request.pdu()[0])
                .put((byte) data.length)
                .put(data)
                .array();
    }

    private byte[] exception(Request request) {
        return new byte[] {(byte) (request.pdu()[0] | 0x80), (byte) dice.nextInt(256)};
    }

    private byte[] framed(int unitId, byte[] pdu) {
        if (!rtu) {
            return ByteBuffer.allocate(7 + pdu.length)
                    .putShort((short) transaction)
                    .putShort((short) 0)
                    .putShort((short) (1 + pdu.length))
                    .put((byte) unitId)
                    .put(pdu)
                    .array();
        }
        byte[] frame =
                ByteBuffer.allocate(3 + pdu.length).put((byte) unitId).put(pdu).array();
        Crc16 crc = new Crc16();
        crc.update(ByteBuffer.wrap(frame, 0, frame.length - 2));
        frame[frame.length - 2] = (byte) crc.getValue();
        frame[frame.length - 1] = (byte) (crc.getValue() >> 8);
        return frame;
    }

    private byte[] noise() {
        byte[] noise = new byte[dice.nextInt(300)];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (byte) dice.nextInt(256);
        }
        return noise;
    }

    private Optional<Answer> feed(byte[] bytes) {
        Optional<Answer> answer = Optional.empty();
        int from = 0;
        while (from < bytes.length && answer.isEmpty()) {
            int length = Math.min(bytes.length - from, 1 + dice.nextInt(64));
            answer = wire.accept(Arrays.copyOfRange(bytes, from, from + length), length);
            from += length;
        }
        count.fed(from);
        return answer;
    }

    private void connect() {
        wire = rtu ? new RtuWire() : new TcpWire();
    }
}
