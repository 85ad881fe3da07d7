package org.holdproof.core.heat;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.holdproof.core.heat.MediumSchedule.Segment;
import org.holdproof.core.heat.PlausibilityFinding.Outcome;
import org.holdproof.core.log.GapLimit;
import org.holdproof.core.log.Trace;

/**
 * Could these readings have come from the core of a piece this thick? Tests each of which can only say no:
 *
 * <ul>
 *   <li>Food: what is wet does not pass the boiling point of water.
 *   <li>Bound: no core rises faster than the {@link FastestCore} of the piece.
 *   <li>Lag: in steady water the gap closes as {@code j e^(−st)}, {@code j > 1} at a core and below 1 near the surface.
 *   <li>Fall: while the medium stays as hot as it has been, no core gets colder.
 *   <li>Standing still: no core keeps one figure while its medium lies far below it.
 * </ul>
 *
 * <p>None of 2800 made-up cores was called impossible by bound, lag and fall (slab to sphere, 20 to 75 mm, thickness
 * wrong by up to a tenth, probe up to 0.15 of the half thickness off centre, bias up to 1 °C, noise 0.1 or 0.5 °C, clock
 * wrong by up to one interval, read every 1 or 5 min). In slabs of 30 mm and more, read every minute, 98 to 100 of 100
 * probes 0.7 of the way to the surface or further out were caught, half way out 30 to 96. A thin piece, a probe nearer
 * the core or five-minute readings may hide one: "possible" never means that it was in the core.
 */
public final class ProbePlausibility {
    /** No wet food is hotter while water can leave it; 99.97 °C at sea level (IAPWS-IF97), less higher up. */
    private static final double BOILING_CELSIUS = 100;

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

    /** A core is not believed that keeps within this, in °C, */
    private static final double STILL_CELSIUS = 0.2;

    /** while its medium lies this far below it, in °C, */
    private static final double STILL_BELOW_CELSIUS = 30;

    /** for this long in minutes, or a thick piece's time: the Fourier number at which even a core in still air has fallen */
    private static final double STILL_MINUTES = 30;

    /** by degrees, at the lowest diffusivity of the published tables. */
    private static final double STILL_FOURIER = 0.25;

    private static final double SLOWEST_DIFFUSIVITY = 0.9e-7;

    private static final int MOST_READINGS = 2000;
    private static final double ROUNDING = 1e-9;

    private final Trace core;
    private final Surroundings surroundings;
    private final Piece piece;
    private final FastestCore fastestCore;
    private final double[] minutes;
    private final double intervalMinutes;
    private final double noise;
    private final double threshold;

    private ProbePlausibility(Trace core, Surroundings surroundings, Piece piece) {
        this.core = core;
        this.surroundings = surroundings;
        this.piece = piece;
        fastestCore = new FastestCore(piece);
        minutes = new double[core.size()];
        for (int i = 0; i < minutes.length; i++) {
            minutes[i] = (core.millis(i) - core.firstMillis()) / 60_000.0;
        }
        intervalMinutes = GapLimit.medianMinutes(core);
        noise = ReadingNoise.of(core);
        threshold = Math.max(LEAST_EXCESS_CELSIUS, NOISE_MULTIPLES * noise);
    }

    /**
     * As {@link #judge(Trace, Surroundings, Piece)}, in water whose log may be missing.
     *
     * @param medium the medium's readings over the same time; without them nothing can be said
     */
    public static PlausibilityFinding judge(Trace core, Optional<Trace> medium, Piece piece) {
        return medium.isEmpty() || medium.get().isEmpty()
                ? PlausibilityFinding.undecided("the medium was not logged")
                : judge(core, Surroundings.water(medium.get()), piece);
    }

    /**
     * Judges a core's readings from the moment the piece, at one temperature throughout, went into the medium. A piece
     * smoked first is given from its cold start, with the smoker's air and then the bath as its surroundings.
     *
     * @param core the readings said to be of the core, from that moment on
     * @param piece thickness and shape as declared
     */
    public static PlausibilityFinding judge(Trace core, Surroundings surroundings, Piece piece) {
        if (core.size() < 2) {
            return PlausibilityFinding.undecided("the core has fewer than two readings");
        }
        return new ProbePlausibility(Thinned.to(core, MOST_READINGS), surroundings, piece).judge();
    }

