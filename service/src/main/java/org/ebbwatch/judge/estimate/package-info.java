/**
 * Incremental estimators in constant memory: charge, noise, slope, watch clocks. Pure; they depend on the JDK alone and
 * take time and readings as arguments.
 */
package org.ebbwatch.judge.estimate;
