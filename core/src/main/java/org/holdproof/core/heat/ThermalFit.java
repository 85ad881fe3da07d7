package org.holdproof.core.heat;

import java.util.Locale;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.exception.TooManyEvaluationsException;
import org.apache.commons.math3.exception.TooManyIterationsException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer.Optimum;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresProblem;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.apache.commons.math3.util.MathArrays;
import org.apache.commons.math3.util.Pair;
import org.holdproof.core.log.Trace;

/**
 * What a logged core tells of the piece and its bath: effective diffusivity and surface coefficient, by least squares
 * (Levenberg–Marquardt).
 *
 * <p>Only α/R² and h/k are in a temperature log, and the two pull against each other along a ridge (correlation about
 * −1): the decay rate is well measured, each of them alone far less. A wrong thickness, shape or place of the probe fits
 * perfectly and moves α by far more than the limits. So a fit plans the next batch of the same cut; it never excuses a
 * shorter cook than the published values ask.
 */
public final class ThermalFit {
    /** Conductivity the fit is made with, in W/(m K); a log gives h/k only, so h scales with it. */
    public static final double ASSUMED_CONDUCTIVITY = 0.48;

    private static final double CONFIDENCE = 0.95;
    private static final double FIRST_DIFFUSIVITY = 1.3e-7;
    private static final double FIRST_RESISTANCE = 0.1;
    private static final int FINENESS_HALVINGS = 2;
    private static final int MOST_READINGS = 600;
    private static final int FEWEST_READINGS = 12;
    private static final double LEAST_GAP_CELSIUS = 10;
    private static final double LEAST_CLOSED = 0.5;
    private static final double CONVERGED = 1e-6;
    private static final double LOG_STEP = 0.01;
    private static final double HIGHEST_CORRELATION = 0.98;
    private static final double RESISTANCE_STEP = 0.002;
    /** Bounds of ln(α/1.3e-7) and of k/(hR), wide of anything a kitchen holds. */
    private static final double WIDEST_LOG = Math.log(10);

    private static final double WIDEST_RESISTANCE = 20;

    private final Piece piece;
    private final ConfidenceInterval diffusivity;
    private final ConfidenceInterval surfaceCoefficient;
    private final ConfidenceInterval decayPerMinute;
    private final double correlation;
    private final double residualCelsius;
    private final int readings;

    private ThermalFit(Piece piece, Optimum optimum, int readings) {
        this.piece = piece;
        this.readings = readings;
        int freedom = readings - 2;
        double sumOfSquares = optimum.getResiduals().dotProduct(optimum.getResiduals());
        residualCelsius = Math.sqrt(sumOfSquares / freedom);
        double fewer = fewerThanTheyLook(optimum.getResiduals());
        RealMatrix covariance = optimum.getCovariances(1e-14).scalarMultiply(sumOfSquares / freedom * fewer);
        double quantile = new TDistribution(freedom).inverseCumulativeProbability((1 + CONFIDENCE) / 2);
        double log = optimum.getPoint().getEntry(0);
        double resistance = optimum.getPoint().getEntry(1);
        double logSpread = quantile * Math.sqrt(covariance.getEntry(0, 0));
        double resistanceSpread = quantile * Math.sqrt(covariance.getEntry(1, 1));
        diffusivity = new ConfidenceInterval(
                diffusivityOf(log - logSpread), diffusivityOf(log), diffusivityOf(log + logSpread));
        surfaceCoefficient = new ConfidenceInterval(
                coefficientOf(piece, resistance + resistanceSpread),
                coefficientOf(piece, resistance),
                coefficientOf(piece, resistance - resistanceSpread));
        correlation = -covariance.getEntry(0, 1) / Math.sqrt(covariance.getEntry(0, 0) * covariance.getEntry(1, 1));
        decayPerMinute = decay(piece, log, resistance, covariance, quantile);
    }

    /**
     * How many of the residuals tell what one would if they were independent: {@code (1 + ρ) / (1 − ρ)} with the correlation
     * ρ of neighbours, where it stands out from chance. A bath that swings or a model that is off leaves residuals in runs.
     */
    private static double fewerThanTheyLook(RealVector residuals) {
        double squares = 0;
        double neighbours = 0;
        for (int i = 0; i < residuals.getDimension(); i++) {
            squares += residuals.getEntry(i) * residuals.getEntry(i);
            neighbours += i == 0 ? 0 : residuals.getEntry(i) * residuals.getEntry(i - 1);
        }
        double correlation = squares == 0 ? 0 : Math.min(HIGHEST_CORRELATION, neighbours / squares);
        boolean standsOut = correlation > 2 / Math.sqrt(residuals.getDimension());
        return standsOut ? (1 + correlation) / (1 - correlation) : 1;
    }

