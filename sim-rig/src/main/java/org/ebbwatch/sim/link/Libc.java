package org.ebbwatch.sim.link;

import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Pointer;

/** The few calls of the C library that make a pseudo-terminal; numbers are those of Linux. */
final class Libc {
    static final int O_RDWR = 2;
    static final int O_NOCTTY = 0x100;
    static final int O_NONBLOCK = 0x800;
    static final int EINTR = 4;
    static final int EAGAIN = 11;
    static final int TCSANOW = 0;
    static final short POLLIN = 1;
    /** More than any platform's struct termios. */
    static final int TERMIOS_BYTES = 256;

    static {
        Native.register("c");
    }

    private Libc() {}

    static native int posix_openpt(int flags);

    static native int grantpt(int descriptor);

    static native int unlockpt(int descriptor);

    static native int ptsname_r(int descriptor, byte[] name, NativeLong length);

    static native int open(String path, int flags);

    static native int close(int descriptor);

    static native NativeLong read(int descriptor, byte[] into, NativeLong length);

    static native NativeLong write(int descriptor, byte[] from, NativeLong length);

    static native int poll(Pointer descriptors, NativeLong count, int waitMillis);

    static native int tcgetattr(int descriptor, Pointer termios);

    static native int tcsetattr(int descriptor, int when, Pointer termios);

    static native void cfmakeraw(Pointer termios);
}
