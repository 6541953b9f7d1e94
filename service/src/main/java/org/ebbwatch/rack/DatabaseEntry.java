package org.ebbwatch.rack;

/**
 * The PostgreSQL database that holds the records.
 *
 * @param url address for JDBC, without user and password
 * @param password where to find it
 */
public record DatabaseEntry(String url, String user, Given password) {}
