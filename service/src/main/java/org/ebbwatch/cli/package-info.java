/**
 * The commands of {@code ebbwatch}: they read options, start what is asked for and tell a person what came of it.
 */
package org.ebbwatch.cli;
