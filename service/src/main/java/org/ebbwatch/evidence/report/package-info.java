/**
 * The report of a passage for a person: one to three pages that say first whether the cell was released, and then why. Says nothing
 * but what the record says; draws what the trace holds. May use {@code paper} and {@code evidence.json}.
 */
package org.ebbwatch.evidence.report;
