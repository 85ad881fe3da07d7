package org.holdproof.core.quantity;

/** A text that is not a figure with a unit of the kind asked for. The message is for the person at the desk. */
public final class UnreadableQuantityException extends Exception {
    private final String found;
    private final String expected;
    private final String remedy;

    /**
     * @param found what was written
     * @param expected what was expected
     * @param remedy what to do about it, a sentence
     */
    public UnreadableQuantityException(String found, String expected, String remedy) {
        super("found " + found + "; expected " + expected + ". " + remedy);
        this.found = found;
        this.expected = expected;
        this.remedy = remedy;
    }

    public String found() {
        return found;
    }

    public String expected() {
        return expected;
    }

    public String remedy() {
        return remedy;
    }
}
