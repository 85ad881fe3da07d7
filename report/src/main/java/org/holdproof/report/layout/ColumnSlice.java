package org.holdproof.report.layout;

import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Pen;

/** A slice of a cell or a column that is never cut across: a line of text, a gauge, a gap. */
interface ColumnSlice {
    /** In points. */
    double height();

    /** Draws it with its top left corner here. */
    void draw(Pen pen, double x, double top, double width);

    /** A line of text from the left. */
    static ColumnSlice line(Lettering lettering, String text) {
        return new ColumnSlice() {
            @Override
            public double height() {
                return lettering.line();
            }

            @Override
            public void draw(Pen pen, double x, double top, double width) {
                pen.text(lettering, text, x, top);
            }
        };
    }

    /** A line of text up to the right. */
    static ColumnSlice lineRight(Lettering lettering, String text) {
        return new ColumnSlice() {
            @Override
            public double height() {
                return lettering.line();
            }

            @Override
            public void draw(Pen pen, double x, double top, double width) {
                pen.textRight(lettering, text, x + width, top);
            }
        };
    }

    /** Nothing. */
    static ColumnSlice space(double height) {
        return of(height, (pen, x, top, width) -> {});
    }

    /** Any drawing. */
    static ColumnSlice of(double height, Drawing drawing) {
        return new ColumnSlice() {
            @Override
            public double height() {
                return height;
            }

            @Override
            public void draw(Pen pen, double x, double top, double width) {
                drawing.draw(pen, x, top, width);
            }
        };
    }

    /** What to draw in a slice. */
    interface Drawing {
        void draw(Pen pen, double x, double top, double width);
    }
}
