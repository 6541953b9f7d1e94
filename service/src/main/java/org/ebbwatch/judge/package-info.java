/**
 * The judge: the pure fold that turns a passage's journal, entry by entry, into phases, findings and wishes. It knows no
 * framework, no clock and no input or output; time is event time in milliseconds and comes with each entry. It may use
 * {@code judge.procedure} and {@code judge.estimate} and nothing else of the service.
 */
package org.ebbwatch.judge;
