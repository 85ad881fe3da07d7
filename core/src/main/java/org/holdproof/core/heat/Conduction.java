package org.holdproof.core.heat;

/**
 * Transient conduction in one piece that is left to a medium:
 * {@code ρc ∂T/∂t = 1/r^β ∂/∂r (r^β k ∂T/∂r)}, insulated at the centre, {@code k ∂T/∂r = h (T_medium − T)} at the
 * surface, or what an {@link Exposure} says of bare meat. Nothing freezes, thaws or shrinks, and what dries is the surface.
 *
 * <p>Every run is marched twice, once with grid and steps halved; a third of the largest difference is the finer run's
 * error (Richardson), and halving goes on until it is at most half the tolerance. Steps that a dense log or dense asking has already made short
 * are not split further; what that hides is below a third of the estimate. Not tied to a thread; safe to share.
 */
public final class Conduction {
    /** Largest error of any returned temperature unless asked otherwise, in °C. */
    public static final double DEFAULT_TOLERANCE_CELSIUS = 0.02;

    private static final int COARSEST_CELLS = 20;
    private static final int FINEST_CELLS = 2560;
    /** Shortest step of the coarsest march over the time heat takes to cross one of its cells. */
    private static final double SHORTEST_STEP = 0.25;
    /** The two marches must agree this much better than the tolerance, as the error's law is only nearly quadratic. */
    private static final double CAUTION = 0.5;

    private static final double ROUNDING = 1e-9;

    private static final double[] CORE_AND_SURFACE = {0, 1};

    private final Piece piece;
    private final ThermalProperties properties;
    private final double toleranceCelsius;

    private Conduction(Piece piece, ThermalProperties properties, double toleranceCelsius) {
        this.piece = piece;
        this.properties = properties;
        this.toleranceCelsius = toleranceCelsius;
    }

    public static Conduction of(Piece piece, ThermalProperties properties) {
        return new Conduction(piece, properties, DEFAULT_TOLERANCE_CELSIUS);
    }

    /**
     * The same piece reckoned to another tolerance, in °C.
     *
     * @throws IllegalArgumentException if it is not positive
     */
    public Conduction within(double celsius) {
        if (!(celsius > 0)) {
            throw new IllegalArgumentException("not a tolerance: " + celsius + " °C");
        }
        return new Conduction(piece, properties, celsius);
    }

    /**
     * The temperatures at the asked minutes.
     *
     * @param startCelsius the piece's temperature throughout at minute 0, in °C
     * @param schedule what surrounds it from minute 0 on
     * @param atMinutes ascending, from 0 to the schedule's end
     * @throws IllegalArgumentException if the start is not finite or the minutes are out of order or range
     */
    public PieceTemperatures run(double startCelsius, MediumSchedule schedule, double[] atMinutes) {
        return run(PieceState.uniform(startCelsius), schedule, atMinutes);
    }

    /**
     * The same from any state: what an earlier run left.
     *
     * @param start where the piece stands at minute 0
     */
    public PieceTemperatures run(PieceState start, MediumSchedule schedule, double[] atMinutes) {
        Solution solution = solve(start, schedule, atMinutes, CORE_AND_SURFACE, CORE_AND_SURFACE.length + 1);
        return new PieceTemperatures(
                atMinutes.clone(),
                solution.column(0),
                solution.column(1),
                solution.column(2),
                solution.column(3),
                piece.massPerArea(),
                solution.end,
                solution.errorCelsius);
    }

    /**
     * The temperature at one place.
     *
     * @param fractionOfHalfThickness 0 the centre, 1 the surface
     * @return in °C, one an asked minute
     * @see #run
     */
    public double[] runAt(
            double fractionOfHalfThickness, double startCelsius, MediumSchedule schedule, double[] atMinutes) {
        return runAt(fractionOfHalfThickness, PieceState.uniform(startCelsius), schedule, atMinutes);
    }

