/**
 * The shell around the judge: which cell is on which channel, its journal, its load, and what a person asked. Feeds scans to
 * the judge, writes what follows to the journal and carries out wishes; decides nothing itself.
 */
package org.ebbwatch.passage;
