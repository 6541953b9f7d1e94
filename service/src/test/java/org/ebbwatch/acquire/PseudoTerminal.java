package org.ebbwatch.acquire;

import com.sun.jna.LastErrorException;
import com.sun.jna.Native;
import java.io.IOException;

/**
 * A real pseudo-terminal: a test plays the board on one end, the service opens {@link #path} as a serial port. The other end is
 * held open too, raw, so that the first end does not fail while nobody else has it open. Linux only.
 */
final class PseudoTerminal implements AutoCloseable {

    private static final int O_RDWR = 2;
    private static final int O_NOCTTY = 0x100;
    private static final int TCSANOW = 0;
    private static final int TERMIOS_BYTES = 256;

    private final int board;
    private final int held;
    private final String path;
    private boolean boardClosed;
    private boolean heldClosed;

    /** The few calls of the C library a pseudo-terminal needs. */
    static final class LibC {
        private LibC() {}

        static {
            Native.register(LibC.class, "c");
        }

        static native int posix_openpt(int flags) throws LastErrorException;

        static native int grantpt(int fd) throws LastErrorException;

        static native int unlockpt(int fd) throws LastErrorException;

        static native int ptsname_r(int fd, byte[] name, long length) throws LastErrorException;

        static native int open(String path, int flags) throws LastErrorException;

        static native int close(int fd) throws LastErrorException;

        static native long read(int fd, byte[] into, long length) throws LastErrorException;

        static native long write(int fd, byte[] from, long length) throws LastErrorException;

        static native int tcgetattr(int fd, byte[] termios) throws LastErrorException;

        static native int tcsetattr(int fd, int when, byte[] termios) throws LastErrorException;

        static native void cfmakeraw(byte[] termios) throws LastErrorException;
    }

    PseudoTerminal() {
        board = LibC.posix_openpt(O_RDWR | O_NOCTTY);
        LibC.grantpt(board);
        LibC.unlockpt(board);
        byte[] name = new byte[128];
        LibC.ptsname_r(board, name, name.length);
        path = Native.toString(name);
        held = LibC.open(path, O_RDWR | O_NOCTTY);
        byte[] termios = new byte[TERMIOS_BYTES];
        LibC.tcgetattr(held, termios);
        LibC.cfmakeraw(termios);
        LibC.tcsetattr(held, TCSANOW, termios);
    }

    String path() {
        return path;
    }

    /** Waits for bytes from the service. */
    int read(byte[] into) throws IOException {
        try {
            return (int) LibC.read(board, into, into.length);
        } catch (LastErrorException e) {
            throw new IOException(e);
        }
    }

    void write(byte[] bytes) throws IOException {
        try {
            if (LibC.write(board, bytes, bytes.length) != bytes.length) {
                throw new IOException("the pseudo-terminal took only a part");
            }
        } catch (LastErrorException e) {
            throw new IOException(e);
        }
    }

    /** Pulls the plug: the service's end hangs up. */
    synchronized void hangUp() {
        if (!heldClosed) {
            heldClosed = true;
            LibC.close(held);
        }
        if (!boardClosed) {
            boardClosed = true;
            LibC.close(board);
        }
    }

    @Override
    public void close() {
        hangUp();
    }
}
