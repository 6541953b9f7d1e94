package org.ebbwatch.rack;

/**
 * Where the service's page is served.
 *
 * @param address of this machine to listen on; 127.0.0.1 is reached from this machine alone
 * @param port 1 to 65535
 */
public record HttpEntry(String address, int port) {}
