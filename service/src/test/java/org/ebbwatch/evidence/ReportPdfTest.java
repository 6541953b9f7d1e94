package org.ebbwatch.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.StreamSupport;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.text.PDFTextStripper;
import org.ebbwatch.evidence.json.JsonObject;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The report as a reader's program sees it, held against the record in the same bundle. */
class ReportPdfTest {
    private static final Pattern NUMBER = Pattern.compile("(?<![\\w.-])-?\\d+(?:\\.\\d+)?(?![\\w-]|\\.\\d)");

    @TempDir
    Path folder;

    private Map<String, byte[]> parts;

    private PDDocument report(InventedPassage passage) throws IOException {
        parts = Bundles.parts(Bundles.write(passage, folder));
        return Loader.loadPDF(parts.get("report.pdf"));
    }

    private static String text(PDDocument report) throws IOException {
        return new PDFTextStripper().getText(report).replaceAll("\\s+", " ");
    }

    private JsonObject record() {
        return JsonObject.read(parts.get("record.json"));
    }

    @Test
    void a_released_cell_is_said_to_be_so_first_with_every_result_and_the_words_a_report_must_have()
            throws IOException {
        try (PDDocument report = report(InventedPassage.whole("A-17"))) {
            String text = text(report);
            assertThat(text.indexOf("RELEASED")).isBetween(0, 100);
            assertThat(text)
                    .doesNotContain("NOT RELEASED")
                    .contains("SIMULATED at 600 times real time")
                    .contains("A-17")
                    .contains("under load, held, round 1 0.00460 V 0.00041 V 0.00501 V 0.1 V yes")
                    .contains("load off, when the rest ended 0.23000 V 0.00043 V 0.23043 V 0.5 V yes")
                    .contains("The results relate only to the items tested")
                    .contains("Decision rule (ISO/IEC 17025:2017, 7.8.6) Guarded acceptance")
                    .contains("signed by the key " + Bundles.KEY.signer())
                    .contains("Never charge this cell again")
                    .endsWith(
                            "END OF REPORT " + InventedPassage.ID + " Passage " + InventedPassage.ID + " page 2 of 2 ");
            record().texts("cautions").forEach(caution -> assertThat(text).contains(caution));
        }
    }

    @Test
    void one_that_is_not_released_is_to_be_treated_as_charged() throws IOException {
        try (PDDocument report = report(InventedPassage.brief("A-18"))) {
            String text = text(report);
            assertThat(text.indexOf("NOT RELEASED")).isBetween(0, 100);
            assertThat(text)
                    .contains("Withdrawn without a verdict")
                    .contains("Treat it as charged")
                    .contains("No step towards release was reached")
                    .doesNotContain("SIMULATED");
        }
    }

    @Test
    void every_page_bears_the_passage_its_number_and_how_many_there_are() throws IOException {
        try (PDDocument report = report(InventedPassage.whole("A-17"))) {
            int pages = report.getNumberOfPages();
            assertThat(pages).isBetween(1, 3);
            for (int page = 1; page <= pages; page++) {
                var stripper = new PDFTextStripper();
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                assertThat(stripper.getText(report))
                        .contains("Passage " + InventedPassage.ID)
                        .contains("page " + page + " of " + pages);
            }
        }
    }

    @Test
    void a_passage_of_many_troubles_still_has_at_most_three_pages_and_says_how_much_more_there_is() throws IOException {
        var troubled = new InventedPassage("A-19", true).reads(15, 3.7, 3.7, false);
        for (int i = 0; i < 40; i++) {
            troubled.enters(at -> new Entry.Gap(at + 4_000, 4_000, 6_000)).reads(15, 3.7, 3.7, false);
        }
        troubled.enters(at -> new Entry.Acted(at, Act.WITHDRAW));
        try (PDDocument report = report(troubled)) {
            assertThat(report.getNumberOfPages()).isLessThanOrEqualTo(3);
            assertThat(text(report)).contains("And 16 more of 40, all in record.json under gaps");
        }
    }

    @Test
    void a_tag_in_letters_the_typeface_lacks_is_set_as_boxes_and_breaks_nothing() throws IOException {
        try (PDDocument report = report(InventedPassage.brief("\u96FB\u6C60\n\u202E=1"))) {
            assertThat(text(report)).contains("\u25A1\u25A1");
        }
    }

    @Nested
    class Every_number {

        @Test
        void follows_from_the_record() throws IOException {
            for (InventedPassage passage : List.of(InventedPassage.whole("A-17"), InventedPassage.brief("B"))) {
                try (PDDocument report = report(passage)) {
                    List<BigDecimal> known = new Known(record()).numbers();
                    String text = withoutIdsAndAxes(text(report));
                    Matcher number = NUMBER.matcher(text);
                    int checked = 0;
                    while (number.find()) {
                        var printed = new BigDecimal(number.group());
                        assertThat(known)
                                .as(
                                        "%s in ...%s",
                                        printed, text.substring(Math.max(0, number.start() - 40), number.end()))
                                .anyMatch(each -> isRounded(printed, each));
                        checked++;
                    }
                    assertThat(checked).isGreaterThan(20);
                }
            }
        }

        /** Either way of rounding to the places printed: results go to the nearest, uncertainties up. */
        private static boolean isRounded(BigDecimal printed, BigDecimal exact) {
            int places = printed.scale();
            return exact.setScale(places, RoundingMode.HALF_EVEN).compareTo(printed) == 0
                    || (places > 0
                            && exact.setScale(places, RoundingMode.CEILING).compareTo(printed) == 0);
        }

