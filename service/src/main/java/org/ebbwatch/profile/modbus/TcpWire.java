package org.ebbwatch.profile.modbus;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Optional;

/**
 * Modbus over TCP: a header of transaction number, protocol 0, length and unit, then function and data. An answer of another
 * transaction is a late one and is passed over. A header that is none cannot be got over: the connection has to be made anew.
 * Source: Modbus Messaging on TCP/IP V1.0b.
 */
final class TcpWire implements Wire {
    private static final int HEADER_BYTES = 7;
    private static final int LONGEST_PDU = 253;

    private final ByteArrayOutputStream held = new ByteArrayOutputStream();
    private Request request;
    private int transaction;

    @Override
    public byte[] begin(Request next) {
        request = next;
        transaction = (transaction + 1) & 0xFFFF;
        return ByteBuffer.allocate(HEADER_BYTES + next.pdu().length)
                .putShort((short) transaction)
                .putShort((short) 0)
                .putShort((short) (1 + next.pdu().length))
                .put((byte) next.unitId())
                .put(next.pdu())
                .array();
    }

    @Override
    public Optional<Answer> accept(byte[] bytes, int count) {
        held.write(bytes, 0, count);
        while (held.size() >= HEADER_BYTES) {
            ByteBuffer frame = ByteBuffer.wrap(held.toByteArray());
            int ofTransaction = frame.getShort() & 0xFFFF;
            int protocol = frame.getShort();
            int pduBytes = (frame.getShort() & 0xFFFF) - 1;
            int unitId = frame.get() & 0xFF;
            if (protocol != 0 || pduBytes < 2 || pduBytes > LONGEST_PDU) {
                held.reset();
                return Optional.of(new Answer.Garbled(Exchange.NO_MODBUS));
            }
            if (frame.remaining() < pduBytes) {
                return Optional.empty();
            }
            byte[] pdu = new byte[pduBytes];
            frame.get(pdu);
            keepFrom(frame.position());
            if (ofTransaction == transaction) {
                return Optional.of(answer(unitId, pdu));
            }
        }
        return Optional.empty();
    }

    @Override
    public boolean needsQuiet() {
        return false;
    }

    private Answer answer(int unitId, byte[] pdu) {
        return unitId == request.unitId() ? request.answer(pdu) : new Answer.Garbled("an answer of unit " + unitId);
    }

    private void keepFrom(int position) {
        byte[] rest = Arrays.copyOfRange(held.toByteArray(), position, held.size());
        held.reset();
        held.writeBytes(rest);
    }
}
