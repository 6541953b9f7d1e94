/**
 * The desk between rack, alarm book, records and outlets: feeds the book, writes down each step with the facts that caused it,
 * hands messages to outlets, and takes what people ask. May depend on {@code passage}, {@code store} and its own two packages.
 */
package org.ebbwatch.alarm;