    /** A medium's temperature at each reading, straight between its own. */
    private double[] along(Trace medium) {
        MediumSchedule schedule = schedule(medium);
        double[] celsius = new double[minutes.length];
        int segment = 0;
        for (int i = 0; i < celsius.length; i++) {
            while (segment + 1 < schedule.segments() && schedule.endMinute(segment) <= minutes[i]) {
                segment++;
            }
            celsius[i] = schedule.celsius(segment, minutes[i]);
        }
        return celsius;
    }

    private MediumSchedule schedule(Trace medium) {
        return MediumSchedule.logged(Thinned.to(medium, MOST_READINGS), core.firstMillis(), Double.POSITIVE_INFINITY);
    }

    private PlausibilityFinding judge() {
        double[] fastest =
                fastestCore.follow(core.celsius(0), schedule(surroundings.hottestSoFar()), oneIntervalAhead());
        double[] hottest = along(surroundings.hottestSoFar());
        Optional<double[]> logged = surroundings.logged().map(this::along);
        Excess rise = riseOver(fastest, hottest);
        Optional<Lag> lag = surroundings.inWater() ? logged.flatMap(this::lag) : Optional.empty();
        Excess fall = logged.map(this::fall).orElse(Excess.NONE);
        Excess boiling = overBoiling();
        OptionalInt still = logged.map(this::standsStill).orElse(OptionalInt.empty());
        Outcome outcome;
        String why;
        OptionalLong at = OptionalLong.empty();
        boolean tooFast = rise.celsius > threshold;
        boolean tooEarly = lag.isPresent() && lag.get().highest() < 1;
        if (boiling.celsius > threshold) {
            outcome = Outcome.TOO_HOT;
            at = OptionalLong.of(core.millis(boiling.reading));
            why = String.format(
                    Locale.ROOT,
                    "the readings reach %.1f °C; wet food does not pass the boiling point of water",
                    core.celsius(boiling.reading));
        } else if (tooFast || tooEarly) {
            boolean withMedium = keepsWithMedium(logged.orElse(hottest));
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
        } else if (still.isPresent()) {
            outcome = Outcome.STANDS_STILL;
            at = OptionalLong.of(core.millis(still.getAsInt()));
            why = String.format(
                    Locale.ROOT,
                    "the readings keep to %.1f °C while the medium lies %.0f °C and more below them",
                    core.celsius(still.getAsInt()),
                    STILL_BELOW_CELSIUS);
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
                Optional.of(new Trace("fastest possible core", instants(), fastest)));
    }

    /** Whether the readings begin so near the hottest medium that a harmless rise proves little. */
    private boolean beganHot() {
        return surroundings.hottest() - core.celsius(0) < LEAST_GAP_CELSIUS;
    }

