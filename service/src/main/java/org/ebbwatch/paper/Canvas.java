package org.ebbwatch.paper;

import java.io.IOException;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;

/** A rectangle of a page to draw on, in points from its lower left corner. Greys run from 0, black, to 1, white. */
public final class Canvas {
    private static final float BOLD_STROKE = 0.028f;

    private final PDPageContentStream content;
    private final Lettering lettering;
    private final float left;
    private final float bottom;
    private final float width;
    private final float height;

    Canvas(PDPageContentStream content, Lettering lettering, float left, float bottom, float width, float height) {
        this.content = content;
        this.lettering = lettering;
        this.left = left;
        this.bottom = bottom;
        this.width = width;
        this.height = height;
    }

    public float width() {
        return width;
    }

    public float height() {
        return height;
    }

    /** A part of this canvas. */
    public Canvas part(float x, float y, float itsWidth, float itsHeight) {
        return new Canvas(content, lettering, left + x, bottom + y, itsWidth, itsHeight);
    }

    /** Fills a rectangle. */
    public void fill(float x, float y, float itsWidth, float itsHeight, float grey) throws IOException {
        content.setNonStrokingColor(grey);
        content.addRect(left + x, bottom + y, itsWidth, itsHeight);
        content.fill();
    }

    /** Draws a rectangle's edge. */
    public void frame(float x, float y, float itsWidth, float itsHeight, float thickness, float grey)
            throws IOException {
        pen(thickness, grey, new float[0]);
        content.addRect(left + x, bottom + y, itsWidth, itsHeight);
        content.stroke();
    }

    /** Draws a line, dashed where {@code dashes} holds lengths of strokes and spaces. */
    public void line(float fromX, float fromY, float toX, float toY, float thickness, float grey, float... dashes)
            throws IOException {
        pen(thickness, grey, dashes);
        content.moveTo(left + fromX, bottom + fromY);
        content.lineTo(left + toX, bottom + toY);
        content.stroke();
    }

    /** Draws lines through points, each {x, y}; a null lifts the pen. */
    public void polyline(Iterable<float[]> points, float thickness, float grey, float... dashes) throws IOException {
        pen(thickness, grey, dashes);
        boolean down = false;
        for (float[] point : points) {
            if (point == null) {
                down = false;
            } else if (down) {
                content.lineTo(left + point[0], bottom + point[1]);
            } else {
                content.moveTo(left + point[0], bottom + point[1]);
                down = true;
            }
        }
        content.stroke();
    }

    /** Fills a triangle that points down to a place. */
    public void marker(float x, float y, float size, float grey) throws IOException {
        content.setNonStrokingColor(grey);
        content.moveTo(left + x, bottom + y);
        content.lineTo(left + x - size / 2, bottom + y + size);
        content.lineTo(left + x + size / 2, bottom + y + size);
        content.closePath();
        content.fill();
    }

    /** Slanting lines across a rectangle. */
    public void hatch(float x, float y, float itsWidth, float itsHeight, float grey) throws IOException {
        content.saveGraphicsState();
        content.addRect(left + x, bottom + y, itsWidth, itsHeight);
        content.clip();
        for (float at = -itsHeight; at < itsWidth; at += 4) {
            line(x + at, y, x + at + itsHeight, y + itsHeight, 0.5f, grey);
        }
        content.restoreGraphicsState();
    }

    /** Text from here to the right. */
    public void text(String text, float x, float y, float size, float grey) throws IOException {
        set(lettering.settable(text), x, y, size, grey, false);
    }

    /** Bold text from here to the right. */
    public void bold(String text, float x, float y, float size, float grey) throws IOException {
        set(lettering.settable(text), x, y, size, grey, true);
    }

    /** Text that ends here. */
    public void textTo(String text, float x, float y, float size, float grey) throws IOException {
        String settable = lettering.settable(text);
        set(settable, x - lettering.width(settable, size), y, size, grey, false);
    }

    /** Text with its middle here. */
    public void textAt(String text, float x, float y, float size, float grey) throws IOException {
        String settable = lettering.settable(text);
        set(settable, x - lettering.width(settable, size) / 2, y, size, grey, false);
    }

    /** How wide a text is. */
    public float widthOf(String text, float size) throws IOException {
        return lettering.width(lettering.settable(text), size);
    }

    private void set(String settable, float x, float y, float size, float grey, boolean bold) throws IOException {
        content.beginText();
        content.setFont(lettering.font(), size);
        content.setNonStrokingColor(grey);
        content.setStrokingColor(grey);
        content.setRenderingMode(bold ? RenderingMode.FILL_STROKE : RenderingMode.FILL);
        content.setLineWidth(bold ? size * BOLD_STROKE : 1);
        content.newLineAtOffset(left + x, bottom + y);
        content.showText(settable);
        content.endText();
        content.setRenderingMode(RenderingMode.FILL);
    }

    private void pen(float thickness, float grey, float[] dashes) throws IOException {
        content.setLineWidth(thickness);
        content.setStrokingColor(grey);
        content.setLineDashPattern(dashes, 0);
    }
}
