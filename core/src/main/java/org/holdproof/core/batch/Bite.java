package org.holdproof.core.batch;

/** How the piece ate, in the cook's own judgement. */
public enum Bite {
    TOUGH("tough"),
    TENDER("tender"),
    FALLING_APART("falling apart");

    private final String title;

    Bite(String title) {
        this.title = title;
    }

    /** The word as it is written in a batch record and printed. */
    public String title() {
        return title;
    }
}
