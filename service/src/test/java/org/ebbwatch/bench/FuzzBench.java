package org.ebbwatch.bench;

import org.ebbwatch.profile.BinaryFuzz;
import org.ebbwatch.profile.FuzzCount;
import org.ebbwatch.profile.modbus.ModbusFuzz;
import org.ebbwatch.profile.modbus.ModbusProfile.Framing;
import org.ebbwatch.profile.text.TextFuzz;
import org.ebbwatch.rack.RackFileFaulty;

/** Feeds every decoder so many bytes of good and bad input. Arguments: bytes for each decoder, seed. */
public final class FuzzBench {
    private FuzzBench() {}

    public static void main(String[] arguments) throws RackFileFaulty {
        long bytes = Long.parseLong(arguments[0]);
        long seed = Long.parseLong(arguments[1]);
        System.out.println("| decoder | bytes | intact | damaged | readings | not sent | seconds |");
        System.out.println("| --- | --- | --- | --- | --- | --- | --- |");
        tell("rig protocol", System.nanoTime(), new BinaryFuzz(seed).run(bytes));
        tell("text lines", System.nanoTime(), new TextFuzz(seed).run(bytes));
        tell("Modbus RTU", System.nanoTime(), new ModbusFuzz(Framing.RTU, seed).run(bytes));
        tell("Modbus TCP", System.nanoTime(), new ModbusFuzz(Framing.TCP, seed).run(bytes));
    }

    private static void tell(String decoder, long begun, FuzzCount count) {
        System.out.println(count.row(decoder, (System.nanoTime() - begun) / 1e9));
        System.err.print(count.unnoticeable() + count.firstWrong());
    }
}
