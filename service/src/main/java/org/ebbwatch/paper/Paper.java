package org.ebbwatch.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.TimeZone;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/**
 * A document of A4 pages, set from top to bottom; a new page begins where the rest of one does not do. Each page bears the
 * document's mark, its number and how many there are. For one thread.
 */
public final class Paper implements AutoCloseable {
    public static final float WIDTH = PDRectangle.A4.getWidth();
    public static final float MARGIN = 48;

    private static final float HEIGHT = PDRectangle.A4.getHeight();
    private static final float FOOT = 52;
    private static final float LEADING = 1.3f;
    private static final float CELL_PADDING = 4;

    private final PDDocument document = new PDDocument();
    private final Lettering lettering;
    private final Structure structure;
    private final String mark;
    private PDPage page;
    private PDPageContentStream content;
    private float y;

    /** Draws on a canvas. */
    @FunctionalInterface
    public interface Drawing {
        void on(Canvas canvas) throws IOException;
    }

    /**
     * An empty document.
     *
     * @param title of the document
     * @param mark stands at the foot of each page and tells its document
     * @param madeMillis date of the document, milliseconds since 1970
     */
    public Paper(String title, String mark, long madeMillis) throws IOException {
        this.mark = mark;
        this.lettering = new Lettering(document);
        this.structure = new Structure(document);
        document.setDocumentId((long) (title + mark).hashCode());
        document.getDocumentCatalog().setLanguage("en");
        var viewing = new PDViewerPreferences(document.getDocumentCatalog().getCOSObject());
        viewing.setDisplayDocTitle(true);
        document.getDocumentCatalog().setViewerPreferences(viewing);
        var made = new GregorianCalendar(TimeZone.getTimeZone("UTC"));
        made.setTimeInMillis(madeMillis);
        inform(title, made);
        beginPage();
    }

    private void inform(String title, Calendar made) {
        var information = new PDDocumentInformation();
        information.setTitle(title);
        information.setSubject(mark);
        information.setProducer("Ebbwatch");
        information.setCreationDate(made);
        document.setDocumentInformation(information);
    }

    /** Goes on at the top of a new page. */
    public void beginPage() throws IOException {
        if (content != null) {
            content.close();
        }
        page = new PDPage(PDRectangle.A4);
        document.addPage(page);
        structure.beginPage(page);
        content = new PDPageContentStream(document, page);
        y = HEIGHT - MARGIN;
    }

    /** Width between the margins. */
    public static float measure() {
        return WIDTH - 2 * MARGIN;
    }

    /** Makes sure that so much of a page is left, or begins a new one. */
    public void need(float height) throws IOException {
        if (y - height < FOOT) {
            beginPage();
        }
    }

    /** Leaves some room. */
    public void skip(float height) {
        y -= height;
    }

    /** A heading of a section, kept together with what follows. */
    public void heading(String text) throws IOException {
        need(70);
        skip(10);
        lines("H2", text, 10.5f, 0, true);
        skip(2);
    }

    /** A paragraph. */
    public void paragraph(String text, float size) throws IOException {
        lines("P", text, size, 0, false);
        skip(size * 0.35f);
    }

    private void lines(String type, String text, float size, float grey, boolean bold) throws IOException {
        List<String> broken = lettering.lines(text, size, measure());
        need(size * LEADING);
        PDPage itsPage = page;
        PDStructureElement element = structure.element(type, itsPage);
        for (String line : broken) {
            need(size * LEADING);
            if (!page.equals(itsPage)) {
                itsPage = page;
                element = structure.element(type, itsPage);
            }
            begin(type, element);
            if (bold) {
                canvas().bold(line, 0, y - size, size, grey);
            } else {
                canvas().text(line, 0, y - size, size, grey);
            }
            content.endMarkedContent();
            y -= size * LEADING;
        }
    }

