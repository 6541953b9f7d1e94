/**
 * The rack for the outside: the page under {@code /} and the read-only interface under {@code /api/v1}. It looks at the rack
 * through {@code org.ebbwatch.passage.RackSource} and {@code org.ebbwatch.alarm.AlarmSource}, and changes nothing; nothing but
 * {@code cli} may depend on it.
 */
package org.ebbwatch.web;
