/**
 * The morning report: what happened on the rack since the evening, what each cell waits for, and what to do today. Pure: made of
 * views of the rack, the alarms and the plan, and of moments; depends on {@code passage}'s and {@code alarm}'s views, {@code plan}
 * and {@code judge}.
 */
package org.ebbwatch.morning;
