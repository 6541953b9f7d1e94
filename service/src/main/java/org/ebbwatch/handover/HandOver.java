package org.ebbwatch.handover;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.evidence.BundleFacts;

/** Writes what goes with a batch of cells. */
public final class HandOver {
    /** More cells than this are two hand-overs. */
    public static final int MOST_CELLS = 500;

    private HandOver() {}

    /**
     * Writes covering sheet, table and labels of these bundles into a folder, over earlier ones.
     *
     * @return the files written
     * @throws IOException if a bundle is damaged or something cannot be written
     * @throws IllegalArgumentException if there is no bundle, or more than {@link #MOST_CELLS}
     */
    public static List<Path> write(List<Path> bundles, Path folder) throws IOException {
        if (bundles.isEmpty() || bundles.size() > MOST_CELLS) {
            throw new IllegalArgumentException("a hand-over has 1 to " + MOST_CELLS + " cells, not " + bundles.size());
        }
        List<HandedCell> cells = new ArrayList<>();
        for (Path bundle : bundles) {
            cells.add(HandedCell.of(BundleFacts.read(bundle)));
        }
        Files.createDirectories(folder);
        new CoverSheet(cells).write(folder);
        CellTable.write(cells, folder);
        Labels.write(cells, folder);
        return List.of(folder.resolve(CoverSheet.FILE), folder.resolve(CellTable.FILE), folder.resolve(Labels.FILE));
    }
}