    /** A figure over the whole measure; {@code says} tells what it shows to whoever cannot see it. */
    public void figure(String says, float height, Drawing drawing) throws IOException {
        need(height);
        PDStructureElement element = structure.element("Figure", page);
        element.setAlternateDescription(says);
        begin("Figure", element);
        drawing.on(new Canvas(content, lettering, MARGIN, y - height, measure(), height));
        content.endMarkedContent();
        y -= height;
    }

    /** Something drawn whose words are read as a paragraph or heading of this type. */
    public void block(String type, float height, Drawing drawing) throws IOException {
        need(height);
        begin(type, structure.element(type, page));
        drawing.on(new Canvas(content, lettering, MARGIN, y - height, measure(), height));
        content.endMarkedContent();
        y -= height;
    }

    /**
     * A table with a line of heads, repeated on each page it reaches.
     *
     * @param shares of the measure, one for each column
     */
    public void table(float size, float[] shares, List<String> heads, List<List<String>> rows) throws IOException {
        structure.enter("Table");
        row("TH", size, shares, heads);
        for (List<String> row : rows) {
            if (y - height(size, shares, row) < FOOT) {
                beginPage();
                row("TH", size, shares, heads);
            }
            row("TD", size, shares, row);
        }
        structure.leave();
        skip(4);
    }

    private float height(float size, float[] shares, List<String> cells) throws IOException {
        int most = 1;
        for (int i = 0; i < cells.size(); i++) {
            most = Math.max(
                    most, lettering.lines(cells.get(i), size, inner(shares[i])).size());
        }
        return most * size * LEADING + 3;
    }

    private static float inner(float share) {
        return share * measure() - CELL_PADDING;
    }

    private void row(String type, float size, float[] shares, List<String> cells) throws IOException {
        float height = height(size, shares, cells);
        need(height);
        structure.enter("TR");
        float x = 0;
        for (int i = 0; i < cells.size(); i++) {
            begin(type, structure.element(type, page));
            float line = y - size;
            for (String each : lettering.lines(cells.get(i), size, inner(shares[i]))) {
                if (type.equals("TH")) {
                    canvas().bold(each, x, line, size, 0);
                } else {
                    canvas().text(each, x, line, size, 0);
                }
                line -= size * LEADING;
            }
            content.endMarkedContent();
            x += shares[i] * measure();
        }
        structure.leave();
        y -= height;
        content.beginMarkedContent(COSName.getPDFName("Artifact"));
        boolean head = type.equals("TH");
        canvas().line(0, y + 1, measure(), y + 1, head ? 0.8f : 0.3f, head ? 0 : 0.65f);
        content.endMarkedContent();
    }

    private Canvas canvas() {
        return new Canvas(content, lettering, MARGIN, 0, measure(), HEIGHT);
    }

    private void begin(String type, PDStructureElement element) throws IOException {
        content.beginMarkedContent(COSName.getPDFName(type), structure.mark(element));
    }

    /** The document's bytes; nothing more can be set. */
    public byte[] finish() throws IOException {
        content.close();
        content = null;
        List<PDPage> pages = new ArrayList<>();
        document.getPages().forEach(pages::add);
        for (int i = 0; i < pages.size(); i++) {
            foot(pages.get(i), "page " + (i + 1) + " of " + pages.size());
        }
        structure.finish();
        var out = new ByteArrayOutputStream();
        document.save(out);
        return out.toByteArray();
    }

    private void foot(PDPage its, String number) throws IOException {
        try (var stream = new PDPageContentStream(document, its, AppendMode.APPEND, true, true)) {
            stream.beginMarkedContent(COSName.getPDFName("Artifact"));
            var canvas = new Canvas(stream, lettering, MARGIN, 0, measure(), HEIGHT);
            canvas.line(0, 42, measure(), 42, 0.4f, 0.4f);
            canvas.text(mark, 0, 30, 7.5f, 0.2f);
            canvas.textTo(number, measure(), 30, 7.5f, 0.2f);
            stream.endMarkedContent();
        }
    }

    @Override
    public void close() throws IOException {
        if (content != null) {
            content.close();
        }
        document.close();
    }
}