        /** Identifiers, wall times, the number of a page, clauses of standards and axes hold no results. */
        private String withoutIdsAndAxes(String text) {
            return text.replace(InventedPassage.ID.toString(), "")
                    .replace(Bundles.KEY.signer().toString(), "")
                    .replaceAll("\\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d:\\d\\d UTC", "")
                    .replaceAll("page \\d of \\d", "")
                    .replaceAll("ISO/IEC 17025:2017, 7\\.8\\.6|JCGM 10\\d", "")
                    .replaceAll("(?:-?[\\d.]+ )+(?:minutes|hours) since check-in", "")
                    .replaceAll("(?:\u2264 )?[\\d.]+ V (?=[\\d.\u2264l])|\\d+ \u00B0C", "");
        }
    }

    /** The numbers a report may print: those of the record, and what follows from them by one step. */
    private static final class Known {
        private static final BigDecimal MINUTE = BigDecimal.valueOf(60_000);
        private static final BigDecimal HOUR = BigDecimal.valueOf(3_600_000);

        private final List<BigDecimal> numbers = new ArrayList<>();

        Known(JsonObject record) {
            walk(record.map(), record.object("dates").number("checkedInEventMillis"));
            for (JsonObject result : record.objects("results")) {
                numbers.add(BigDecimal.valueOf(result.decimal("volts") + result.decimal("expandedVolts")));
            }
            if (!record.isNull("restPeak")) {
                JsonObject peak = record.object("restPeak");
                numbers.add(BigDecimal.valueOf(peak.decimal("volts") + peak.decimal("expandedVolts")));
            }
            JsonObject tieOff = record.object("procedure").object("tieOff");
            time(BigDecimal.valueOf(tieOff.number("watchMillis") + tieOff.number("openMillis")));
            List<JsonObject> phases = record.objects("phases");
            for (int i = 1; i < phases.size(); i++) {
                time(BigDecimal.valueOf(
                        phases.get(i).number("eventMillis") - phases.get(i - 1).number("eventMillis")));
            }
            JsonObject heat = record.object("procedure").object("heat");
            numbers.add(BigDecimal.valueOf(heat.decimal("tieOffWarmKelvin") + heat.decimal("withoutDummyKelvin")));
            for (int place = 1; place <= record.objects("findings").size(); place++) {
                numbers.add(BigDecimal.valueOf(place));
            }
            for (JsonObject calibration : record.objects("calibrations")) {
                numbers.add(BigDecimal.valueOf(calibration.number("expandedCelsiusMicrokelvin"), 6));
            }
        }

        List<BigDecimal> numbers() {
            return numbers;
        }

        private void walk(Object node, long beginMillis) {
            if (node instanceof Map<?, ?> map) {
                map.values().forEach(value -> walk(value, beginMillis));
            } else if (node instanceof List<?> list) {
                list.forEach(value -> walk(value, beginMillis));
            } else if (node instanceof Number number) {
                var exact = new BigDecimal(number.toString());
                numbers.add(exact);
                time(exact);
                time(exact.subtract(BigDecimal.valueOf(beginMillis)));
            } else if (node instanceof String text) {
                Matcher number = NUMBER.matcher(text);
                while (number.find()) {
                    numbers.add(new BigDecimal(number.group()));
                }
            }
        }

        private void time(BigDecimal millis) {
            numbers.add(millis.divide(MINUTE, 9, RoundingMode.HALF_EVEN));
            numbers.add(millis.divide(HOUR, 9, RoundingMode.HALF_EVEN));
        }
    }

    @Nested
    class As_a_document {

        @Test
        void it_embeds_its_only_typeface() throws IOException {
            try (PDDocument report = report(InventedPassage.whole("A-17"))) {
                for (PDPage page : report.getPages()) {
                    assertThat(page.getResources().getFontNames()).isNotEmpty();
                    for (COSName name : page.getResources().getFontNames()) {
                        PDFont font = page.getResources().getFont(name);
                        assertThat(font).isInstanceOf(PDType0Font.class);
                        assertThat(font.isEmbedded()).isTrue();
                        assertThat(font.getName()).contains("LiberationSans");
                    }
                }
            }
        }

        @Test
        void it_is_tagged_for_screen_readers_with_a_title_a_language_and_words_for_its_figures() throws IOException {
            try (PDDocument report = report(InventedPassage.whole("A-17"))) {
                var catalog = report.getDocumentCatalog();
                assertThat(catalog.getMarkInfo().isMarked()).isTrue();
                assertThat(catalog.getLanguage()).isEqualTo("en");
                assertThat(report.getDocumentInformation().getTitle()).startsWith("Record of one cell");
                String tree = structure(catalog.getStructureTreeRoot().getKids());
                assertThat(tree)
                        .contains("Document", "H1", "H2", "Table", "TR", "TH", "TD", "Figure(Voltage over time");
            }
        }

        private String structure(List<Object> kids) {
            var text = new StringBuilder();
            for (Object kid : kids) {
                if (kid instanceof PDStructureElement element) {
                    text.append(element.getStructureType());
                    if (element.getAlternateDescription() != null) {
                        text.append('(')
                                .append(element.getAlternateDescription())
                                .append(')');
                    }
                    text.append(' ').append(structure(element.getKids()));
                }
            }
            return text.toString();
        }

        @Test
        void it_uses_no_colour_so_that_it_reads_the_same_in_grey() throws IOException {
            try (PDDocument report = report(InventedPassage.whole("A-17"))) {
                for (PDPage page : report.getPages()) {
                    String content = new String(page.getContents().readAllBytes(), StandardCharsets.ISO_8859_1);
                    assertThat(content).doesNotContainPattern("\\s(rg|RG|k|K|sc|SC|scn|SCN)\\s");
                }
                assertThat(StreamSupport.stream(report.getPages().spliterator(), false))
                        .allSatisfy(page -> assertThat(page.getResources().getXObjectNames())
                                .isEmpty());
            }
        }
    }
}
