/**
 * The database, its migrations, and the rows of passages: journal, transitions, findings. Knows rows and texts, not what
 * they mean. May depend on JDBC, H2, PostgreSQL's driver, a pool and Flyway; on no other package of the service.
 */
package org.ebbwatch.store;
