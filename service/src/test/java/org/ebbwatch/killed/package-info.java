/**
 * The whole service short of its web pages, as a process of its own that is killed the hard way while a simulated board runs
 * on in the process of the test.
 */
package org.ebbwatch.killed;
