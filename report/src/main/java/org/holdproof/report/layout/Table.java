package org.holdproof.report.layout;

import java.util.ArrayList;
import java.util.List;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Stroke;

/**
 * Rows under headings. It goes on over as many pages as it takes with its headings repeated; a row goes to the next
 * page whole, unless it is taller than a page.
 */
final class Table {
    static final double GUTTER = 7;
    private static final double PAD = 1.6;
    private static final double WORTH_STARTING = 60;
    private static final Lettering HEAD = Lettering.bold(7).in(Palette.SOFT);

    private final List<Column> columns;
    private final List<List<List<Strip>>> rows = new ArrayList<>();

    Table(List<Column> columns) {
        this.columns = List.copyOf(columns);
    }

    /**
     * A column.
     *
     * @param width in points, without the gutter to the next one
     */
    record Column(String head, double width, boolean right) {
        static Column of(String head, double width) {
            return new Column(head, width, false);
        }

        static Column toTheRight(String head, double width) {
            return new Column(head, width, true);
        }
    }

    void row(List<List<Strip>> cells) {
        if (cells.size() != columns.size()) {
            throw new IllegalArgumentException(cells.size() + " cells for " + columns.size() + " columns");
        }
        rows.add(cells);
    }

    /** A row of plain text, each cell wrapped in its column. */
    void textRow(Flow flow, Lettering lettering, List<String> texts) {
        List<List<Strip>> cells = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            boolean right = columns.get(i).right();
            cells.add(flow.type().wrap(lettering, texts.get(i), columns.get(i).width()).stream()
                    .map(line -> right ? Strip.lineRight(lettering, line) : Strip.line(lettering, line))
                    .toList());
        }
        row(cells);
    }

    static double headHeight() {
        return HEAD.line() + PAD;
    }

    static double height(List<List<Strip>> row) {
        double tallest = 0;
        for (List<Strip> cell : row) {
            tallest = Math.max(tallest, cell.stream().mapToDouble(Strip::height).sum());
        }
        return tallest + 2 * PAD;
    }

    void lay(Flow flow) {
        boolean headed = false;
        for (List<List<Strip>> whole : rows) {
            List<List<Strip>> row = whole;
            double head = headed ? 0 : headHeight();
            boolean fits = height(row) + head <= flow.room();
            boolean wouldFitAlone = height(row) + headHeight() <= flow.fullHeight();
            if (!fits && (wouldFitAlone || flow.room() < WORTH_STARTING)) {
                flow.newPage();
                headed = false;
            }
            while (true) {
                if (!headed) {
                    head(flow);
                    headed = true;
                }
                List<List<Strip>> now = new ArrayList<>();
                List<List<Strip>> later = new ArrayList<>();
                split(row, flow.room(), now, later);
                draw(flow, now);
                if (later.stream().allMatch(List::isEmpty)) {
                    break;
                }
                flow.newPage();
                headed = false;
                row = later;
            }
        }
        flow.skip(4);
    }

    /** As much of every cell as fits, and the rest. */
    private static void split(List<List<Strip>> row, double room, List<List<Strip>> now, List<List<Strip>> later) {
        for (List<Strip> cell : row) {
            double used = 2 * PAD;
            int fits = 0;
            while (fits < cell.size() && used + cell.get(fits).height() <= room + 1e-6) {
                used += cell.get(fits++).height();
            }
            now.add(cell.subList(0, fits));
            later.add(cell.subList(fits, cell.size()));
        }
    }

    private void head(Flow flow) {
        if (columns.stream().allMatch(column -> column.head().isEmpty())) {
            return;
        }
        double x = flow.left();
        for (Column column : columns) {
            Strip head = column.right() ? Strip.lineRight(HEAD, column.head()) : Strip.line(HEAD, column.head());
            flow.putAt(head, x, column.width());
            x += column.width() + GUTTER;
        }
        flow.skip(headHeight());
        rule(flow, 0.8);
    }

    private void draw(Flow flow, List<List<Strip>> row) {
        double x = flow.left();
        for (int i = 0; i < columns.size(); i++) {
            double cellX = x;
            double width = columns.get(i).width();
            double top = flow.y() + PAD;
            for (Strip strip : row.get(i)) {
                double stripTop = top;
                flow.mark(pen -> strip.draw(pen, cellX, stripTop, width));
                top += strip.height();
            }
            x += width + GUTTER;
        }
        flow.skip(height(row));
        rule(flow, 0.4);
    }

    private static void rule(Flow flow, double width) {
        double y = flow.y();
        flow.mark(pen -> pen.line(flow.left(), y, flow.left() + flow.width(), y, Stroke.solid(Palette.RULE, width)));
    }
}
