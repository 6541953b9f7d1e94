/**
 * The simulated rig as a program of its own: reads a scenario, opens a port per board and runs them. Depends on everything
 * below it.
 */
package org.ebbwatch.sim;
