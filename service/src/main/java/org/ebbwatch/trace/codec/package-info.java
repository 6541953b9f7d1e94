/**
 * What one channel read in about ten minutes, as one compact block of bytes and back, without loss. Pure: depends on
 * nothing but the JDK, knows no file, no database and no clock.
 */
package org.ebbwatch.trace.codec;
