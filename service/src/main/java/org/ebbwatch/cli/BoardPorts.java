package org.ebbwatch.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.function.Supplier;
import org.ebbwatch.acquire.Port;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.profile.BoardProfile;
import org.ebbwatch.profile.file.ProfileFile;
import org.ebbwatch.rack.BoardEntry;
import org.ebbwatch.rack.RackFile;
import org.ebbwatch.rack.RackFileFaulty;
import org.ebbwatch.rack.RunningRack.BoardPort;

/** Where the boards of a rack file are reached, each in the protocol it speaks. */
public final class BoardPorts {
    private static final int HASH_DIGITS = 8;

    private BoardPorts() {}

    /**
     * Where a board is reached. One that is read by a profile is known by the serial number of the rack file, else of the profile,
     * else by one made from its port: it cannot state its own.
     *
     * @throws RackFileFaulty if its profile is wrong
     * @throws IOException if its profile cannot be read
     */
    public static BoardPort of(BoardEntry board) throws RackFileFaulty, IOException {
        Supplier<Port> ports = board.port()::port;
        if (board.profile().isPresent()) {
            BoardProfile profile = ProfileFile.read(board.profile().get());
            ports = profile.ports(board.port(), serialNumber(board, profile));
        }
        return new BoardPort(board.name(), board.serialNumber(), ports, board.contacts());
    }

    /**
     * Where all boards of a rack file are reached.
     *
     * @throws Refusal if a profile is wrong or cannot be read
     */
    static List<BoardPort> of(RackFile rackFile) throws Refusal {
        List<BoardPort> ports = new ArrayList<>();
        for (BoardEntry board : rackFile.boards()) {
            try {
                ports.add(of(board));
            } catch (RackFileFaulty e) {
                throw new Refusal(e.getMessage());
            } catch (IOException e) {
                throw new Refusal("cannot read the profile " + board.profile().orElseThrow() + " of the board "
                        + board.name() + ": " + e.getMessage());
            }
        }
        return ports;
    }

    private static String serialNumber(BoardEntry board, BoardProfile profile) {
        return board.serialNumber()
                .or(profile::serialNumber)
                .orElseGet(() -> ofPort(board.port().toString()));
    }

    private static String ofPort(String address) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(address.getBytes(UTF_8));
            return "port-" + HexFormat.of().formatHex(hash).substring(0, HASH_DIGITS);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
