package org.ebbwatch.life;

import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Platform;
import java.io.IOException;
import java.nio.charset.StandardCharsets;

/**
 * Sends datagrams to a local socket, as service managers want them; this version of Java cannot by itself. An address is the path
 * of the socket, or {@code @} and a name in the abstract name space. Linux only. Stays usable after a failure. Not thread-safe.
 */
final class NotifySocket implements AutoCloseable {
    private static final int AF_UNIX = 1;
    private static final int SOCK_DGRAM = 2;
    private static final int SOCK_CLOEXEC = 0x80000;
    private static final int MSG_DONTWAIT = 0x40;
    private static final int MSG_NOSIGNAL = 0x4000;
    private static final int FAMILY_BYTES = 2;
    /** Bytes of {@code sun_path} of {@code sockaddr_un}; unix(7). */
    private static final int PATH_BYTES = 108;

    private final int descriptor;
    private final Memory address;

    private NotifySocket(int descriptor, Memory address) {
        this.descriptor = descriptor;
        this.address = address;
    }

    /**
     * Makes a socket that sends to that address.
     *
     * @throws IOException if this system cannot, or the address is none
     */
    static NotifySocket to(String name) throws IOException {
        if (!Platform.isLinux()) {
            throw new IOException("local sockets are used on Linux only");
        }
        byte[] path = name.getBytes(StandardCharsets.UTF_8);
        boolean named = name.startsWith("/") && path.length < PATH_BYTES;
        boolean abstractName = name.startsWith("@") && name.length() > 1 && path.length <= PATH_BYTES;
        if (!named && !abstractName) {
            throw new IOException("not the address of a local socket: " + name);
        }
        if (abstractName) {
            path[0] = 0;
        }
        var address = new Memory(FAMILY_BYTES + path.length + (named ? 1 : 0));
        address.clear();
        address.setShort(0, (short) AF_UNIX);
        address.write(FAMILY_BYTES, path, 0, path.length);
        int descriptor = Libc.socket(AF_UNIX, SOCK_DGRAM | SOCK_CLOEXEC, 0);
        if (descriptor < 0) {
            throw new IOException("a local socket cannot be made, errno " + Native.getLastError());
        }
        return new NotifySocket(descriptor, address);
    }

    /**
     * Sends one datagram and waits for nothing.
     *
     * @throws IOException if nobody takes it
     */
    void send(String text) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        NativeLong taken =
                Libc.sendto(descriptor, bytes, new NativeLong(bytes.length), MSG_DONTWAIT | MSG_NOSIGNAL, address, (int)
                        address.size());
        if (taken.longValue() != bytes.length) {
            throw new IOException("the service manager takes no message, errno " + Native.getLastError());
        }
    }

    @Override
    public void close() {
        Libc.close(descriptor);
        address.close();
    }

    /** The calls of the C library that are used; their names are its own. */
    private static final class Libc {
        static {
            Native.register(Libc.class, Platform.C_LIBRARY_NAME);
        }

        static native int socket(int domain, int type, int protocol);

        static native NativeLong sendto(
                int descriptor, byte[] bytes, NativeLong length, int flags, Memory address, int addressLength);

        static native int close(int descriptor);
    }
}
