package org.holdproof.report.draw;

/**
 * A rectangle on the sheet, in points, measured from the sheet's top left corner downwards.
 *
 * @param x its left edge
 * @param y its top edge
 */
public record Box(double x, double y, double width, double height) {
    public double right() {
        return x + width;
    }

    public double bottom() {
        return y + height;
    }

    public double centreX() {
        return x + width / 2;
    }

    public double centreY() {
        return y + height / 2;
    }

    /** The same rectangle made smaller by this much on every side. */
    public Box inset(double by) {
        return new Box(x + by, y + by, width - 2 * by, height - 2 * by);
    }

    /** Whether the two share more than an edge. */
    public boolean overlaps(Box other) {
        return x < other.right() && other.x < right() && y < other.bottom() && other.y < bottom();
    }

    /** Whether the other one lies wholly inside this one. */
    public boolean holds(Box other) {
        return other.x >= x && other.right() <= right() && other.y >= y && other.bottom() <= bottom();
    }
}
