/**
 * Who may change anything: one operator's token, known here by its hash alone. Depends on the JDK and on no other package of the
 * service.
 */
package org.ebbwatch.access;
