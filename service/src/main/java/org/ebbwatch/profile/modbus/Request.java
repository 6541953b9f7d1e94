package org.ebbwatch.profile.modbus;

import com.digitalpetri.modbus.ModbusPduSerializer.DefaultRequestSerializer;
import com.digitalpetri.modbus.exceptions.ModbusException;
import com.digitalpetri.modbus.pdu.ModbusRequestPdu;
import com.digitalpetri.modbus.pdu.ReadCoilsRequest;
import com.digitalpetri.modbus.pdu.ReadDiscreteInputsRequest;
import com.digitalpetri.modbus.pdu.ReadHoldingRegistersRequest;
import com.digitalpetri.modbus.pdu.ReadInputRegistersRequest;
import com.digitalpetri.modbus.pdu.WriteSingleCoilRequest;
import java.nio.ByteBuffer;
import java.util.Arrays;

/**
 * One request to one unit, and what its answer has to look like. An answer is taken only if its function, its length and, of a
 * written coil, its echo are those of this request.
 */
final class Request {
    private static final int LONGEST_PDU = 253;
    private static final int EXCEPTION = 0x80;
    private static final int ECHOED = 4;

    private final int unitId;
    private final String what;
    private final byte[] pdu;
    private final int dataBytes;

    private Request(int unitId, String what, ModbusRequestPdu request, int dataBytes) {
        this.unitId = unitId;
        this.what = what;
        this.pdu = encode(request);
        this.dataBytes = dataBytes;
    }

    /** Reads a span. */
    static Request read(Span span) {
        int address = span.from().address();
        ModbusRequestPdu request =
                switch (span.from().table()) {
                    case COILS -> new ReadCoilsRequest(address, span.quantity());
                    case DISCRETE_INPUTS -> new ReadDiscreteInputsRequest(address, span.quantity());
                    case HOLDING_REGISTERS -> new ReadHoldingRegistersRequest(address, span.quantity());
                    case INPUT_REGISTERS -> new ReadInputRegistersRequest(address, span.quantity());
                };
        return new Request(
                span.from().unitId(),
                "reading " + span,
                request,
                span.from().table().bytes(span.quantity()));
    }

    /** Writes a coil. */
    static Request write(Spot coil, boolean on) {
        return new Request(coil.unitId(), "writing " + coil, new WriteSingleCoilRequest(coil.address(), on), ECHOED);
    }

    int unitId() {
        return unitId;
    }

    /** What it asks, for a person: reading such and such. */
    String what() {
        return what;
    }

    /** The request without its framing. */
    byte[] pdu() {
        return pdu;
    }

    /** How long a whole answer is, without its framing; two bytes where it is an exception. */
    int answerBytes(byte functionCode) {
        return functionCode == pdu[0] ? isWrite() ? 1 + ECHOED : 2 + dataBytes : 2;
    }

    /** Whether this may be the function of an answer. */
    boolean isAnsweredBy(byte functionCode) {
        return functionCode == pdu[0] || functionCode == (byte) (pdu[0] | EXCEPTION);
    }

    /** Takes a whole answer, without its framing. */
    Answer answer(byte[] answered) {
        if (answered.length != answerBytes(answered[0]) || !isAnsweredBy(answered[0])) {
            return new Answer.Garbled("an answer of another kind or length");
        }
        if (answered[0] != pdu[0]) {
            return new Answer.Refused(answered[1] & 0xFF);
        }
        if (isWrite()) {
            return Arrays.equals(answered, pdu)
                    ? new Answer.Data(new byte[0])
                    : new Answer.Garbled("an answer to another write");
        }
        return (answered[1] & 0xFF) == dataBytes
                ? new Answer.Data(Arrays.copyOfRange(answered, 2, answered.length))
                : new Answer.Garbled("an answer of another length");
    }

    private boolean isWrite() {
        return pdu[0] == 5;
    }

    private static byte[] encode(ModbusRequestPdu request) {
        ByteBuffer buffer = ByteBuffer.allocate(LONGEST_PDU);
        try {
            DefaultRequestSerializer.INSTANCE.encode(request, buffer);
        } catch (ModbusException e) {
            throw new IllegalArgumentException("not a request: " + request, e);
        }
        return Arrays.copyOf(buffer.array(), buffer.position());
    }
}
