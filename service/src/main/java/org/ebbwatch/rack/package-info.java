/**
 * The rack file: which boards there are, which cell is on which channel through which load, and where the service keeps its
 * records; and the rack at work, which puts boards, passages, alarms and records together. Only {@code cli} and {@code demo}
 * may depend on it.
 */
package org.ebbwatch.rack;
