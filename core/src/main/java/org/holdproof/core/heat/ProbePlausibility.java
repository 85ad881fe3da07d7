package org.holdproof.core.heat;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.holdproof.core.heat.MediumSchedule.Segment;
import org.holdproof.core.heat.PlausibilityFinding.Outcome;
import org.holdproof.core.log.GapLimit;
import org.holdproof.core.log.Trace;

/**
 * Could these readings have come from the core of a piece this thick? Three tests, each of which can only say no:
 *
 * <ul>
 *   <li>Bound: no core rises faster than that of a piece a tenth thinner than declared, of the fastest shape the word
 *       covers, made of water (α 1.6e-7 m²/s), its surface at the medium's temperature from the first moment.
 *   <li>Lag: in a steady bath the gap closes as {@code j e^(−st)}, {@code j > 1} at a core and below 1 near the surface.
 *   <li>Fall: while the medium stays as hot as it has been, no core gets colder.
 * </ul>
 *
 * <p>None of 2800 made-up cores was called impossible (slab to sphere, 20 to 75 mm, thickness wrong by up to a tenth,
 * probe up to 0.15 of the half thickness off centre, bias up to 1 °C, noise 0.1 or 0.5 °C, clock wrong by up to one
 * interval, read every 1 or 5 min). In slabs of 30 mm and more, read every minute, 98 to 100 of 100 probes 0.7 of the way
 * to the surface or further out were caught, half way out 30 to 96. A thin piece, a probe nearer the core or five-minute
 * readings may hide one: "possible" never means that it was in the core.
 */
public final class ProbePlausibility {
    private static final double HIGHEST_DIFFUSIVITY = 1.6e-7;
    private static final double THINNER = 0.9;
    private static final double ANY_CONDUCTIVITY = 0.5;

    private static final double BELOW_MEDIUM_CELSIUS = 3;
    private static final double LEAST_EXCESS_CELSIUS = 0.5;
    private static final double LEAST_FALL_CELSIUS = 1;
    private static final double NOISE_MULTIPLES = 3.5;
    /** The excess that counts is the third largest, so that two stray readings condemn nothing. */
    private static final int STRAY_READINGS = 2;

    private static final double LEAST_GAP_CELSIUS = 10;
    private static final double LAG_FROM_GAP = 0.5;
    private static final double LAG_TO_GAP = 0.03;
    private static final double LAG_TO_NOISE = 4;
    private static final int LAG_READINGS = 6;
    /** The factor must lie below 1 by this many of its standard deviations. */
    private static final double LAG_DEVIATIONS = 2;

    private static final int LAST_READINGS = 5;
    /** How far the core's probe may read below the bath's when both are at one temperature, in °C. */
    private static final double OWN_ERROR_CELSIUS = 1;

    private static final double STEADY_CELSIUS = 0.5;
    private static final double SETTLING_MINUTES = 15;
    private static final double SAG_CELSIUS = 4;
    private static final double OVERSHOOT_MINUTES = 20;
    private static final double OVERSHOOT_CELSIUS = 1.5;

    private static final double IN_MEDIUM_CELSIUS = 1;
    private static final double IN_MEDIUM_MINUTES = 5;

    private static final int MOST_READINGS = 2000;

    private final Trace core;
    private final MediumSchedule medium;
    private final Piece piece;
    private final double[] minutes;
    private final double intervalMinutes;
    private final double hottestMedium;
    private final double noise;
    private final double threshold;

    private ProbePlausibility(Trace core, MediumSchedule medium, Piece piece) {
        this.core = core;
        this.medium = medium;
        this.piece = piece;
        minutes = new double[core.size()];
        for (int i = 0; i < minutes.length; i++) {
            minutes[i] = (core.millis(i) - core.firstMillis()) / 60_000.0;
        }
        intervalMinutes = GapLimit.medianMinutes(core);
        hottestMedium = Arrays.stream(minutes).map(medium::celsius).max().orElseThrow();
        noise = noiseOf(core);
        threshold = Math.max(LEAST_EXCESS_CELSIUS, NOISE_MULTIPLES * noise);
    }

