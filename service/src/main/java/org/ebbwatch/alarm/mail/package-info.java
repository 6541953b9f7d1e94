/**
 * Mail as a way out. Knows messages by their fields, not what they mean. May depend on {@code alarm.outlet} and on the mail
 * library, which nobody else may know.
 */
package org.ebbwatch.alarm.mail;
