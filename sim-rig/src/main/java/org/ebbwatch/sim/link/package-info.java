/**
 * Ways for a host to reach a simulated board, and the thread that runs the board at its pace. The only package that knows
 * host time, threads and ports. Depends on {@code sim.rack} and JNA.
 */
package org.ebbwatch.sim.link;
