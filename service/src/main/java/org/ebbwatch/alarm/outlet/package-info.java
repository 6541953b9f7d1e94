/**
 * The ways an alarm leaves the service: one outbox and one thread for each, and the webhook. Knows messages as texts with an
 * id, not what they mean. May depend on the JDK's HTTP client and on the host's clock.
 */
package org.ebbwatch.alarm.outlet;