    /**
     * Fits the readings from the piece's immersion on.
     *
     * @param piece thickness and shape as declared; its {@link Piece#shapeFactor} is reckoned with
     * @param startCelsius the piece's temperature throughout when it went in, in °C
     * @param immersedMillis when it went in, in milliseconds since 1970-01-01T00:00Z
     * @param core the core's log; readings before the immersion are left out
     * @param medium the bath's log
     * @throws UnfitLogException if the readings are too few, the bath too near the start, or the core not half way to
     *     the bath by the end
     */
    public static ThermalFit of(Piece piece, double startCelsius, long immersedMillis, Trace core, Trace medium)
            throws UnfitLogException {
        return of(piece, PieceState.uniform(startCelsius), immersedMillis, core, medium);
    }

    /**
     * The same of a piece that did not go in at one temperature.
     *
     * @param start as an earlier step left it
     */
    public static ThermalFit of(Piece piece, PieceState start, long immersedMillis, Trace core, Trace medium)
            throws UnfitLogException {
        return of(piece, start, immersedMillis, 0, core, medium);
    }

    /**
     * The same with the immersion later than recorded, to find which one suits the log: whatever the shift, the readings
     * fitted are those after the recorded one, so that their residuals compare.
     *
     * @param laterMinutes below 0: earlier
     */
    public static ThermalFit of(
            Piece piece, PieceState start, long immersedMillis, double laterMinutes, Trace core, Trace medium)
            throws UnfitLogException {
        if (medium.isEmpty()) {
            throw new UnfitLogException("the bath was not logged; give the log of the bath beside the core's");
        }
        Trace used = Thinned.to(core.between(immersedMillis + 1, Long.MAX_VALUE), MOST_READINGS);
        long trueMillis = immersedMillis + Math.round(laterMinutes * 60_000);
        MediumSchedule schedule =
                MediumSchedule.logged(Thinned.to(medium, MOST_READINGS), trueMillis, Double.POSITIVE_INFINITY);
        double[] minutes = new double[used.size()];
        double[] celsius = new double[used.size()];
        for (int i = 0; i < minutes.length; i++) {
            minutes[i] = Math.max(0, (used.millis(i) - trueMillis) / 60_000.0);
            celsius[i] = used.celsius(i);
        }
        checkWorth(start.coreCelsius(), schedule, minutes, celsius);
        LeastSquaresProblem problem = new LeastSquaresBuilder()
                .model(point -> valueAndSlopes(piece, start, schedule, minutes, point))
                .target(celsius)
                .start(new double[] {0, FIRST_RESISTANCE})
                .parameterValidator(ThermalFit::within)
                .maxEvaluations(200)
                .maxIterations(100)
                .checkerPair((iteration, previous, current) ->
                        MathArrays.distanceInf(previous.getPoint(), current.getPoint()) < CONVERGED)
                .build();
        try {
            return new ThermalFit(piece, new LevenbergMarquardtOptimizer().optimize(problem), minutes.length);
        } catch (TooManyEvaluationsException | TooManyIterationsException | SingularMatrixException e) {
            throw new UnfitLogException("the core's log does not follow conduction closely enough to be fitted");
        }
    }

    private static void checkWorth(double startCelsius, MediumSchedule schedule, double[] minutes, double[] celsius)
            throws UnfitLogException {
        if (minutes.length < FEWEST_READINGS) {
            throw new UnfitLogException("a fit needs at least " + FEWEST_READINGS
                    + " core readings after the piece went in; there are " + minutes.length);
        }
        double bath = schedule.celsius(minutes[minutes.length - 1]);
        double gap = bath - startCelsius;
        double closed = (celsius[celsius.length - 1] - startCelsius) / gap;
        if (!(Math.abs(gap) >= LEAST_GAP_CELSIUS)) {
            throw new UnfitLogException(String.format(
                    Locale.ROOT,
                    "the bath ends at %.1f °C and the piece started at %.1f °C: less than %.0f °C apart, too little to"
                            + " fit",
                    bath,
                    startCelsius,
                    LEAST_GAP_CELSIUS));
        }
        if (!(closed >= LEAST_CLOSED)) {
            throw new UnfitLogException(String.format(
                    Locale.ROOT,
                    "the core's last reading has gone %.0f %% of the way to the bath; a fit needs at least %.0f %%",
                    100 * closed,
                    100 * LEAST_CLOSED));
        }
    }

    private static RealVector within(RealVector point) {
        double log = Math.min(Math.max(point.getEntry(0), -WIDEST_LOG), WIDEST_LOG);
        double resistance = Math.min(Math.max(point.getEntry(1), 0), WIDEST_RESISTANCE);
        return new ArrayRealVector(new double[] {log, resistance}, false);
    }

