package org.holdproof.core.plan;

/**
 * A cook's core from its slow to its fast end, and when each is safe, in minutes.
 *
 * @param slowest everything at its slow end at once
 * @param fastest the smoke at its fast pace, all else as planned; without smoke, as planned
 */
record TimedCores(
        CoreCurve slowest, double slowestSafe, CoreCurve planned, double safe, CoreCurve fastest, double fastestSafe) {

    /** Without a smoke step. */
    static TimedCores of(CoreCurve slowest, double slowestSafe, CoreCurve planned, double safe) {
        return new TimedCores(slowest, slowestSafe, planned, safe, planned, safe);
    }
}
