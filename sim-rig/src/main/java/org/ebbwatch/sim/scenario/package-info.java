/**
 * What a simulated rack consists of, and how a scenario file in YAML says so. Depends on {@code sim.cell}, {@code sim.fault},
 * {@code rig.message} and the YAML reader.
 */
package org.ebbwatch.sim.scenario;
