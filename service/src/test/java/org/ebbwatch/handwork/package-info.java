/** A whole service over one simulated board, in one thread and without ports, for tests in which people act. */
package org.ebbwatch.handwork;
