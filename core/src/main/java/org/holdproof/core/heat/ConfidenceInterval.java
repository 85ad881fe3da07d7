package org.holdproof.core.heat;

/**
 * A fitted figure with the limits between which, at 95 % confidence, the true one lies, if the model is right and the
 * readings' errors are random.
 *
 * @param low may be 0
 * @param high may be infinite
 */
public record ConfidenceInterval(double low, double estimate, double high) {

    /** @throws IllegalArgumentException if the three are not in order */
    public ConfidenceInterval {
        if (!(low <= estimate) || !(estimate <= high)) {
            throw new IllegalArgumentException("not in order: " + low + ", " + estimate + ", " + high);
        }
    }

    /** Whether a value lies within the limits. */
    public boolean covers(double value) {
        return low <= value && value <= high;
    }
}
