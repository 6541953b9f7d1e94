package org.ebbwatch.night;

/** How the figures come about, for the document. */
final class Method {
    static final String TEXT =
            """
            ## How it is done, and what it cannot show

            - A night is a board with two cells on it, from check-in until both passages are over, at most 7 days. The first cell
              or the whole board has one trouble, which begins at a random moment of a random stage; the second cell is sound.
              There are as many nights without any trouble as with a board-wide one, so that half of all channels have nothing
              wrong with them.
            - Drawn for each night: NMC or LFP, 0.1 to 10 Ah, loads of C/50 to C/3, health 40 to 100 %, noise 0.05 to 5 mV and 0.02
              to 0.3 K, offset and gain errors within what the board declares, a room of 5 to 35 degC with swings up to 10 K, with
              or without dummy cell, lead check, current sense, switched or put on by hand, `careful` or (one in ten) `strict`. A
              third of the cells relax by diffusion in a sphere, which the judge's forecast knows nothing of. Half of them hold back
              just so much charge that they rest within 0.2 V of the limit after their first hold.
            - The board, its physics and its converter are the simulator's; counts are calibrated as the service does, and the judge
              is driven directly, without wire, database and threads. Loads and lead checks are carried out over the rig protocol.
            - Scans come every second from a minute before something goes wrong until 10 minutes (heat: 40 minutes) after, and for 2
              minutes after a load was switched; every 5 s otherwise (one night in twenty, and all with lost scans: 2 s). The
              judge takes a stretch of 5 s for watched (slower boards: sampling.md). What rests on
              a single noisy reading is therefore seen up to five times less often than on a board that scans every second.
            - The person comes between seven and ten at night, is minutes to hours late, and now and then forgets the bond, leaves it
              on, reads nought off the meter, takes a load off early or tries a held cell again.
            - A finding is due when the truth, not the reading, has passed its limit by more than offset, gain, contact and five
              deviations of noise may hide, for as long as the judge may take. It is false when neither the truth, with the same margin
              the other way, nor the trouble of the night explains it. The margins favour the judge on misses and on
              false alarms alike.
            - A cell is wrongly released if 24 h of rest after its release would bring it above the rested limit.
            - Beside every nought stands what 95 % confidence allows: of a share 1 - 0.05^(1/n), of a rate 3 / n.
            - Not simulated: strings, restarts of the service, boards without an ambient sensor, clock faults (found before the judge, by comparing
              clocks), contacts, resistance of leads that change, cells that swell or vent, ageing while draining. The
              simulator's cells are a model: that a night went well here does not show that it does on a bench.
            """;

    private Method() {}
}
