/**
 * Reads profiles: YAML files that say how a device is read which does not speak the rig protocol. {@code docs/boards} describes
 * the format. Every fault is listed with its line and what is allowed there; of a faulty profile nothing is taken.
 */
package org.ebbwatch.profile.file;
