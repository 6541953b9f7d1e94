/**
 * What goes on inside one cell: open-circuit voltage, charge, relaxation, resistance, heat. No load, no sensor, no noise, no
 * clock; time comes as an argument. Depends on the JDK alone.
 */
package org.ebbwatch.sim.cell;
