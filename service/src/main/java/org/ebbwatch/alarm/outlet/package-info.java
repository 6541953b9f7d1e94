/**
 * The ways an alarm leaves the service: one outbox and one thread for each, the webhook and the buzzer. Knows messages by their
 * fields, not what they mean. May depend on the JDK's HTTP client and on the host's clock.
 */
package org.ebbwatch.alarm.outlet;
