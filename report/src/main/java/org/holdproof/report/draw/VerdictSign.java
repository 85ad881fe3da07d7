package org.holdproof.report.draw;

import java.awt.Color;
import org.holdproof.core.verdict.Verdict;

/**
 * The shape that goes with a verdict's word, told apart without colour: a disc with a tick, an upright open triangle
 * with a bar and a point, a filled square with a cross.
 */
public final class VerdictSign {
    private VerdictSign() {}

    /**
     * Draws a sign.
     *
     * @param size its height and width, in points
     * @param colour of the shape
     * @param paper what lies under it
     */
    public static void draw(
            Pen pen, Verdict verdict, double centreX, double centreY, double size, Color colour, Color paper) {
        double r = size / 2;
        switch (verdict) {
            case MET -> {
                pen.disc(centreX, centreY, r, colour);
                pen.path(
                        new double[] {centreX - 0.48 * r, centreX - 0.12 * r, centreX + 0.52 * r},
                        new double[] {centreY + 0.04 * r, centreY + 0.42 * r, centreY - 0.38 * r},
                        Stroke.solid(paper, 0.26 * r));
            }
            case NOT_PROVEN -> {
                triangle(pen, centreX, centreY, r, colour);
                triangle(pen, centreX, centreY + 0.09 * r, 0.6 * r, paper);
                pen.line(centreX, centreY - 0.28 * r, centreX, centreY + 0.30 * r, Stroke.solid(colour, 0.22 * r));
                pen.disc(centreX, centreY + 0.52 * r, 0.13 * r, colour);
            }
            case NOT_MET -> {
                double half = 0.92 * r;
                pen.fill(new Box(centreX - half, centreY - half, 2 * half, 2 * half), colour);
                double arm = 0.48 * r;
                Stroke cross = Stroke.solid(paper, 0.26 * r);
                pen.line(centreX - arm, centreY - arm, centreX + arm, centreY + arm, cross);
                pen.line(centreX - arm, centreY + arm, centreX + arm, centreY - arm, cross);
            }
        }
    }

    private static void triangle(Pen pen, double centreX, double centreY, double r, Color colour) {
        pen.shape(
                new double[] {centreX, centreX + 1.08 * r, centreX - 1.08 * r},
                new double[] {centreY - 0.98 * r, centreY + 0.88 * r, centreY + 0.88 * r},
                colour);
    }
}