    /**
     * Judges a core's readings from the moment the piece, at one temperature throughout, went into the medium. A piece
     * smoked first is given from its cold start, with the smoker's air and then the bath as the medium.
     *
     * @param core the readings said to be of the core, from that moment on
     * @param medium the medium's readings over the same time; without them nothing can be said
     * @param piece thickness and shape as declared
     */
    public static PlausibilityFinding judge(Trace core, Optional<Trace> medium, Piece piece) {
        if (core.size() < 2 || medium.isEmpty() || medium.get().isEmpty()) {
            return PlausibilityFinding.undecided(
                    core.size() < 2 ? "the core has fewer than two readings" : "the medium was not logged");
        }
        Trace used = Thinned.to(core, MOST_READINGS);
        Trace around = Thinned.to(medium.get(), MOST_READINGS);
        return new ProbePlausibility(
                        used, MediumSchedule.logged(around, used.firstMillis(), Double.POSITIVE_INFINITY), piece)
                .judge();
    }

    /**
     * As {@link #judge(Trace, Optional, Piece)}, for a bath that was not logged but whose set point was declared, held
     * from the first reading to the last.
     *
     * @param setPointCelsius in °C
     */
    public static PlausibilityFinding judge(Trace core, double setPointCelsius, Piece piece) {
        if (core.size() < 2) {
            return PlausibilityFinding.undecided("the core has fewer than two readings");
        }
        return new ProbePlausibility(
                        Thinned.to(core, MOST_READINGS),
                        MediumSchedule.held(setPointCelsius, Double.POSITIVE_INFINITY),
                        piece)
                .judge();
    }

    private PlausibilityFinding judge() {
        double[] fastest = fastestCore();
        Excess rise = riseOver(fastest);
        Optional<Lag> lag = lag();
        Excess fall = fall();
        Trace bound = new Trace("fastest possible core", instants(), fastest);
        Outcome outcome;
        String why;
        OptionalLong at = OptionalLong.empty();
        boolean tooFast = rise.celsius > threshold;
        boolean tooEarly = lag.isPresent() && lag.get().highest() < 1;
        if (tooFast || tooEarly) {
            boolean withMedium = keepsWithMedium();
            outcome = withMedium ? Outcome.IN_THE_MEDIUM : Outcome.NEAR_THE_SURFACE;
            at = tooFast ? OptionalLong.of(core.millis(rise.reading)) : OptionalLong.empty();
            why = tooFast
                    ? words(rise, fastest)
                    : String.format(
                            Locale.ROOT,
                            "the readings close on the bath without a core's lag: j is %.2f and a core's is above 1",
                            lag.get().factor());
        } else if (fall.celsius > Math.max(LEAST_FALL_CELSIUS, NOISE_MULTIPLES * 2 * noise)) {
            outcome = Outcome.PULLED_OUT;
            at = OptionalLong.of(core.millis(fall.reading));
            why = String.format(
                    Locale.ROOT, "the readings fall %.1f °C further than the medium lets a core fall", fall.celsius);
        } else if ((rise.counted || lag.isPresent()) && !beganHot()) {
            outcome = Outcome.POSSIBLE;
            why = "nothing in the readings is impossible for a core of this thickness";
        } else {
            outcome = Outcome.UNDECIDED;
            why = whyUndecided();
        }
        return new PlausibilityFinding(
                outcome,
                why,
                rise.counted ? OptionalDouble.of(rise.celsius) : OptionalDouble.empty(),
                threshold,
                lag.isPresent() ? OptionalDouble.of(lag.get().factor()) : OptionalDouble.empty(),
                fall.celsius,
                noise,
                at,
                Optional.of(bound));
    }

    /** Whether the readings begin so near the hottest medium that a harmless rise proves little. */
    private boolean beganHot() {
        return hottestMedium - core.celsius(0) < LEAST_GAP_CELSIUS;
    }

    private String whyUndecided() {
        if (beganHot()) {
            return String.format(
                    Locale.ROOT,
                    "the readings begin at %.1f °C and the medium never passes %.1f °C: how they rose was not logged",
                    core.celsius(0),
                    hottestMedium);
        }
        return String.format(
                Locale.ROOT,
                "a core of %.0f mm could have followed the medium between the readings, %.1f min apart",
                piece.thicknessMillimetres(),
                intervalMinutes);
    }

