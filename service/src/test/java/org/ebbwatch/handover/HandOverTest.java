package org.ebbwatch.handover;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.Result;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.multi.qrcode.QRCodeMultiReader;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.ebbwatch.evidence.BundleFacts;
import org.ebbwatch.evidence.BundleWriter;
import org.ebbwatch.evidence.InventedPassage;
import org.ebbwatch.evidence.Origin;
import org.ebbwatch.evidence.signature.SigningKey;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HandOverTest {
    private static final SigningKey KEY = SigningKey.fresh();

    @TempDir
    Path folder;

    private Path bundle(InventedPassage passage) throws IOException {
        return new BundleWriter(Origin.current(), KEY)
                .write(passage.records(), folder.resolve("bundles"))
                .file();
    }

    private String text(String pdf) throws IOException {
        try (PDDocument document =
                Loader.loadPDF(folder.resolve("papers").resolve(pdf).toFile())) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    private List<CSVRecord> rows() throws IOException {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (var parser = CSVParser.parse(folder.resolve("papers/hand-over.csv"), StandardCharsets.UTF_8, format)) {
            assertThat(parser.getHeaderNames()).isEqualTo(CellTable.COLUMNS);
            return parser.getRecords();
        }
    }

    @Test
    void tells_what_a_receiver_asks_and_leaves_room_for_what_only_people_know() throws IOException {
        Path released = bundle(InventedPassage.whole("A-17"));
        Path not = bundle(InventedPassage.brief("A-18"));
        HandOver.write(List.of(released, not), folder.resolve("papers"));
        assertThat(text("hand-over.pdf"))
                .contains("Hand-over: 2 cell(s)")
                .contains("1 released as emptied, 1 NOT: treat those as charged")
                .contains("A-17 layered oxide, 0.05 Ah __________ yes 0.111 V 0.0 h 0.024 Wh 2025-06-15")
                .contains("A-18 layered oxide, 0.05 Ah __________ NO, WITHDRAWN - -")
                .contains("UN number, marks", "Waste code", "Packing instruction", "Terminals insulated")
                .contains("Signed by " + KEY.signer())
                .contains("END OF HAND-OVER");
        CSVRecord row = rows().get(0);
        assertThat(row.get("tag")).isEqualTo("A-17");
        assertThat(row.get("bundle_id"))
                .isEqualTo(HandedCell.of(BundleFacts.read(released)).bundleId());
        assertThat(row.get("discharged")).isEqualTo("yes");
        assertThat(row.get("last_volts_plus_uncertainty")).isEqualTo("0.111");
        assertThat(row.get("terminals_insulated")).isEmpty();
        assertThat(rows().get(1).get("discharged")).isEqualTo("no, WITHDRAWN");
    }

    @Test
    void shows_where_authorities_differ_and_decides_nothing() throws IOException {
        HandOver.write(List.of(bundle(InventedPassage.whole("A-17"))), folder.resolve("papers"));
        assertThat(text("hand-over.pdf"))
                .contains("not decided here")
                .contains("leads bonded: a short on purpose")
                .contains("RO 14957", "RO 14634", "173.185(d)", "173.185(f)", "SP 376", "SP 377", "PHMSA 24-0034")
                .contains("Ask the receiver");
    }

    @Test
    void labels_bear_a_code_that_any_reader_turns_back_into_tag_and_bundle() throws Exception {
        Path one = bundle(InventedPassage.whole("A-17, \u00FCber"));
        Path other = bundle(InventedPassage.brief("A-18"));
        HandOver.write(List.of(one, other), folder.resolve("papers"));
        assertThat(text("labels.pdf")).contains("A-18", "NOT EMPTIED", "emptied, 2025-06-15", "Never charge");
        List<String> codes = new ArrayList<>();
        for (Result result : read(folder.resolve("papers/labels.pdf"))) {
            codes.add(result.getText());
        }
        assertThat(codes)
                .containsExactlyInAnyOrder(
                        "EBBWATCH " + HandedCell.of(BundleFacts.read(one)).bundleId() + " A-17, \u00FCber",
                        "EBBWATCH " + HandedCell.of(BundleFacts.read(other)).bundleId() + " A-18");
    }

    private static Result[] read(Path labels) throws Exception {
        try (PDDocument document = Loader.loadPDF(labels.toFile())) {
            BufferedImage page = new PDFRenderer(document).renderImageWithDPI(0, 200);
            int[] pixels = page.getRGB(0, 0, page.getWidth(), page.getHeight(), null, 0, page.getWidth());
            var source = new RGBLuminanceSource(page.getWidth(), page.getHeight(), pixels);
            return new QRCodeMultiReader()
                    .decodeMultiple(
                            new BinaryBitmap(new HybridBinarizer(source)), Map.of(DecodeHintType.TRY_HARDER, true));
        }
    }

    @Test
    void a_tag_that_means_harm_is_harmless_in_the_table() throws IOException {
        HandOver.write(List.of(bundle(InventedPassage.brief("=1+1,\"x\"\r\n@y"))), folder.resolve("papers"));
        assertThat(rows()).singleElement().satisfies(row -> assertThat(row.get("tag"))
                .isEqualTo("'=1+1,\"x\"\r\n@y"));
    }

    @Test
    void of_a_damaged_bundle_nothing_is_written() throws IOException {
        Path bundle = bundle(InventedPassage.whole("A-17"));
        byte[] bytes = Files.readAllBytes(bundle);
        bytes[900] ^= 1;
        Files.write(bundle, bytes);
        assertThatThrownBy(() -> HandOver.write(List.of(bundle), folder.resolve("papers")))
                .hasMessageContaining("is damaged");
        assertThat(folder.resolve("papers")).doesNotExist();
        assertThatThrownBy(() -> HandOver.write(List.of(), folder)).hasMessageContaining("1 to 500 cells");
    }

    @Test
    void forty_cells_fit() throws IOException {
        Path bundle = bundle(InventedPassage.whole("A-17"));
        HandOver.write(Stream.generate(() -> bundle).limit(40).toList(), folder.resolve("papers"));
        assertThat(rows()).hasSize(40);
        assertThat(text("labels.pdf")).contains("page 3 of 3");
    }
}
