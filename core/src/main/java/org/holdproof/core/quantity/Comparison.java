package org.holdproof.core.quantity;

/** How a figure is compared with its limit. Figures within the slack count as equal. */
public enum Comparison {
    AT_LEAST("at least"),
    ABOVE("above"),
    AT_MOST("at most"),
    BELOW("below");

    private final String words;

    Comparison(String words) {
        this.words = words;
    }

    /** As it reads before the limit: {@code at most 120 min}. */
    public String words() {
        return words;
    }

    /** Whether a figure meets the limit; figures closer than {@code slack} are equal. */
    public boolean holds(double figure, double limit, double slack) {
        return switch (this) {
            case AT_LEAST -> figure >= limit - slack;
            case ABOVE -> figure > limit + slack;
            case AT_MOST -> figure <= limit + slack;
            case BELOW -> figure < limit - slack;
        };
    }

    /** Whether more is better. */
    public boolean isFloor() {
        return this == AT_LEAST || this == ABOVE;
    }
}
