/**
 * Which resistor a cell is emptied through, how warm it gets, and how long it takes. Pure: no framework, no I/O, no clock; depends
 * on {@code intake.rule} and {@code judge.procedure}. Its cell model is its own, so that it can be held against others.
 */
package org.ebbwatch.sizing;
