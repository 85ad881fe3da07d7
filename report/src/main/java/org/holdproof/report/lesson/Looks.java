package org.holdproof.report.lesson;

/**
 * Sizes of a page: in the hand, or from the back of a room. In points.
 *
 * @param small for axes and small print beside a drawing
 * @param body for sentences
 * @param heading over a part
 * @param line width of a curve
 */
record Looks(double small, double body, double heading, double line) {
    static final Looks IN_HAND = new Looks(6.6, 7, 8.6, 1.1);
    static final Looks ON_SCREEN = new Looks(9.6, 11, 13, 1.8);
}
