/** PostgreSQL in a container, for the tests of everything that is kept in it. */
package org.ebbwatch.postgres;
