/**
 * An invented workshop's box of cells, worked through on a simulated rack. The only package that knows the simulator; it uses
 * the service as its users do and decides nothing the service should decide.
 */
package org.ebbwatch.demo;
