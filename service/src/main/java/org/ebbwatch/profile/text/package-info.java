/**
 * Devices that print one line of text for each scan. {@link org.ebbwatch.profile.text.LineCutter} and
 * {@link org.ebbwatch.profile.text.LineReader} are pure; {@link org.ebbwatch.profile.text.TextLine} has the port.
 */
package org.ebbwatch.profile.text;
