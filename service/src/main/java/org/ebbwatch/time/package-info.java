/**
 * Event time: one strictly increasing line of milliseconds per board, made of the board's own clock, and what is known of
 * the time that passed while nothing was heard. Pure: it may depend on nothing but the JDK, and asks no clock; every
 * moment of the host comes in as a {@link org.ebbwatch.time.HostTime}.
 */
package org.ebbwatch.time;
