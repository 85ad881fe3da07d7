package org.holdproof.core.plan;

/** A cook that cannot be reckoned as described; the message says what was read, what was expected and what to do. */
public final class UnplannableException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    private final String message;

    public UnplannableException(String message) {
        super(message);
        this.message = message;
    }

    @Override
    public String getMessage() {
        return message;
    }
}
