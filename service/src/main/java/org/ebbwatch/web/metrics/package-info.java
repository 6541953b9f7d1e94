/**
 * The rack for machines that watch the watcher: Prometheus gauges and health. Labels are board and channel number, phase and
 * finding kind, never a passage or a tag; may depend on {@code passage} and {@code web.answer}.
 */
package org.ebbwatch.web.metrics;
