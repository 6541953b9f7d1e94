/**
 * The container of a bundle: a ZIP of one exact layout with a seal at its end, written and read without leniency. Knows
 * nothing of what its parts hold; depends on the JDK and the digest of the trace codec alone.
 */
package org.ebbwatch.evidence.container;
