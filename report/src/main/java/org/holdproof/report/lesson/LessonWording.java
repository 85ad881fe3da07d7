package org.holdproof.report.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Pen;
import org.holdproof.report.draw.Typesetter;

/** Wrapped text in a column, measured before it is drawn. */
final class LessonWording {
    /** A figure stays with what it counts. */
    private static final Pattern UNIT = Pattern.compile("([0-9½¼¾]) (°|000|h\\b|min\\b|mm\\b|logs?\\b)");

    private record Line(Lettering lettering, String text, double gapBefore) {}

    private final Typesetter type;
    private final double width;
    private final List<Line> lines = new ArrayList<>();

    LessonWording(Typesetter type, double width) {
        this.type = type;
        this.width = width;
    }

    /** Adds a paragraph, this far below the one before. */
    LessonWording add(Lettering lettering, String text, double gapBefore) {
        double gap = lines.isEmpty() ? 0 : gapBefore;
        for (String line : type.wrap(lettering, UNIT.matcher(text).replaceAll("$1\u00a0$2"), width)) {
            lines.add(new Line(lettering, line, gap));
            gap = 0;
        }
        return this;
    }

    double height() {
        return lines.stream()
                .mapToDouble(line -> line.gapBefore() + line.lettering().line())
                .sum();
    }

    void draw(Pen pen, double x, double top) {
        double y = top;
        for (Line line : lines) {
            y += line.gapBefore();
            pen.text(line.lettering(), line.text(), x, y);
            y += line.lettering().line();
        }
    }

    /** Cuts its lines into columns of this many lines at most, in order. */
    void drawInColumns(Pen pen, double x, double top, int columns, double step) {
        int each = linesInColumn(columns);
        for (int i = 0; i < lines.size(); i++) {
            Line line = lines.get(i);
            pen.text(
                    line.lettering(),
                    line.text(),
                    x + Math.floorDiv(i, each) * step,
                    top + (i % each) * line.lettering().line());
        }
    }

    double heightInColumns(int columns) {
        return lines.isEmpty()
                ? 0
                : linesInColumn(columns) * lines.get(0).lettering().line();
    }

    private int linesInColumn(int columns) {
        return (lines.size() + columns - 1) / columns;
    }
}
