package org.holdproof.report.draw;

import java.awt.Color;

/**
 * How a text is set.
 *
 * @param size of the type, in points
 */
public record Lettering(Face face, double size, Color colour) {
    /** Part of the size by which Liberation Sans rises above its baseline, accents included (its hhea table). */
    private static final double ASCENT = 0.905;

    private static final double LINE = 1.24;

    public static Lettering plain(double size) {
        return new Lettering(Face.REGULAR, size, Palette.INK);
    }

    public static Lettering bold(double size) {
        return new Lettering(Face.BOLD, size, Palette.INK);
    }

    public static Lettering soft(double size) {
        return new Lettering(Face.REGULAR, size, Palette.SOFT);
    }

    public static Lettering mono(double size) {
        return new Lettering(Face.MONO, size, Palette.INK);
    }

    public Lettering in(Color other) {
        return new Lettering(face, size, other);
    }

    /** Height of one line, in points. */
    public double line() {
        return size * LINE;
    }

    /** From the top of a line to its baseline, in points. */
    public double baseline() {
        return size * (ASCENT + (LINE - 1.117) / 2);
    }
}
