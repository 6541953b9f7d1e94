/**
 * What was read from every channel: a local tail that survives a power cut, sealed into segments in the database.
 * {@code codec} and {@code plot} below are pure; this package may depend on {@code store}, {@code time} and on them, never on the judge.
 */
package org.ebbwatch.trace;
