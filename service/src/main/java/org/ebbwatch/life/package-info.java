/**
 * Signs of life to whoever watches the watcher: an address of the user's choice, and the service manager that started this
 * process. Both are fed by the progress of acquisition alone. May depend on {@code passage}'s pulses and on the host's clock; the
 * native library is known to {@code NotifySocket} alone.
 */
package org.ebbwatch.life;
