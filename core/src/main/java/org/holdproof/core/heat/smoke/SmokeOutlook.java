package org.holdproof.core.heat.smoke;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.exception.TooManyEvaluationsException;
import org.apache.commons.math3.exception.TooManyIterationsException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresProblem;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.apache.commons.math3.util.MathArrays;
import org.apache.commons.math3.util.Pair;
import org.holdproof.core.heat.Conduction;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.PieceState;
import org.holdproof.core.heat.PieceTemperatures;
import org.holdproof.core.heat.ThermalProperties;
import org.holdproof.core.heat.Thinned;
import org.holdproof.core.heat.UnfitLogException;
import org.holdproof.core.log.Trace;

/**
 * A smoke under way, looked ahead from its log: thickness and pace fitted to core and air so far, both held near what is
 * known beforehand, then carried on in the air's mean of the last 90 minutes.
 *
 * <p>The interval does not come from the fit, whose own limits proved far too narrow: from now on the surface may be as fast
 * as pace 1 and as slow as pace −1.5, whatever was fitted. On three logs all intervals from the first hour on held but one,
 * missed by 0.1 h. Its point is good for temperatures before the stall only, from a core near them. One cook's pace does
 * not serve to plan another: two pieces in one smoker differed by 0.3.
 */
public final class SmokeOutlook {
    private static final double FASTEST_PACE = 1;
    private static final double SLOWEST_PACE = -1.5;

    /** A point to 65.6 °C was within 33 % on the logs from a core of 45 °C; beyond, and in a stall, it misled. */
    private static final double HIGHEST_POINT_TARGET = 65.6;

    private static final double LOWEST_POINT_CORE = 45;

    private static final double PACE_SPREAD = 0.6;
    private static final double MODEL_SPREAD_CELSIUS = 1;
    private static final double UNKNOWN_THICKNESS_SPREAD = 0.5;
    private static final double USUAL_THICKNESS = 100;
    private static final double THINNEST = 24;
    private static final double THICKEST = 300;
    private static final double WIDEST_PACE = 2.5;
    private static final double FITTED_EVERY_MINUTES = 10;
    private static final double SHORTEST_MINUTES = 60;
    private static final double AIR_MEMORY_MINUTES = 90;
    private static final double MISFIT_FADES_MINUTES = 120;
    private static final double AHEAD_MINUTES = 24 * 60;
    private static final double SPACING_MINUTES = 2;
    private static final double CONVERGED = 1e-4;
    private static final double STEP = 0.01;
    private static final int MOST_READINGS = 600;

    /** Loose enough that every run of a fit is on the same grid, which keeps its derivatives smooth. */
    private static final double ONE_GRID_CELSIUS = 2;

    private final Trace core;
    private final Trace air;
    private final long fromMillis;
    private final long nowMillis;
    private final ThermalProperties food;
    private final Piece piece;
    private final double pace;
    private final boolean stalls;

    private SmokeOutlook(
            Trace core, Trace air, long fromMillis, ThermalProperties food, Piece piece, double pace, boolean stalls) {
        this.core = core;
        this.air = air;
        this.fromMillis = fromMillis;
        this.food = food;
        this.piece = piece;
        this.pace = pace;
        this.stalls = stalls;
        nowMillis = core.millis(core.size() - 1);
    }

    /**
     * What is known beforehand of the piece.
     *
     * @param shapeFactor β, 0 to 2
     * @param thicknessMillimetres as measured; empty: not known
     * @param thicknessSpread how far it may be off, as a part of it: 0.1 for 10 %
     */
    public record Known(double shapeFactor, OptionalDouble thicknessMillimetres, double thicknessSpread) {
        /** Size unknown: fitted within a factor of about two. */
        public static Known ofShape(double shapeFactor) {
            return new Known(shapeFactor, OptionalDouble.empty(), UNKNOWN_THICKNESS_SPREAD);
        }

        /** Measured to a tenth. */
        public static Known of(double shapeFactor, double thicknessMillimetres) {
            return new Known(shapeFactor, OptionalDouble.of(thicknessMillimetres), 0.1);
        }
    }

