package org.ebbwatch.handover;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.ebbwatch.paper.Canvas;
import org.ebbwatch.paper.Paper;

/** Labels to be printed and cut, sixteen a page: tag, verdict, and a QR code (ISO/IEC 18004) of tag and bundle. */
final class Labels {
    static final String FILE = "labels.pdf";

    private static final int ACROSS = 2;
    private static final int DOWN = 8;
    private static final float PAGE_HEIGHT = 720;
    private static final float SQUARE = 74;
    private static final int QUIET_MODULES = 4;

    private Labels() {}

    static void write(List<HandedCell> cells, Path folder) throws IOException {
        try (var paper = new Paper("Labels of emptied cells", "Print at full size, cut along the lines", 0)) {
            for (int first = 0; first < cells.size(); first += ACROSS * DOWN) {
                if (first > 0) {
                    paper.beginPage();
                }
                List<HandedCell> page = cells.subList(first, Math.min(cells.size(), first + ACROSS * DOWN));
                paper.figure("Labels of " + page.size() + " cells", PAGE_HEIGHT, canvas -> page(canvas, page));
            }
            Files.write(folder.resolve(FILE), paper.finish());
        }
    }

    private static void page(Canvas canvas, List<HandedCell> cells) throws IOException {
        float width = canvas.width() / ACROSS;
        float height = canvas.height() / DOWN;
        for (int i = 0; i < cells.size(); i++) {
            float x = i % ACROSS * width;
            float y = canvas.height() - (i / ACROSS + 1) * height;
            label(canvas.part(x, y, width, height), cells.get(i));
        }
    }

    private static void label(Canvas canvas, HandedCell cell) throws IOException {
        canvas.frame(0, 0, canvas.width(), canvas.height(), 0.4f, 0.6f);
        square(canvas.part(6, (canvas.height() - SQUARE) / 2, SQUARE, SQUARE), cell.code());
        float x = SQUARE + 14;
        float room = canvas.width() - x - 6;
        float size = Math.min(15, 15 * room / Math.max(1, canvas.widthOf(cell.tag(), 15)));
        canvas.bold(cell.tag(), x, canvas.height() - 22, size, 0);
        if (cell.isReleased()) {
            canvas.text("emptied, " + cell.date(), x, canvas.height() - 36, 9, 0);
            canvas.text(
                    "V + U "
                            + cell.lastVolts()
                                    .map(volts -> volts.toPlainString() + " V")
                                    .orElse("-") + ", rested "
                            + cell.restHours()
                                    .map(hours -> hours.toPlainString() + " h")
                                    .orElse("-"),
                    x,
                    canvas.height() - 47,
                    7.5f,
                    0);
        } else {
            canvas.fill(x - 2, canvas.height() - 50, room, 22, 0);
            canvas.bold("NOT EMPTIED", x + 2, canvas.height() - 43, 12, 1);
        }
        canvas.text(cell.facts().passage().toString(), x, 27, 5.5f, 0);
        canvas.text("Never charge, open or crush. Dangerous goods.", x, 17, 6.5f, 0);
        if (cell.isSimulated()) {
            canvas.text("SIMULATED, no real cell", x, 8, 6.5f, 0);
        }
    }

    private static void square(Canvas canvas, String code) throws IOException {
        BitMatrix modules;
        try {
            modules = new QRCodeWriter()
                    .encode(
                            code,
                            BarcodeFormat.QR_CODE,
                            0,
                            0,
                            Map.of(
                                    EncodeHintType.CHARACTER_SET,
                                    "UTF-8",
                                    EncodeHintType.MARGIN,
                                    QUIET_MODULES,
                                    EncodeHintType.ERROR_CORRECTION,
                                    ErrorCorrectionLevel.M));
        } catch (WriterException e) {
            throw new IOException("no QR code can be made of " + code, e);
        }
        float module = canvas.width() / modules.getWidth();
        for (int row = 0; row < modules.getHeight(); row++) {
            for (int column = 0; column < modules.getWidth(); column++) {
                if (modules.get(column, row)) {
                    canvas.fill(column * module, canvas.height() - (row + 1) * module, module, module, 0);
                }
            }
        }
    }
}
