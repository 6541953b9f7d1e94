/**
 * What a scenario lets go wrong, on which channel and when: kinds, strengths, triggers and the schedule. What a fault does to
 * the rack is the rack's business. Depends on the JDK alone.
 */
package org.ebbwatch.sim.fault;
