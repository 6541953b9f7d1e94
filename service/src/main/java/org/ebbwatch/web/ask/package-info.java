/**
 * What people may send: bodies read strictly, field by field, and the headers that guard a request. Nothing here does anything;
 * depends on {@code web.problem} and on what {@code passage} and {@code alarm} take.
 */
package org.ebbwatch.web.ask;
