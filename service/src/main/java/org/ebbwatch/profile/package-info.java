/**
 * Boards that do not speak the rig protocol, described by a profile: what a device says becomes the frames of a board, so that
 * everything behind a board is the same for all. {@link org.ebbwatch.profile.ProfiledBoard} translates and is pure;
 * {@code text} and {@code modbus} read devices, {@code file} reads profiles. Depends on {@code org.ebbwatch.acquire} for ports
 * and, in {@code file} alone, on the YAML reading of {@code org.ebbwatch.rack}.
 */
package org.ebbwatch.profile;
