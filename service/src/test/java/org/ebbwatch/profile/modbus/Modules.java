package org.ebbwatch.profile.modbus;

import com.digitalpetri.modbus.ExceptionCode;
import com.digitalpetri.modbus.FunctionCode;
import com.digitalpetri.modbus.exceptions.ModbusResponseException;
import com.digitalpetri.modbus.exceptions.UnknownUnitIdException;
import com.digitalpetri.modbus.pdu.ReadCoilsRequest;
import com.digitalpetri.modbus.pdu.ReadCoilsResponse;
import com.digitalpetri.modbus.pdu.ReadDiscreteInputsRequest;
import com.digitalpetri.modbus.pdu.ReadDiscreteInputsResponse;
import com.digitalpetri.modbus.pdu.ReadHoldingRegistersRequest;
import com.digitalpetri.modbus.pdu.ReadHoldingRegistersResponse;
import com.digitalpetri.modbus.pdu.ReadInputRegistersRequest;
import com.digitalpetri.modbus.pdu.ReadInputRegistersResponse;
import com.digitalpetri.modbus.pdu.WriteSingleCoilRequest;
import com.digitalpetri.modbus.pdu.WriteSingleCoilResponse;
import com.digitalpetri.modbus.serial.server.SerialPortServerTransport;
import com.digitalpetri.modbus.server.ModbusRequestContext;
import com.digitalpetri.modbus.server.ModbusRtuServer;
import com.digitalpetri.modbus.server.ModbusServer;
import com.digitalpetri.modbus.server.ModbusServices;
import com.digitalpetri.modbus.server.ModbusTcpServer;
import com.digitalpetri.modbus.server.ProcessImage;
import com.digitalpetri.modbus.server.ReadWriteModbusServices;
import com.digitalpetri.modbus.tcp.server.NettyTcpServerTransport;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.nio.ByteBuffer;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** Modbus units of the Modbus library's own server: what the service reads here it has not made itself. */
public final class Modules implements ModbusServices, AutoCloseable {
    private final Map<Integer, ProcessImage> units = new ConcurrentHashMap<>();
    private final Set<Integer> unplugged = ConcurrentHashMap.newKeySet();
    private final Set<Integer> refusing = ConcurrentHashMap.newKeySet();
    private final Map<Integer, Integer> sensed = new ConcurrentHashMap<>();
    private final ReadWriteModbusServices images = new ReadWriteModbusServices() {
        @Override
        protected Optional<ProcessImage> getProcessImage(int unitId) {
            return unplugged.contains(unitId) ? Optional.empty() : Optional.ofNullable(units.get(unitId));
        }
    };
    private final ModbusServer server;
    private final String address;

    private Modules(ModbusServer server, String address) throws Exception {
        this.server = server;
        this.address = address;
        server.setModbusServices(this);
        server.start();
    }

    /** Units on a serial line. */
    public static Modules onLine(String path, int baud) throws Exception {
        var transport = SerialPortServerTransport.create(config -> {
            config.serialPort = path;
            config.baudRate = baud;
        });
        return new Modules(ModbusRtuServer.create(transport, new ModbusServices() {}), path);
    }

    /** Units behind a network address of this machine. */
    public static Modules onNetwork() throws Exception {
        int port = freePort();
        var transport = NettyTcpServerTransport.create(config -> {
            config.bindAddress = "127.0.0.1";
            config.port = port;
        });
        return new Modules(ModbusTcpServer.create(transport, new ModbusServices() {}), "tcp:127.0.0.1:" + port);
    }

    /** Where the service reaches them, over TCP. */
    public String address() {
        return address;
    }

    /** The registers and bits of a unit. */
    public ProcessImage unit(int unitId) {
        return units.computeIfAbsent(unitId, id -> new ProcessImage());
    }

    public void input(int unitId, int register, int word) {
        unit(unitId).with(tx -> tx.writeInputRegisters(map -> map.put(register, bytes(word))));
    }

    public void holding(int unitId, int register, int word) {
        unit(unitId).with(tx -> tx.writeHoldingRegisters(map -> map.put(register, bytes(word))));
    }

    /** A float in two holding registers, its low word first. */
    public void lowFirstFloat(int unitId, int register, float number) {
        int bits = Float.floatToIntBits(number);
        holding(unitId, register, bits & 0xFFFF);
        holding(unitId, register + 1, bits >>> 16);
    }

    public void discrete(int unitId, int address, boolean closed) {
        unit(unitId).with(tx -> tx.writeDiscreteInputs(map -> map.put(address, closed)));
    }

    public boolean coil(int unitId, int address) {
        return unit(unitId).get(tx -> tx.readCoils(map -> map.getOrDefault(address, false)));
    }

    /** A discrete input follows a coil, as the contact of a relay does. */
    public void senses(int coil, int input) {
        sensed.put(coil, input);
    }

    /** A relay is stuck: its contact follows no more. */
    public void sticks(int coil) {
        sensed.remove(coil);
    }

    /** A unit loses its plug, or gets it back. */
    public void unplugged(int unitId, boolean is) {
        if (is) {
            unplugged.add(unitId);
        } else {
            unplugged.remove(unitId);
        }
    }

    /** A unit answers every read of holding registers with an exception, or no more. */
    public void refuses(int unitId, boolean does) {
        if (does) {
            refusing.add(unitId);
        } else {
            refusing.remove(unitId);
        }
    }

    @Override
    public ReadCoilsResponse readCoils(ModbusRequestContext context, int unitId, ReadCoilsRequest request)
            throws ModbusResponseException, UnknownUnitIdException {
        return images.readCoils(context, unitId, request);
    }

    @Override
    public ReadDiscreteInputsResponse readDiscreteInputs(
            ModbusRequestContext context, int unitId, ReadDiscreteInputsRequest request)
            throws ModbusResponseException, UnknownUnitIdException {
        return images.readDiscreteInputs(context, unitId, request);
    }

    @Override
    public ReadInputRegistersResponse readInputRegisters(
            ModbusRequestContext context, int unitId, ReadInputRegistersRequest request)
            throws ModbusResponseException, UnknownUnitIdException {
        return images.readInputRegisters(context, unitId, request);
    }

    @Override
    public ReadHoldingRegistersResponse readHoldingRegisters(
            ModbusRequestContext context, int unitId, ReadHoldingRegistersRequest request)
            throws ModbusResponseException, UnknownUnitIdException {
        if (refusing.contains(unitId) && !unplugged.contains(unitId)) {
            throw new ModbusResponseException(FunctionCode.READ_HOLDING_REGISTERS, ExceptionCode.SLAVE_DEVICE_FAILURE);
        }
        return images.readHoldingRegisters(context, unitId, request);
    }

    @Override
    public WriteSingleCoilResponse writeSingleCoil(
            ModbusRequestContext context, int unitId, WriteSingleCoilRequest request)
            throws ModbusResponseException, UnknownUnitIdException {
        WriteSingleCoilResponse response = images.writeSingleCoil(context, unitId, request);
        Integer input = sensed.get(request.address());
        if (input != null) {
            discrete(unitId, input, request.value() != 0);
        }
        return response;
    }

    @Override
    public void close() {
        try {
            server.stop();
        } catch (Exception e) {
            throw new IllegalStateException("the server does not stop", e);
        }
    }

    private static byte[] bytes(int word) {
        return ByteBuffer.allocate(2).putShort((short) word).array();
    }

    private static int freePort() {
        try (var socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
