package org.ebbwatch.life;

import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Platform;
import java.nio.charset.StandardCharsets;

/** The other end: a local datagram socket with a name, as a service manager has it. */
final class DatagramReceiver implements AutoCloseable {
    private static final int AF_UNIX = 1;
    private static final int SOCK_DGRAM = 2;
    private static final int MSG_DONTWAIT = 0x40;

    private final int descriptor = Libc.socket(AF_UNIX, SOCK_DGRAM, 0);
    private final byte[] taken = new byte[4096];

    /** Binds to a path, or to {@code @} and a name in the abstract name space. */
    DatagramReceiver(String name) {
        byte[] path = name.getBytes(StandardCharsets.UTF_8);
        int length = 2 + path.length + (name.startsWith("@") ? 0 : 1);
        try (var address = new Memory(length)) {
            address.clear();
            address.setShort(0, (short) AF_UNIX);
            address.write(2, path, 0, path.length);
            if (name.startsWith("@")) {
                address.setByte(2, (byte) 0);
            }
            if (descriptor < 0 || Libc.bind(descriptor, address, length) != 0) {
                throw new IllegalStateException("cannot bind, errno " + Native.getLastError());
            }
        }
    }

    /** The next datagram; empty where none has come. */
    String next() {
        long length = Libc.recv(descriptor, taken, new NativeLong(taken.length), MSG_DONTWAIT)
                .longValue();
        return length < 0 ? "" : new String(taken, 0, (int) length, StandardCharsets.UTF_8);
    }

    @Override
    public void close() {
        Libc.close(descriptor);
    }

    private static final class Libc {
        static {
            Native.register(Libc.class, Platform.C_LIBRARY_NAME);
        }

        static native int socket(int domain, int type, int protocol);

        static native int bind(int descriptor, Memory address, int length);

        static native NativeLong recv(int descriptor, byte[] into, NativeLong length, int flags);

        static native int close(int descriptor);
    }
}
