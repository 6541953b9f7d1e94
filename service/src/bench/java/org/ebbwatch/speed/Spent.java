package org.ebbwatch.speed;

/**
 * What one sample took.
 *
 * @param workNanos the measuring thread was computing
 * @param clockNanos by the clock, waiting for a core and for the disk as well
 */
record Spent(double workNanos, double clockNanos) {}
