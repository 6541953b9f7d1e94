package org.ebbwatch.sim.link;

import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import java.io.IOException;
import java.nio.charset.StandardCharsets;

/**
 * A pseudo-terminal: the host opens its path like a serial port. The other end is held open here too, since a master whose
 * last slave has gone answers every read with an error; it is in raw mode, since the usual mode echoes and swallows bytes.
 */
public final class PtyPort implements SimPort {
    private static final int CHUNK = 4096;
    private static final NativeLong ONE = new NativeLong(1);

    private final int master;
    private final int slave;
    private final String path;
    private final Memory pollDescriptor = new Memory(8);
    private final byte[] chunk = new byte[CHUNK];
    private volatile boolean closed;

    private PtyPort(int master, int slave, String path) {
        this.master = master;
        this.slave = slave;
        this.path = path;
        pollDescriptor.setInt(0, master);
    }

    /** Makes a pseudo-terminal. */
    public static PtyPort open() throws IOException {
        int master = require("posix_openpt", Libc.posix_openpt(Libc.O_RDWR | Libc.O_NOCTTY | Libc.O_NONBLOCK));
        int slave = -1;
        try {
            require("grantpt", Libc.grantpt(master));
            require("unlockpt", Libc.unlockpt(master));
            byte[] name = new byte[128];
            require("ptsname_r", -Libc.ptsname_r(master, name, new NativeLong(name.length)));
            String path = Native.toString(name, StandardCharsets.US_ASCII.name());
            slave = require("open " + path, Libc.open(path, Libc.O_RDWR | Libc.O_NOCTTY));
            try (Memory termios = new Memory(Libc.TERMIOS_BYTES)) {
                termios.clear();
                require("tcgetattr", Libc.tcgetattr(slave, termios));
                Libc.cfmakeraw(termios);
                require("tcsetattr", Libc.tcsetattr(slave, Libc.TCSANOW, termios));
            }
            return new PtyPort(master, slave, path);
        } catch (IOException e) {
            Libc.close(master);
            if (slave >= 0) {
                Libc.close(slave);
            }
            throw e;
        }
    }

    private static int require(String call, int result) throws IOException {
        if (result < 0) {
            throw new IOException(call + " failed, errno " + Native.getLastError());
        }
        return result;
    }

    @Override
    public String address() {
        return path;
    }

    @Override
    public synchronized int read(byte[] into, int waitMillis) throws IOException {
        requireOpen();
        pollDescriptor.setShort(4, Libc.POLLIN);
        pollDescriptor.setShort(6, (short) 0);
        if (Libc.poll(pollDescriptor, ONE, waitMillis) <= 0) {
            return 0;
        }
        return transferred("read", Libc.read(master, into, new NativeLong(into.length)));
    }

    @Override
    public synchronized int write(byte[] from, int offset, int length) throws IOException {
        requireOpen();
        int written = 0;
        while (written < length) {
            int next = Math.min(CHUNK, length - written);
            System.arraycopy(from, offset + written, chunk, 0, next);
            int taken = transferred("write", Libc.write(master, chunk, new NativeLong(next)));
            if (taken == 0) {
                break;
            }
            written += taken;
        }
        return written;
    }

    private int transferred(String call, NativeLong result) throws IOException {
        if (result.longValue() >= 0) {
            return result.intValue();
        }
        int error = Native.getLastError();
        if (error == Libc.EAGAIN || error == Libc.EINTR) {
            return 0;
        }
        throw new IOException(call + " on " + path + " failed, errno " + error);
    }

    private void requireOpen() throws IOException {
        if (closed) {
            throw new IOException(path + " is closed");
        }
    }

    @Override
    public synchronized void close() {
        if (!closed) {
            closed = true;
            Libc.close(slave);
            Libc.close(master);
        }
    }
}
