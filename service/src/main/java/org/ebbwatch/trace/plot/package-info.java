/**
 * Few points that look like many: what a chart needs of a long trace. Pure: depends on nothing but the JDK.
 */
package org.ebbwatch.trace.plot;