    private String whyUndecided() {
        if (beganHot()) {
            return String.format(
                    Locale.ROOT,
                    "the readings begin at %.1f °C and the medium never passes %.1f °C: how they rose was not logged",
                    core.celsius(0),
                    surroundings.hottest());
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
        static final Excess NONE = new Excess(false, 0, 0);

        static Excess thirdLargest(double[] excesses, int count, int reading) {
            if (count <= STRAY_READINGS) {
                return new Excess(false, 0, 0);
            }
            double[] largest = new double[STRAY_READINGS + 1];
            Arrays.fill(largest, Double.NEGATIVE_INFINITY);
            for (int i = 0; i < count; i++) {
                int place = STRAY_READINGS;
                if (excesses[i] > largest[place]) {
                    for (; place > 0 && excesses[i] > largest[place - 1]; place--) {
                        largest[place] = largest[place - 1];
                    }
                    largest[place] = excesses[i];
                }
            }
            return new Excess(true, largest[STRAY_READINGS], reading);
        }
    }

    private Excess riseOver(double[] fastest, double[] hottest) {
        double[] excesses = new double[minutes.length];
        int count = 0;
        int worst = 0;
        double largest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < minutes.length; i++) {
            if (hottest[i] - fastest[i] >= BELOW_MEDIUM_CELSIUS) {
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

    private Excess overBoiling() {
        double[] excesses = new double[minutes.length];
        int worst = 0;
        for (int i = 0; i < minutes.length; i++) {
            excesses[i] = core.celsius(i) - BOILING_CELSIUS;
            worst = excesses[i] > excesses[worst] ? i : worst;
        }
        return Excess.thirdLargest(excesses, minutes.length, worst);
    }

    /** Each reading's minute with one interval of grace. */
    private double[] oneIntervalAhead() {
        double[] ahead = new double[minutes.length];
        for (int i = 0; i < ahead.length; i++) {
            ahead[i] = minutes[i] + intervalMinutes;
        }
        return ahead;
    }

    /** The first reading of a spell in which the core keeps one figure while its medium lies far below it. */
    private OptionalInt standsStill(double[] medium) {
        double half = piece.halfThicknessMetres() / FastestCore.THINNER;
        double needed = Math.max(STILL_MINUTES, STILL_FOURIER * half * half / SLOWEST_DIFFUSIVITY / 60);
        int first = 0;
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < minutes.length; i++) {
            low = Math.min(low, core.celsius(i));
            high = Math.max(high, core.celsius(i));
            if (core.celsius(i) - medium[i] < STILL_BELOW_CELSIUS) {
                first = i + 1;
                low = Double.POSITIVE_INFINITY;
                high = Double.NEGATIVE_INFINITY;
            } else if (high - low > STILL_CELSIUS + ROUNDING) {
                // the spell begins anew after the last reading that lies too far from this one
                int next = i;
                low = core.celsius(i);
                high = low;
                while (next > first
                        && Math.max(high, core.celsius(next - 1)) - Math.min(low, core.celsius(next - 1))
                                <= STILL_CELSIUS + ROUNDING) {
                    next--;
                    low = Math.min(low, core.celsius(next));
                    high = Math.max(high, core.celsius(next));
                }
                first = next;
            } else if (minutes[i] - minutes[first] >= needed) {
                return OptionalInt.of(first);
            }
        }
        return OptionalInt.empty();
    }

    /** The factor j of the gap's closing, where the medium was steady enough and the readings are enough to tell. */
    private Optional<Lag> lag(double[] medium) {
        double plateau = median(medium);
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
            if (!isSteady(i, medium[i] - plateau)) {
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

    private static double median(double[] celsius) {
        double[] sorted = celsius.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    /** Loading may let a bath sag and overshoot at first, within what was found to raise no false alarm. */
    private boolean isSteady(int reading, double off) {
        double below = minutes[reading] <= SETTLING_MINUTES ? SAG_CELSIUS : STEADY_CELSIUS;
        double above = minutes[reading] <= OVERSHOOT_MINUTES ? OVERSHOOT_CELSIUS : STEADY_CELSIUS;
        return off >= -below && off <= above;
    }

    /**
     * How far the core falls below what the medium allows. Let d be the deepest the medium has fallen below its hottest
     * so far. A medium that never fell would never let the core fall; what falls, falls by the response to d at most, and
     * no body answers faster than the fastest.
     */
    private Excess fall(double[] medium) {
        Segment[] fallen = new Segment[minutes.length];
        double hottest = Math.max(core.celsius(0), medium[0]);
        double deepest = hottest - medium[0];
        for (int i = 1; i < minutes.length; i++) {
            hottest = Math.max(hottest, medium[i]);
            double before = deepest;
            deepest = Math.max(deepest, hottest - medium[i]);
            fallen[i - 1] = new Segment(minutes[i] - minutes[i - 1], before, deepest, Double.POSITIVE_INFINITY);
        }
        fallen[minutes.length - 1] = Segment.hold(Double.POSITIVE_INFINITY, deepest, Double.POSITIVE_INFINITY);
        double[] allowed = fastestCore.follow(0, MediumSchedule.of(fallen), oneIntervalAhead());
        double[] excesses = new double[minutes.length];
        double[] steady = Steadied.of(core, STRAY_READINGS);
        double highest = Double.NEGATIVE_INFINITY;
        double largest = Double.NEGATIVE_INFINITY;
        int worst = 0;
        for (int i = 0; i < minutes.length; i++) {
            highest = Math.max(highest, steady[i]);
            excesses[i] = highest - core.celsius(i) - allowed[i];
            if (excesses[i] > largest) {
                largest = excesses[i];
                worst = i;
            }
        }
        return Excess.thirdLargest(excesses, minutes.length, worst);
    }

    /** Whether the readings are with the medium within minutes, as no surface of food is. */
    private boolean keepsWithMedium(double[] medium) {
        double until = Math.max(IN_MEDIUM_MINUTES, 3 * intervalMinutes);
        for (int i = 0; i < minutes.length && minutes[i] <= until; i++) {
            if (Math.abs(medium[i] - core.celsius(i)) <= Math.max(IN_MEDIUM_CELSIUS, threshold)) {
                return true;
            }
        }
        return false;
    }

    private long[] instants() {
        long[] instants = new long[minutes.length];
        for (int i = 0; i < instants.length; i++) {
            instants[i] = core.millis(i);
        }
        return instants;
    }
}
