/**
 * Ports and boards: bytes of a serial line or TCP become scans on a board's event time, and requests become bytes; unplug and
 * replug. {@link org.ebbwatch.acquire.BoardSession} is pure, {@link org.ebbwatch.acquire.BoardAgent} has the threads. It may
 * depend on {@code org.ebbwatch.time}, the rig protocol, and the serial library in {@code SerialPortLink} alone.
 */
package org.ebbwatch.acquire;
