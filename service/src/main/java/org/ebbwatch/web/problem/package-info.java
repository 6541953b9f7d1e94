/**
 * Every refusal and fault as RFC 9457 problem details, each saying what to do next; a client never sees a stack trace.
 * Depends on the HTTP server alone and on nothing else of the service.
 */
package org.ebbwatch.web.problem;
