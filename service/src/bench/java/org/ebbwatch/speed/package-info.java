/**
 * How fast the judge judges, a sample goes its whole way, a segment is coded and a chart is drawn. Measured by itself, never inside a
 * test; nothing of it is shipped. Commands and results: {@code docs/benchmarks}.
 */
package org.ebbwatch.speed;