    /** The same from any state. */
    public double[] runAt(
            double fractionOfHalfThickness, PieceState start, MediumSchedule schedule, double[] atMinutes) {
        if (!(fractionOfHalfThickness >= 0) || !(fractionOfHalfThickness <= 1)) {
            throw new IllegalArgumentException(
                    "a place in the piece lies from 0 (centre) to 1 (surface), not " + fractionOfHalfThickness);
        }
        return solve(start, schedule, atMinutes, new double[] {fractionOfHalfThickness}, 1)
                .column(0);
    }

    /** One march only, for measuring how the error falls: {@code 2^halvings} times as fine as the coarsest. */
    double[][] march(
            double startCelsius, MediumSchedule schedule, double[] atMinutes, double[] positions, int halvings) {
        return march(PieceState.uniform(startCelsius), schedule, atMinutes, positions, halvings);
    }

    double[][] march(PieceState start, MediumSchedule schedule, double[] atMinutes, double[] positions, int halvings) {
        StepPlan plan = plan(start, schedule, atMinutes);
        int fineness = 1 << halvings;
        return new RadialMarch(piece, properties, COARSEST_CELLS * fineness)
                .march(start, schedule, plan, fineness, atMinutes.length, positions);
    }

    private static final class Solution {
        private final double[][] rows;
        private final PieceState end;
        private final double errorCelsius;

        Solution(double[][] rows, PieceState end, double errorCelsius) {
            this.rows = rows;
            this.end = end;
            this.errorCelsius = errorCelsius;
        }

        double[] column(int index) {
            double[] column = new double[rows.length];
            for (int i = 0; i < rows.length; i++) {
                column[i] = rows[i][index];
            }
            return column;
        }
    }

    /** @param counted how many columns of the march must come within the tolerance */
    private Solution solve(
            PieceState start, MediumSchedule schedule, double[] atMinutes, double[] positions, int counted) {
        check(schedule, atMinutes);
        StepPlan plan = plan(start, schedule, atMinutes);
        double[][] coarse = new RadialMarch(piece, properties, COARSEST_CELLS)
                .march(start, schedule, plan, 1, atMinutes.length, positions);
        for (int fineness = 2; ; fineness *= 2) {
            RadialMarch march = new RadialMarch(piece, properties, COARSEST_CELLS * fineness);
            double[][] fine = march.march(start, schedule, plan, fineness, atMinutes.length, positions);
            double error = largestDifference(coarse, fine, counted) / 3;
            if (error <= CAUTION * toleranceCelsius || COARSEST_CELLS * fineness >= FINEST_CELLS) {
                return new Solution(fine, march.state(), error);
            }
            coarse = fine;
        }
    }

    private StepPlan plan(PieceState start, MediumSchedule schedule, double[] atMinutes) {
        double cell = piece.halfThicknessMetres() / COARSEST_CELLS;
        double diffusivity = properties.diffusivity(start.coreCelsius());
        return new StepPlan(schedule, SHORTEST_STEP * cell * cell / diffusivity, atMinutes);
    }

    private static void check(MediumSchedule schedule, double[] atMinutes) {
        for (int i = 0; i < atMinutes.length; i++) {
            if (!(atMinutes[i] >= (i == 0 ? 0 : atMinutes[i - 1]))
                    || !Double.isFinite(atMinutes[i])
                    || atMinutes[i] > schedule.endMinutes() * (1 + ROUNDING)) {
                throw new IllegalArgumentException("minute " + atMinutes[i]
                        + " is out of order or outside the schedule of " + schedule.endMinutes() + " min");
            }
        }
    }

    private static double largestDifference(double[][] one, double[][] other, int counted) {
        double largest = 0;
        for (int i = 0; i < one.length; i++) {
            for (int j = 0; j < counted; j++) {
                largest = Math.max(largest, Math.abs(one[i][j] - other[i][j]));
            }
        }
        return largest;
    }
}
