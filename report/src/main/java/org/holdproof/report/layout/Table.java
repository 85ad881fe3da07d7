package org.holdproof.report.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Stroke;
import org.holdproof.report.draw.Structure;
import org.holdproof.report.draw.Typesetter;

/**
 * Rows under headings. It goes on over as many pages as it takes with its headings repeated; a row goes to the next
 * page whole, unless it is taller than a page.
 */
final class Table {
    static final double GUTTER = 7;
    private static final double PAD = 1.6;
    private static final double WORTH_STARTING = 60;
    private static final Lettering HEAD = PageLettering.HEAD;

    private final List<Column> columns;
    private final List<List<List<ColumnSlice>>> rows = new ArrayList<>();

    Table(List<Column> columns) {
        this.columns = List.copyOf(columns);
    }

    /**
     * A column.
     *
     * @param width in points, without the gutter to the next one
     */
    record Column(String head, double width, boolean right, Structure.Tag tag) {
        static Column of(String head, double width) {
            return new Column(head, width, false, Structure.Tag.CELL);
        }

        static Column toTheRight(String head, double width) {
            return new Column(head, width, true, Structure.Tag.CELL);
        }

        /** A column whose cells say what their rows are about. */
        static Column ofRowHeads(String head, double width) {
            return new Column(head, width, false, Structure.Tag.ROW_HEAD);
        }
    }

    void row(List<List<ColumnSlice>> cells) {
        if (cells.size() != columns.size()) {
            throw new IllegalArgumentException(cells.size() + " cells for " + columns.size() + " columns");
        }
        rows.add(cells);
    }

    /** A row of plain text, each cell wrapped in its column. */
    void textRow(Flow flow, Lettering lettering, List<String> texts) {
        List<List<ColumnSlice>> cells = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            boolean right = columns.get(i).right();
            cells.add(flow.type().wrap(lettering, texts.get(i), columns.get(i).width()).stream()
                    .map(line -> right ? ColumnSlice.lineRight(lettering, line) : ColumnSlice.line(lettering, line))
                    .toList());
        }
        row(cells);
    }

    /** The heads' height; none where no column has one. */
    double headHeight(Typesetter type) {
        int lines = columns.stream()
                .mapToInt(
                        column -> type.wrap(HEAD, column.head(), column.width()).size())
                .max()
                .orElse(0);
        return lines == 0 ? 0 : lines * HEAD.line() + PAD;
    }

    static double height(List<List<ColumnSlice>> row) {
        double tallest = 0;
        for (List<ColumnSlice> cell : row) {
            tallest = Math.max(
                    tallest, cell.stream().mapToDouble(ColumnSlice::height).sum());
        }
        return tallest + 2 * PAD;
    }

    void lay(Flow flow) {
        Structure.Part table = flow.part().add(Structure.Tag.TABLE);
        double headHeight = headHeight(flow.type());
        boolean headed = false;
        boolean headedBefore = false;
        for (List<List<ColumnSlice>> whole : rows) {
            List<List<ColumnSlice>> row = whole;
            double head = headed ? 0 : headHeight;
            boolean fits = height(row) + head <= flow.room();
            boolean wouldFitAlone = height(row) + headHeight <= flow.fullHeight();
            if (!fits && (wouldFitAlone || flow.room() < WORTH_STARTING)) {
                flow.newPage();
                headed = false;
            }
            List<Structure.Part> cells = List.of();
            while (true) {
                if (!headed) {
                    // Only the first heads are read out; those on later pages are there for the eye.
                    head(flow, headedBefore || headHeight == 0 ? Optional.empty() : Optional.of(table));
                    headed = true;
                    headedBefore = true;
                }
                if (cells.isEmpty()) {
                    cells = cells(table);
                }
                List<List<ColumnSlice>> now = new ArrayList<>();
                List<List<ColumnSlice>> later = new ArrayList<>();
                split(row, flow.room(), now, later);
                draw(flow, now, cells);
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
    private static void split(
            List<List<ColumnSlice>> row, double room, List<List<ColumnSlice>> now, List<List<ColumnSlice>> later) {
        for (List<ColumnSlice> cell : row) {
            double used = 2 * PAD;
            int fits = 0;
            while (fits < cell.size() && used + cell.get(fits).height() <= room + 1e-6) {
                used += cell.get(fits++).height();
            }
            now.add(cell.subList(0, fits));
            later.add(cell.subList(fits, cell.size()));
        }
    }

    private List<Structure.Part> cells(Structure.Part table) {
        Structure.Part row = table.add(Structure.Tag.ROW);
        return columns.stream().map(column -> row.add(column.tag())).toList();
    }

    private void head(Flow flow, Optional<Structure.Part> table) {
        double height = headHeight(flow.type());
        if (height == 0) {
            return;
        }
        Optional<Structure.Part> row = table.map(whole -> whole.add(Structure.Tag.ROW));
        double x = flow.left();
        for (Column column : columns) {
            Optional<Structure.Part> cell = row.map(heads -> heads.add(Structure.Tag.COLUMN_HEAD));
            List<String> lines = flow.type().wrap(HEAD, column.head(), column.width());
            double top = flow.y() + height - PAD - lines.size() * HEAD.line();
            for (String line : lines) {
                double at = x;
                double lineTop = top;
                ColumnSlice slice = column.right() ? ColumnSlice.lineRight(HEAD, line) : ColumnSlice.line(HEAD, line);
                Flow.Mark mark = pen -> slice.draw(pen, at, lineTop, column.width());
                cell.ifPresentOrElse(part -> flow.mark(part, mark), () -> flow.decorate(mark));
                top += HEAD.line();
            }
            x += column.width() + GUTTER;
        }
        flow.skip(height);
        rule(flow, 0.8);
    }

    private void draw(Flow flow, List<List<ColumnSlice>> row, List<Structure.Part> cells) {
        double x = flow.left();
        for (int i = 0; i < columns.size(); i++) {
            double cellX = x;
            Structure.Part cell = cells.get(i);
            double width = columns.get(i).width();
            double top = flow.y() + PAD;
            for (ColumnSlice slice : row.get(i)) {
                double sliceTop = top;
                flow.mark(cell, pen -> slice.draw(pen, cellX, sliceTop, width));
                top += slice.height();
            }
            x += width + GUTTER;
        }
        flow.skip(height(row));
        rule(flow, 0.4);
    }

    private static void rule(Flow flow, double width) {
        double y = flow.y();
        flow.decorate(
                pen -> pen.line(flow.left(), y, flow.left() + flow.width(), y, Stroke.solid(Palette.RULE, width)));
    }
}