    /**
     * Fits the smoke so far.
     *
     * @param food the properties reckoned with
     * @param core its log up to now; readings before {@code fromMillis} are left out
     * @param air the smoker's log beside the piece
     * @param fromMillis when the bare piece went in, in milliseconds since 1970-01-01T00:00Z
     * @throws UnfitLogException if the log is shorter than an hour or no smoke explains it
     */
    public static SmokeOutlook of(Known known, ThermalProperties food, Trace core, Trace air, long fromMillis)
            throws UnfitLogException {
        Trace used = core.between(fromMillis, Long.MAX_VALUE);
        if (used.isEmpty() || used.millis(used.size() - 1) - fromMillis < SHORTEST_MINUTES * 60_000) {
            throw new UnfitLogException(
                    "the smoke has been logged for less than an hour, too short to look ahead from");
        }
        if (air.isEmpty()) {
            throw new UnfitLogException("the smoker's air was not logged; put a probe beside the meat");
        }
        long now = used.millis(used.size() - 1);
        Smoke smoke = Smoke.logged(Thinned.to(air, MOST_READINGS), fromMillis, now);
        int count = (int) ((now - fromMillis) / 60_000.0 / FITTED_EVERY_MINUTES) + 1;
        double[] minutes = new double[count];
        Arrays.setAll(minutes, i -> i * FITTED_EVERY_MINUTES);
        double[] target = new double[count + 2];
        for (int i = 0; i < count; i++) {
            target[i] = at(used, fromMillis + Math.round(minutes[i] * 60_000)) / MODEL_SPREAD_CELSIUS;
        }
        double centre = Math.log(known.thicknessMillimetres().orElse(USUAL_THICKNESS));
        target[count] = centre / known.thicknessSpread();
        double start = used.celsius(0);
        LeastSquaresProblem problem = new LeastSquaresBuilder()
                .model(point -> residuals(known, food, start, smoke, minutes, point))
                .target(target)
                .start(new double[] {centre, 0})
                .parameterValidator(SmokeOutlook::within)
                .maxEvaluations(200)
                .maxIterations(100)
                .checkerPair((iteration, previous, current) ->
                        MathArrays.distanceInf(previous.getPoint(), current.getPoint()) < CONVERGED)
                .build();
        try {
            RealVector found =
                    new LevenbergMarquardtOptimizer().optimize(problem).getPoint();
            Piece piece = Piece.of(Math.exp(found.getEntry(0)), known.shapeFactor());
            boolean stalls = Stall.now(used, air).isPresent();
            return new SmokeOutlook(used, air, fromMillis, food, piece, found.getEntry(1), stalls);
        } catch (TooManyEvaluationsException | TooManyIterationsException | SingularMatrixException e) {
            throw new UnfitLogException("the core's log does not follow a smoke closely enough to look ahead from");
        }
    }

    private static RealVector within(RealVector point) {
        double log = Math.min(Math.max(point.getEntry(0), Math.log(THINNEST)), Math.log(THICKEST));
        double pace = Math.min(Math.max(point.getEntry(1), -WIDEST_PACE), WIDEST_PACE);
        return new ArrayRealVector(new double[] {log, pace}, false);
    }

    private static Pair<RealVector, RealMatrix> residuals(
            Known known, ThermalProperties food, double start, Smoke smoke, double[] minutes, RealVector point) {
        double log = point.getEntry(0);
        double pace = point.getEntry(1);
        double[] value = model(known, food, start, smoke, minutes, log, pace);
        double[] thicker = model(known, food, start, smoke, minutes, log + STEP, pace);
        double[] faster = model(known, food, start, smoke, minutes, log, pace + STEP);
        double[][] slopes = new double[value.length][];
        for (int i = 0; i < value.length; i++) {
            slopes[i] = new double[] {(thicker[i] - value[i]) / STEP, (faster[i] - value[i]) / STEP};
        }
        return new Pair<>(new ArrayRealVector(value, false), new Array2DRowRealMatrix(slopes, false));
    }

    private static double[] model(
            Known known, ThermalProperties food, double start, Smoke smoke, double[] minutes, double log, double pace) {
        double[] cores = Conduction.of(Piece.of(Math.exp(log), known.shapeFactor()), food)
                .within(ONE_GRID_CELSIUS)
                .run(start, smoke.at(pace), minutes)
                .coreCelsius();
        double[] value = Arrays.copyOf(cores, cores.length + 2);
        for (int i = 0; i < cores.length; i++) {
            value[i] /= MODEL_SPREAD_CELSIUS;
        }
        value[cores.length] = log / known.thicknessSpread();
        value[cores.length + 1] = pace / PACE_SPREAD;
        return value;
    }

