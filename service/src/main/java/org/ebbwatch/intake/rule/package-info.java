/**
 * What is written down of a cell before it comes to the rack, and whether it may come. Pure: no framework, no I/O, no clock;
 * depends on {@code judge.procedure} alone.
 */
package org.ebbwatch.intake.rule;
