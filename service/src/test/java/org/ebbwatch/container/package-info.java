/** The service as a container image, from outside: over its port, its output and its signals. */
package org.ebbwatch.container;
