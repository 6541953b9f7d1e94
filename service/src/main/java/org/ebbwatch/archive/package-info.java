/**
 * Keeping records for years: backup of a rack at work and its restoring, export of everything, and deletion, which is always written
 * down. May use {@code passage}, {@code evidence}, {@code store} and {@code csv}.
 */
package org.ebbwatch.archive;
