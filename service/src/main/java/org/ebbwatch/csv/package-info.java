/** Tables as text for spreadsheets and programs (RFC 4180); depends on the JDK alone. */
package org.ebbwatch.csv;
