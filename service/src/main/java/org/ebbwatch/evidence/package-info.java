/**
 * The evidence of a passage: one sealed bundle that holds every reading, the whole journal and the verdict, and the judging
 * again of what such a bundle holds. May use {@code passage}, {@code judge} and {@code trace.codec}; asks no clock.
 */
package org.ebbwatch.evidence;
