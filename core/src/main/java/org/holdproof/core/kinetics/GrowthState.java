package org.holdproof.core.kinetics;

/**
 * How many there are and how ready they are to grow (Baranyi and Roberts 1994, International Journal of Food
 * Microbiology 23:277-294).
 *
 * <p>Their equations {@code d ln N/dt = mu Q/(1+Q) (1 - N/Nmax)} and {@code d ln Q/dt = mu} depend on the temperature's
 * history only through the integral {@code M} of {@code mu}, and are solved exactly: {@code A = ln((1 + Q0 e^M)/(1 +
 * Q0))}, {@code N = N0 e^A / (1 + N0/Nmax (e^A - 1))}, {@code Q = Q0 e^M}.
 *
 * @param log10PerGram the count, in log10 CFU/g
 * @param ready {@code Q/(1+Q)}, above 0; 1 where there is no lag
 */
public record GrowthState(double log10PerGram, double ready) {
    private static final double LN_10 = Math.log(10);

    /** @throws IllegalArgumentException if the count is not finite, or the readiness not above 0 and at most 1 */
    public GrowthState {
        if (!Double.isFinite(log10PerGram) || !(ready > 0 && ready <= 1)) {
            throw new IllegalArgumentException("a count of " + log10PerGram + " log10, readiness " + ready);
        }
    }

    /** Growing at once. */
    public static GrowthState withoutLag(double log10PerGram) {
        return new GrowthState(log10PerGram, 1);
    }

    /**
     * Growing after a lag.
     *
     * @param q0 the physiological state, positive; the smaller the longer the lag
     */
    public static GrowthState withLag(double log10PerGram, double q0) {
        return new GrowthState(log10PerGram, q0 / (1 + q0));
    }

    /**
     * The state after more growth.
     *
     * @param potential integral of the growth rate over time, in natural-log units, not negative
     * @param ceilingLog10 the count growth comes to a stop at, in log10 CFU/g
     */
    public GrowthState after(double potential, double ceilingLog10) {
        double gone = Math.expm1(-potential);
        double adjusted = potential + Math.log1p((1 - ready) * gone);
        double gained = Math.max(
                0,
                -logOfSum(
                        -adjusted,
                        Math.min(0, LN_10 * (log10PerGram - ceilingLog10)) + Math.log(-Math.expm1(-adjusted))));
        double readyNow = ready / (ready + (1 - ready) * Math.exp(-potential));
        return new GrowthState(log10PerGram + gained / LN_10, Math.min(1, readyNow));
    }

    /** {@code ln(e^a + e^b)}, for figures too far apart to add as they are. */
    private static double logOfSum(double a, double b) {
        return Math.max(a, b) + Math.log1p(Math.exp(-Math.abs(a - b)));
    }

    /** The same cells after a death that spares none by its readiness. */
    GrowthState reducedBy(double log10) {
        return new GrowthState(log10PerGram - log10, ready);
    }
}
