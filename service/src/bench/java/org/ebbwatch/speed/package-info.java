/**
 * How fast the judge judges. Measured by itself, never inside a test; nothing of it is shipped. May use the judge alone. Command
 * and results: {@code docs/benchmarks/judge-speed.md}.
 */
package org.ebbwatch.speed;
