package org.holdproof.report.layout;

import java.util.ArrayList;
import java.util.List;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Pen;
import org.holdproof.report.draw.Stroke;
import org.holdproof.report.draw.Typesetter;

/**
 * Fills pages from top to bottom. Nothing is drawn until every page is known, so that each can say how many there are.
 */
final class Flow {
    private static final Lettering HEADING = Lettering.bold(12);
    private static final Lettering SMALL_HEADING = Lettering.bold(9.2);

    private final Typesetter type;
    private final Box body;
    private final List<Page> pages = new ArrayList<>();
    private double y;
    private double floor;

    /** @param body the part of each sheet that is filled */
    Flow(Typesetter type, Box body) {
        this.type = type;
        this.body = body;
        newPage();
    }

    /** A page: what is drawn on it, and the sections that begin on it. */
    record Page(List<Mark> marks, List<Section> sections) {}

    /** A drawing with its place settled. */
    interface Mark {
        void draw(Pen pen);
    }

    /** A section's title and where it stands. */
    record Section(String title, double top) {}

    Typesetter type() {
        return type;
    }

    List<Page> pages() {
        return pages;
    }

    double left() {
        return body.x();
    }

    double width() {
        return body.width();
    }

    /** Where the next thing goes, in points from the top of the sheet. */
    double y() {
        return y;
    }

    /** What is left of this page, in points. */
    double room() {
        return floor - y;
    }

    /** Height of an empty page, in points. */
    double fullHeight() {
        return body.height();
    }

    boolean atTop() {
        return y <= body.y();
    }

    final void newPage() {
        pages.add(new Page(new ArrayList<>(), new ArrayList<>()));
        y = body.y();
        floor = body.bottom();
    }

    /** Keeps the foot of this page free, and says where the freed part begins. */
    double reserveFoot(double height) {
        floor = body.bottom() - height;
        return floor;
    }

    /** Goes to a new page unless this much room is left. */
    void need(double height) {
        if (room() < height && !atTop()) {
            newPage();
        }
    }

    void skip(double height) {
        y += height;
    }

    void mark(Mark mark) {
        pages.get(pages.size() - 1).marks().add(mark);
    }

    /** Sets a strip over the whole width, on a new page if need be. */
    void put(Strip strip) {
        need(strip.height());
        putAt(strip, left(), width());
        y += strip.height();
    }

    void putAt(Strip strip, double x, double width) {
        double top = y;
        mark(pen -> strip.draw(pen, x, top, width));
    }

    void paragraph(Lettering lettering, String text) {
        for (String line : type.wrap(lettering, text, width())) {
            put(Strip.line(lettering, line));
        }
        y += lettering.size() * 0.5;
    }

    /** A section's title, kept together with at least this much of what follows. */
    void section(String title, double following) {
        if (!atTop()) {
            y += 12;
        }
        need(HEADING.line() + 6 + following);
        pages.get(pages.size() - 1).sections().add(new Section(title, y));
        double top = y;
        mark(pen -> {
            pen.text(HEADING, title, left(), top);
            double under = top + HEADING.line() + 1.5;
            pen.line(left(), under, left() + width(), under, Stroke.solid(Palette.INK, 0.9));
        });
        y += HEADING.line() + 7;
    }

    void subsection(String title, double following) {
        need(SMALL_HEADING.line() + 4 + following);
        y += 3;
        put(Strip.line(SMALL_HEADING, title));
        y += 2;
    }
}