    private String words(Excess rise, double[] fastest) {
        return String.format(
                Locale.ROOT,
                "after %.0f min the readings show %.1f °C; no core of a piece %.0f mm thick can be above %.1f °C by then",
                minutes[rise.reading],
                core.celsius(rise.reading),
                piece.thicknessMillimetres(),
                fastest[rise.reading]);
    }

    /** The third-largest excess over what is possible, and the reading that shows the largest. */
    private record Excess(boolean counted, double celsius, int reading) {
        static Excess thirdLargest(double[] excesses, int count, int reading) {
            if (count <= STRAY_READINGS) {
                return new Excess(false, 0, 0);
            }
            double[] sorted = Arrays.copyOf(excesses, count);
            Arrays.sort(sorted);
            return new Excess(true, sorted[count - 1 - STRAY_READINGS], reading);
        }
    }

    private Excess riseOver(double[] fastest) {
        double[] excesses = new double[minutes.length];
        int count = 0;
        int worst = 0;
        double largest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < minutes.length; i++) {
            if (medium.celsius(minutes[i]) - fastest[i] >= BELOW_MEDIUM_CELSIUS) {
                double excess = core.celsius(i) - fastest[i];
                excesses[count++] = excess;
                if (excess > largest) {
                    largest = excess;
                    worst = i;
                }
            }
        }
        return Excess.thirdLargest(excesses, count, worst);
    }

    /** The fastest core at each reading, one interval of grace ahead, from the first reading's temperature. */
    private double[] fastestCore() {
        double[] ahead = new double[minutes.length];
        for (int i = 0; i < ahead.length; i++) {
            ahead[i] = minutes[i] + intervalMinutes;
        }
        return fastestBody().runAt(0, core.celsius(0), medium, ahead);
    }

    private Conduction fastestBody() {
        return Conduction.of(
                Piece.of(THINNER * piece.thicknessMillimetres(), piece.fastestShapeFactor()),
                ThermalProperties.constant(ANY_CONDUCTIVITY, HIGHEST_DIFFUSIVITY));
    }

    /** The factor j of the gap's closing, where the medium was steady enough and the readings are enough to tell. */
    private Optional<Lag> lag() {
        double last = minutes[minutes.length - 1];
        double plateau = plateau(last);
        double goal = Math.max(plateau - OWN_ERROR_CELSIUS, end());
        double gap = goal - core.celsius(0);
        if (gap < LEAST_GAP_CELSIUS) {
            return Optional.empty();
        }
        double smallest = Math.max(LAG_TO_GAP * gap, LAG_TO_NOISE * noise);
        SimpleRegression line = new SimpleRegression();
        for (int i = 0; i < minutes.length; i++) {
            double left = goal - core.celsius(i);
            if (left < smallest) {
                break;
            }
            if (!steadyUpTo(minutes[i], plateau)) {
                return Optional.empty();
            }
            if (left <= LAG_FROM_GAP * gap) {
                line.addData(minutes[i], Math.log(left / gap));
            }
        }
        if (line.getN() < LAG_READINGS) {
            return Optional.empty();
        }
        double sure = line.getIntercept() + LAG_DEVIATIONS * line.getInterceptStdErr();
        return Optional.of(new Lag(Math.exp(line.getIntercept()), Math.exp(sure)));
    }

    /** The factor j of the gap's closing, and how high it may be for all the readings' scatter. */
    private record Lag(double factor, double highest) {}

    /**
     * Where the readings have come to: the middle of the last few. The gap is measured to it and not to the medium,
     * because two probes never agree; while it is still rising that only makes the readings look slower.
     */
    private double end() {
        int first = Math.max(0, minutes.length - LAST_READINGS);
        double[] last = new double[minutes.length - first];
        for (int i = first; i < minutes.length; i++) {
            last[i - first] = core.celsius(i);
        }
        Arrays.sort(last);
        return last[last.length / 2];
    }

    /** The medium's median over the readings. */
    private double plateau(double last) {
        double[] at = new double[minutes.length];
        for (int i = 0; i < at.length; i++) {
            at[i] = medium.celsius(Math.min(minutes[i], last));
        }
        Arrays.sort(at);
        return at[at.length / 2];
    }

    /** Loading may let a bath sag and overshoot at first, within what was found to raise no false alarm. */
    private boolean steadyUpTo(double minute, double plateau) {
        double off = medium.celsius(minute) - plateau;
        double below = minute <= SETTLING_MINUTES ? SAG_CELSIUS : STEADY_CELSIUS;
        double above = minute <= OVERSHOOT_MINUTES ? OVERSHOOT_CELSIUS : STEADY_CELSIUS;
        return off >= -below && off <= above;
    }

    /**
     * How far the core falls below what the medium allows. Let d be the deepest the medium has fallen below its hottest
     * so far. A medium that never fell would never let the core fall; what falls, falls by the response to d at most, and
     * no body answers faster than the fastest.
     */
    private Excess fall() {
        Segment[] fallen = new Segment[minutes.length];
        double hottest = Math.max(core.celsius(0), medium.celsius(0));
        double deepest = hottest - medium.celsius(0);
        for (int i = 1; i < minutes.length; i++) {
            double now = medium.celsius(minutes[i]);
            hottest = Math.max(hottest, now);
            double before = deepest;
            deepest = Math.max(deepest, hottest - now);
            fallen[i - 1] = new Segment(minutes[i] - minutes[i - 1], before, deepest, Double.POSITIVE_INFINITY);
        }
        fallen[minutes.length - 1] = Segment.hold(Double.POSITIVE_INFINITY, deepest, Double.POSITIVE_INFINITY);
        double[] ahead = new double[minutes.length];
        for (int i = 0; i < ahead.length; i++) {
            ahead[i] = minutes[i] + intervalMinutes;
        }
        double[] allowed = fastestBody().runAt(0, 0, MediumSchedule.of(fallen), ahead);
        double[] excesses = new double[minutes.length];
        double highest = Double.NEGATIVE_INFINITY;
        double largest = Double.NEGATIVE_INFINITY;
        int worst = 0;
        for (int i = 0; i < minutes.length; i++) {
            highest = Math.max(highest, steadied(i));
            excesses[i] = highest - core.celsius(i) - allowed[i];
            if (excesses[i] > largest) {
                largest = excesses[i];
                worst = i;
            }
        }
        return Excess.thirdLargest(excesses, minutes.length, worst);
    }

    /** The middle one of a reading and its two neighbours, so that one high reading sets no mark. */
    private double steadied(int i) {
        if (i == 0 || i == minutes.length - 1) {
            return Double.NEGATIVE_INFINITY;
        }
        double before = core.celsius(i - 1);
        double here = core.celsius(i);
        double after = core.celsius(i + 1);
        return Math.max(Math.min(before, here), Math.min(Math.max(before, here), after));
    }

    /** Whether the readings are with the medium within minutes, as no surface of food is. */
    private boolean keepsWithMedium() {
        double until = Math.max(IN_MEDIUM_MINUTES, 3 * intervalMinutes);
        for (int i = 0; i < minutes.length && minutes[i] <= until; i++) {
            if (Math.abs(medium.celsius(minutes[i]) - core.celsius(i)) <= Math.max(IN_MEDIUM_CELSIUS, threshold)) {
                return true;
            }
        }
        return false;
    }

    /** Standard deviation of the readings' own scatter, from the median size of their second differences, in °C. */
    private static double noiseOf(Trace core) {
        int count = core.size() - 2;
        if (count < 1) {
            return 0;
        }
        double[] bends = new double[count];
        for (int i = 0; i < count; i++) {
            bends[i] = Math.abs(core.celsius(i) - 2 * core.celsius(i + 1) + core.celsius(i + 2));
        }
        Arrays.sort(bends);
        // for Gaussian scatter σ the second difference has σ√6 and a median size of 0.6745 of that
        return bends[count / 2] / (0.6745 * Math.sqrt(6));
    }

    private long[] instants() {
        long[] instants = new long[minutes.length];
        for (int i = 0; i < instants.length; i++) {
            instants[i] = core.millis(i);
        }
        return instants;
    }
}
