/**
 * Who signed a bundle: Ed25519 keys (RFC 8032) as the JDK has them, kept in a file for their owner alone. Knows nothing of what is
 * signed; depends on the JDK alone.
 */
package org.ebbwatch.evidence.signature;
