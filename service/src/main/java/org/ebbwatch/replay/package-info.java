/**
 * Judges a recording made elsewhere: rows of seconds, volts, amperes and temperatures become entries for the judge. Pure: the
 * caller reads the file. Depends on the judge alone.
 */
package org.ebbwatch.replay;
