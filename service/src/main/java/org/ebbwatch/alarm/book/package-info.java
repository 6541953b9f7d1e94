/**
 * The alarm book: which alarms there are, in which state, and what may be done with them. Pure: no framework, no input or
 * output, no clock; moments and identifiers are arguments. May depend on the judge's findings and on nothing else.
 */
package org.ebbwatch.alarm.book;
