/**
 * The rack file: which boards there are, which cell is on which channel through which load, and where the service keeps its
 * records. It may depend on the YAML parser and on {@link org.ebbwatch.acquire.PortAddress}.
 */
package org.ebbwatch.rack;
