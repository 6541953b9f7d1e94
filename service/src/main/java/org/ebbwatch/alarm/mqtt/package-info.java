/**
 * A broker as a way out: alarms, and retained what stands on each channel, by MQTT 5. May depend on {@code alarm.outlet}, on what
 * {@code passage} shows of the rack, and on the MQTT library, which nobody else may know.
 */
package org.ebbwatch.alarm.mqtt;
