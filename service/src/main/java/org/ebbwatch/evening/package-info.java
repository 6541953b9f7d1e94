/**
 * The evening check: gathers facts, lets loads answer, sends a test alarm, and keeps what came of it. What the facts mean is
 * decided in {@code evening.rule}. It only ever opens a load; the judge closes it again.
 */
package org.ebbwatch.evening;
