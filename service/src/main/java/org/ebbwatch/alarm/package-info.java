/**
 * The desk between rack, alarm book, records and outlets: feeds the book, writes down each step with the facts that caused it,
 * hands messages to outlets, and takes what people ask, by request or by the link of a message. May depend on {@code passage},
 * {@code store}, {@code alarm.book} and {@code alarm.outlet}.
 */
package org.ebbwatch.alarm;
