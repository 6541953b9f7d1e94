/**
 * Measurements to be run by hand, each with one command that stands in {@code docs/benchmarks}. No test times anything.
 */
package org.ebbwatch.bench;
