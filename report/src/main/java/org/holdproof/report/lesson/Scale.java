package org.holdproof.report.lesson;

/** Places values along an edge of a plot, evenly or by their logarithm. */
final class Scale {
    private final double low;
    private final double high;
    private final double from;
    private final double to;
    private final boolean logarithmic;

    private Scale(double low, double high, double from, double to, boolean logarithmic) {
        this.low = logarithmic ? Math.log10(low) : low;
        this.high = logarithmic ? Math.log10(high) : high;
        this.from = from;
        this.to = to;
        this.logarithmic = logarithmic;
    }

    /** {@code low} lies at {@code from}, {@code high} at {@code to}. */
    static Scale even(double low, double high, double from, double to) {
        return new Scale(low, high, from, to, false);
    }

    /** The same by the logarithm; both ends positive. */
    static Scale logarithmic(double low, double high, double from, double to) {
        return new Scale(low, high, from, to, true);
    }

    /** Where a value lies; one beyond an end lies at that end. */
    double at(double value) {
        double shown = logarithmic ? Math.log10(value) : value;
        double share = (Math.max(low, Math.min(high, shown)) - low) / (high - low);
        return from + (to - from) * share;
    }
}
