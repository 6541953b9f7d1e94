/**
 * The rack for the outside: the page under {@code /} and the interface under {@code /api/v1}. It looks at the rack through
 * {@code org.ebbwatch.passage.RackSource} and {@code org.ebbwatch.alarm.AlarmSource}, and asks for everything else at
 * {@code org.ebbwatch.passage.RackDesk}; nothing but {@code cli} may depend on it.
 */
package org.ebbwatch.web;
