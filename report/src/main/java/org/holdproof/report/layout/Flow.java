package org.holdproof.report.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.holdproof.report.draw.Box;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Pen;
import org.holdproof.report.draw.Stroke;
import org.holdproof.report.draw.Structure;
import org.holdproof.report.draw.Typesetter;

/**
 * Fills pages from top to bottom. Nothing is drawn until every page is known, so that each can say how many there are.
 */
final class Flow {
    private static final Lettering HEADING = Lettering.bold(12);
    private static final Lettering SMALL_HEADING = Lettering.bold(9.6);

    private final Typesetter type;
    private final Box body;
    private final Structure.Part document;
    private Structure.Part part;
    private final List<Page> pages = new ArrayList<>();
    private double y;
    private double floor;

    /**
     * @param body the part of each sheet that is filled
     * @param document what the filled pages are the content of
     */
    Flow(Typesetter type, Box body, Structure.Part document) {
        this.type = type;
        this.body = body;
        this.document = document;
        this.part = document;
        newPage();
    }

    /** A page: what is drawn on it, and the sections that begin on it. */
    record Page(List<Placed> marks, List<Section> sections) {}

    /** A drawing with its place settled. */
    interface Mark {
        void draw(Pen pen);
    }

    /** A drawing, and the part of the document it belongs to; decoration belongs to none. */
    record Placed(Optional<Structure.Part> part, Mark mark) {
        void draw(Pen pen) {
            if (part.isPresent()) {
                pen.content(part.get(), () -> mark.draw(pen));
            } else {
                pen.decoration(() -> mark.draw(pen));
            }
        }
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

    /** Keeps the foot of this page free. */
    void reserveFoot(double height) {
        floor = body.bottom() - height;
    }

    /** Where a foot of this height begins, in points from the top of the sheet. */
    double footTop(double height) {
        return body.bottom() - height;
    }

    /** Draws on the first page, whatever page has been reached. */
    void markFirst(Structure.Part of, Mark mark) {
        of.willBeDrawn();
        pages.get(0).marks().add(new Placed(Optional.of(of), mark));
    }

    /** Decorates the first page, whatever page has been reached. */
    void decorateFirst(Mark mark) {
        pages.get(0).marks().add(new Placed(Optional.empty(), mark));
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

    /** The section that is being filled. */
    Structure.Part part() {
        return part;
    }

    /** Draws what need not be read. */
    void decorate(Mark mark) {
        pages.get(pages.size() - 1).marks().add(new Placed(Optional.empty(), mark));
    }

    /** Draws what belongs to a part of the document. */
    void mark(Structure.Part of, Mark mark) {
        of.willBeDrawn();
        pages.get(pages.size() - 1).marks().add(new Placed(Optional.of(of), mark));
    }

    /** Sets a slice over the whole width, on a new page if need be. */
    void put(Structure.Part of, ColumnSlice slice) {
        need(slice.height());
        putAt(of, slice, left(), width());
        y += slice.height();
    }

    void putAt(Structure.Part of, ColumnSlice slice, double x, double width) {
        double top = y;
        mark(of, pen -> slice.draw(pen, x, top, width));
    }

    void paragraph(Lettering lettering, String text) {
        Structure.Part paragraph = part.add(Structure.Tag.PARAGRAPH);
        for (String line : type.wrap(lettering, text, width())) {
            put(paragraph, ColumnSlice.line(lettering, line));
        }
        y += lettering.size() * 0.5;
    }

    /** A chart over the whole width, and what it shows in a sentence or two. */
    void figure(double height, String words, Figure figure) {
        need(height);
        Box place = new Box(left(), y, width(), height - 6);
        mark(part.addFigure(words), pen -> figure.draw(pen, place));
        y += height;
    }

    /** A drawing that fills a box. */
    interface Figure {
        void draw(Pen pen, Box place);
    }

    /** A section's title, kept together with at least this much of what follows. */
    void section(String title, double following) {
        if (!atTop()) {
            y += 12;
        }
        need(HEADING.line() + 6 + following);
        pages.get(pages.size() - 1).sections().add(new Section(title, y));
        double top = y;
        part = document.add(Structure.Tag.SECTION);
        mark(part.add(Structure.Tag.HEADING), pen -> pen.text(HEADING, title, left(), top));
        double under = top + HEADING.line() + 1.5;
        decorate(pen -> pen.line(left(), under, left() + width(), under, Stroke.solid(Palette.INK, 0.9)));
        y += HEADING.line() + 7;
    }

    void subsection(String title, double following) {
        need(SMALL_HEADING.line() + 4 + following);
        y += 3;
        put(part.add(Structure.Tag.SUBHEADING), ColumnSlice.line(SMALL_HEADING, title));
        y += 2;
    }
}
