/**
 * A board with its channels, loads, sensors, room and faults, stepped on event time and spoken to in bytes. No thread, no
 * port, no clock. Depends on {@code sim.cell}, {@code sim.fault}, {@code sim.scenario} and the rig protocol.
 */
package org.ebbwatch.sim.rack;
