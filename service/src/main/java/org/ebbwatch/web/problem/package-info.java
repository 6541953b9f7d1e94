/**
 * Every refusal and fault as RFC 9457 problem details, each saying what to do next; a client never sees a stack trace.
 * Depends on the HTTP server and, of the service, on
 * the enums it shows.
 */
package org.ebbwatch.web.problem;
