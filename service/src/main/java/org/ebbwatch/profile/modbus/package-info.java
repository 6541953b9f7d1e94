/**
 * Devices that speak Modbus, over a serial line (RTU) or TCP. Requests, answers, the plan of what is read and the round of a
 * scan are pure; {@link org.ebbwatch.profile.modbus.ModbusLine} and {@link org.ebbwatch.profile.modbus.Exchange} have the port.
 * The only package that knows the Modbus library, of which it takes the protocol data units and the checksum. Source of the
 * limits and of the framing: Modbus Application Protocol V1.1b3, Modbus over Serial Line V1.02.
 */
package org.ebbwatch.profile.modbus;
