/**
 * Nights that go wrong: killed processes, disks that fail, lines that lie, clocks that step. What stands here serves the short
 * forms, which are tests, and the campaigns of {@code src/bench/java}, which are long: docs/benchmarks/robustness.md.
 */
package org.ebbwatch.rough;
