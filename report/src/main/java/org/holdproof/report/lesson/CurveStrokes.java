package org.holdproof.report.lesson;

/**
 * Sizes of a page: in the hand, or from the back of a room. In points.
 *
 * @param small for axes and small print beside a drawing
 * @param body for sentences
 * @param heading over a part
 * @param line width of a curve
 */
record CurveStrokes(double small, double body, double heading, double line) {
    static final CurveStrokes IN_HAND = new CurveStrokes(6.6, 7, 8.6, 1.1);
    static final CurveStrokes ON_SCREEN = new CurveStrokes(9.6, 11, 13, 1.8);
}
