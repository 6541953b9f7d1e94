/**
 * Temperatures from what a sensor gives: ohms, a divider's ratio, millivolts. Pure functions in {@code StrictMath}, so that
 * every machine finds the same digits; depends on the JDK alone.
 */
package org.ebbwatch.rig.sensor;
