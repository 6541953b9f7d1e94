/**
 * What has to be so before a night is left alone, decided from facts alone. Pure: no framework, no database, no clock. Knows the
 * judge's words and the alarm book's, and nothing else.
 */
package org.ebbwatch.evening.rule;