    /** The model's cores and their derivatives, by differences small against the limits and large against the error. */
    private static Pair<RealVector, RealMatrix> valueAndSlopes(
            Piece piece, PieceState start, MediumSchedule schedule, double[] minutes, RealVector point) {
        double log = point.getEntry(0);
        double resistance = point.getEntry(1);
        double step = RESISTANCE_STEP + LOG_STEP * resistance;
        double below = Math.max(0, resistance - step);
        double[] value = cores(piece, start, schedule, minutes, log, resistance);
        double[] faster = cores(piece, start, schedule, minutes, log + LOG_STEP, resistance);
        double[] slower = cores(piece, start, schedule, minutes, log - LOG_STEP, resistance);
        double[] shielded = cores(piece, start, schedule, minutes, log, resistance + step);
        double[] bared = cores(piece, start, schedule, minutes, log, below);
        double[][] slopes = new double[minutes.length][];
        for (int i = 0; i < minutes.length; i++) {
            slopes[i] = new double[] {
                (faster[i] - slower[i]) / (2 * LOG_STEP), (shielded[i] - bared[i]) / (resistance + step - below)
            };
        }
        return new Pair<>(new ArrayRealVector(value, false), new Array2DRowRealMatrix(slopes, false));
    }

    private static double[] cores(
            Piece piece, PieceState start, MediumSchedule schedule, double[] minutes, double log, double resistance) {
        ThermalProperties properties = ThermalProperties.constant(ASSUMED_CONDUCTIVITY, diffusivityOf(log));
        double[][] rows = Conduction.of(piece, properties)
                .march(
                        start,
                        schedule.withSurfaceCoefficient(coefficientOf(piece, resistance)),
                        minutes,
                        new double[] {0},
                        FINENESS_HALVINGS);
        double[] cores = new double[rows.length];
        for (int i = 0; i < rows.length; i++) {
            cores[i] = rows[i][0];
        }
        return cores;
    }

    private static double diffusivityOf(double log) {
        return FIRST_DIFFUSIVITY * Math.exp(log);
    }

    private static double coefficientOf(Piece piece, double resistance) {
        return resistance <= 0
                ? Double.POSITIVE_INFINITY
                : ASSUMED_CONDUCTIVITY / (resistance * piece.halfThicknessMetres());
    }

    private static ConfidenceInterval decay(
            Piece piece, double log, double resistance, RealMatrix covariance, double quantile) {
        double value = decayOf(piece, log, resistance);
        double step = 1e-4 * (1 + resistance);
        double overLog = value;
        double below = Math.max(0, resistance - step);
        double overResistance =
                (decayOf(piece, log, resistance + step) - decayOf(piece, log, below)) / (resistance + step - below);
        double variance = overLog * overLog * covariance.getEntry(0, 0)
                + 2 * overLog * overResistance * covariance.getEntry(0, 1)
                + overResistance * overResistance * covariance.getEntry(1, 1);
        double spread = quantile * Math.sqrt(Math.max(0, variance));
        return new ConfidenceInterval(Math.max(0, value - spread), value, value + spread);
    }

    private static double decayOf(Piece piece, double log, double resistance) {
        double eigenvalue = FirstMode.of(piece.shapeFactor(), 1 / resistance).eigenvalue();
        double half = piece.halfThicknessMetres();
        return 60 * diffusivityOf(log) * eigenvalue * eigenvalue / (half * half);
    }

    /** The piece as declared. */
    public Piece piece() {
        return piece;
    }

    /** Effective thermal diffusivity for the declared thickness and shape, in m²/s. */
    public ConfidenceInterval diffusivity() {
        return diffusivity;
    }

    /**
     * The thickness the piece would have if its diffusivity were known instead, in millimetres.
     *
     * @param knownDiffusivity in m²/s
     */
    public ConfidenceInterval thicknessMillimetres(double knownDiffusivity) {
        double scale = piece.thicknessMillimetres() * Math.sqrt(knownDiffusivity);
        return new ConfidenceInterval(
                scale / Math.sqrt(diffusivity.high()),
                scale / Math.sqrt(diffusivity.estimate()),
                scale / Math.sqrt(diffusivity.low()));
    }

    /** Surface coefficient for the assumed conductivity, in W/(m² K); infinite where the log cannot bound it. */
    public ConfidenceInterval surfaceCoefficient() {
        return surfaceCoefficient;
    }

    /** The rate at which the gap between core and bath closes in the end, per minute: what the log really measures. */
    public ConfidenceInterval decayPerMinute() {
        return decayPerMinute;
    }

    /** Correlation of diffusivity and surface coefficient, −1 to 1. */
    public double correlation() {
        return correlation;
    }

    /** Standard deviation of the readings about the fitted curve, in °C. */
    public double residualCelsius() {
        return residualCelsius;
    }

    /** How many readings were fitted. */
    public int readings() {
        return readings;
    }

    /** The fitted properties, for running the next piece of the same food. */
    public ThermalProperties properties() {
        return ThermalProperties.constant(ASSUMED_CONDUCTIVITY, diffusivity.estimate());
    }

    /** A piece's temperatures under other temperatures of the medium, with the fitted properties and coefficient. */
    public PieceTemperatures predict(Piece next, double startCelsius, MediumSchedule medium, double[] atMinutes) {
        return Conduction.of(next, properties())
                .run(startCelsius, medium.withSurfaceCoefficient(surfaceCoefficient.estimate()), atMinutes);
    }
}