    /** Thickness as fitted and shape as stated. */
    public Piece piece() {
        return piece;
    }

    /** The pace fitted, on the line of {@link SmokerSurface}. */
    public double pace() {
        return pace;
    }

    /** The piece as fitted, at the last reading. */
    public PieceState state() {
        double now = (nowMillis - fromMillis) / 60_000.0;
        Smoke soFar = Smoke.logged(Thinned.to(air, MOST_READINGS), fromMillis, nowMillis);
        return Conduction.of(piece, food)
                .within(ONE_GRID_CELSIUS)
                .run(core.celsius(0), soFar.at(pace), new double[] {now})
                .end();
    }

    /** Whether the core stalls now. */
    public boolean stalls() {
        return stalls;
    }

    /**
     * When the core comes to a temperature, in minutes since it went in. The likely one is left out where a point proved
     * worth nothing: in a stall, beyond 65.6 °C, and from a core still below 45 °C.
     */
    public Arrival coreReaches(double celsius) {
        Arrival all = reckoned(celsius);
        boolean worth =
                !stalls && celsius <= HIGHEST_POINT_TARGET && core.celsius(core.size() - 1) >= LOWEST_POINT_CORE;
        return worth ? all : new Arrival(all.earliest(), OptionalDouble.empty(), all.latest());
    }

    /** The same with its point, whatever that is worth. */
    Arrival reckoned(double celsius) {
        List<OptionalDouble> found =
                List.of(reaches(celsius, pace), reaches(celsius, FASTEST_PACE), reaches(celsius, SLOWEST_PACE));
        OptionalDouble earliest =
                found.stream().flatMapToDouble(OptionalDouble::stream).min();
        OptionalDouble latest = found.stream().anyMatch(OptionalDouble::isEmpty)
                ? OptionalDouble.empty()
                : found.stream().flatMapToDouble(OptionalDouble::stream).max();
        return new Arrival(earliest, found.get(0), latest);
    }

    /** From the fitted state on at one pace; what the model misses now is carried on, fading. */
    private OptionalDouble reaches(double celsius, double ahead) {
        double now = (nowMillis - fromMillis) / 60_000.0;
        Conduction conduction = Conduction.of(piece, food).within(ONE_GRID_CELSIUS);
        PieceState before = state();
        double misfit = core.celsius(core.size() - 1) - before.coreCelsius();
        Trace late = air.between(nowMillis - Math.round(AIR_MEMORY_MINUTES * 60_000), nowMillis);
        double held = late.isEmpty() ? air.celsius(air.size() - 1) : mean(late);
        double[] minutes = new double[(int) (AHEAD_MINUTES / SPACING_MINUTES) + 1];
        Arrays.setAll(minutes, i -> i * SPACING_MINUTES);
        PieceTemperatures after =
                conduction.run(before, Smoke.held(held, AHEAD_MINUTES).at(ahead), minutes);
        double last = Double.NaN;
        for (int i = 0; i < minutes.length; i++) {
            double expected = after.coreCelsius(i) + misfit * Math.exp(-minutes[i] / MISFIT_FADES_MINUTES);
            if (expected >= celsius) {
                double share = i == 0 ? 0 : (celsius - last) / (expected - last);
                return OptionalDouble.of(now + (i == 0 ? 0 : minutes[i - 1] + share * SPACING_MINUTES));
            }
            last = expected;
        }
        return OptionalDouble.empty();
    }

    private static double mean(Trace trace) {
        double sum = 0;
        for (int i = 0; i < trace.size(); i++) {
            sum += trace.celsius(i);
        }
        return sum / trace.size();
    }

    private static double at(Trace trace, long millis) {
        if (millis <= trace.millis(0)) {
            return trace.celsius(0);
        }
        int i = 1;
        while (i < trace.size() - 1 && trace.millis(i) < millis) {
            i++;
        }
        double share = (millis - trace.millis(i - 1)) / (double) (trace.millis(i) - trace.millis(i - 1));
        return trace.celsius(i - 1) + Math.min(1, share) * (trace.celsius(i) - trace.celsius(i - 1));
    }
}
