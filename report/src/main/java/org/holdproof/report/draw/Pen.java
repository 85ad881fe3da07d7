package org.holdproof.report.draw;

import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfName;
import java.awt.Color;

/** Draws on one page, in points from the sheet's top left corner. Text comes in lines set by their top edge. */
public final class Pen {
    private final PdfContentByte page;
    private final Typesetter type;
    private final double sheetHeight;

    /** @param sheetHeight the height of the page, in points */
    public Pen(PdfContentByte page, Typesetter type, double sheetHeight) {
        this.page = page;
        this.type = type;
        this.sheetHeight = sheetHeight;
    }

    /** Draws what belongs to a part of a tagged document. */
    public void content(Structure.Part part, Runnable drawing) {
        part.begin(page);
        drawing.run();
        page.endMarkedContentSequence();
    }

    /** Draws what a person who does not see the page of a tagged document need not be told: lines, grounds, heads. */
    public void decoration(Runnable drawing) {
        page.beginMarkedContentSequence(new PdfName("Artifact"));
        drawing.run();
        page.endMarkedContentSequence();
    }

    public Typesetter type() {
        return type;
    }

    /** One line of text from its left end. */
    public void text(Lettering lettering, String text, double x, double top) {
        if (text.isBlank()) {
            return;
        }
        begin(lettering);
        page.setTextMatrix((float) x, flip(top + lettering.baseline()));
        end(text);
    }

    /** One line of text up to its right end. */
    public void textRight(Lettering lettering, String text, double right, double top) {
        text(lettering, text, right - type.width(lettering, text), top);
    }

    /** One line of text about its middle. */
    public void textCentred(Lettering lettering, String text, double centre, double top) {
        text(lettering, text, centre - type.width(lettering, text) / 2, top);
    }

    /** One line of text that reads upwards about a point. */
    public void textUpwards(Lettering lettering, String text, double centreX, double centreY) {
        double width = type.width(lettering, text);
        begin(lettering);
        double x = centreX - lettering.line() / 2 + lettering.baseline();
        page.setTextMatrix(0, 1, -1, 0, (float) x, flip(centreY + width / 2));
        end(text);
    }

    public void fill(Box box, Color colour) {
        page.setColorFill(colour);
        rectangle(box);
        page.fill();
    }

    public void frame(Box box, Stroke stroke) {
        page.saveState();
        ready(stroke);
        rectangle(box);
        page.stroke();
        page.restoreState();
    }

    public void line(double x1, double y1, double x2, double y2, Stroke stroke) {
        path(new double[] {x1, x2}, new double[] {y1, y2}, stroke);
    }

    /** An open line through points. */
    public void path(double[] xs, double[] ys, Stroke stroke) {
        page.saveState();
        ready(stroke);
        trace(xs, ys);
        page.stroke();
        page.restoreState();
    }

    /** A closed shape. */
    public void shape(double[] xs, double[] ys, Color colour) {
        page.setColorFill(colour);
        trace(xs, ys);
        page.closePath();
        page.fill();
    }

    public void disc(double centreX, double centreY, double radius, Color colour) {
        page.setColorFill(colour);
        page.circle((float) centreX, flip(centreY), (float) radius);
        page.fill();
    }

    /** Slanting lines over a rectangle. */
    public void hatch(Box box, double spacing, Stroke stroke) {
        within(box, () -> {
            page.saveState();
            ready(stroke);
            for (double start = box.x() - box.height(); start < box.right(); start += spacing) {
                page.moveTo((float) start, flip(box.bottom()));
                page.lineTo((float) (start + box.height()), flip(box.y()));
            }
            page.stroke();
            page.restoreState();
        });
    }

    /** Draws with everything outside a rectangle cut off. */
    public void within(Box box, Runnable drawing) {
        page.saveState();
        rectangle(box);
        page.clip();
        page.newPath();
        drawing.run();
        page.restoreState();
    }

    private void begin(Lettering lettering) {
        page.setColorFill(lettering.colour());
        page.beginText();
        page.setFontAndSize(type.font(lettering.face()), (float) lettering.size());
    }

    private void end(String text) {
        page.showText(type.showable(text));
        page.endText();
    }

    private void ready(Stroke stroke) {
        page.setColorStroke(stroke.colour());
        page.setLineWidth((float) stroke.width());
        page.setLineJoin(PdfContentByte.LINE_JOIN_ROUND);
        page.setLineCap(PdfContentByte.LINE_CAP_BUTT);
        if (stroke.dash() > 0) {
            page.setLineDash((float) stroke.dash(), (float) stroke.space(), 0);
        }
    }

    private void rectangle(Box box) {
        page.rectangle((float) box.x(), flip(box.bottom()), (float) box.width(), (float) box.height());
    }

    private void trace(double[] xs, double[] ys) {
        page.moveTo((float) xs[0], flip(ys[0]));
        for (int i = 1; i < xs.length; i++) {
            page.lineTo((float) xs[i], flip(ys[i]));
        }
    }

    private float flip(double y) {
        return (float) (sheetHeight - y);
    }
}
