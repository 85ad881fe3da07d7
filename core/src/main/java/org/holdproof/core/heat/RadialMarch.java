package org.holdproof.core.heat;

import java.util.Arrays;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * One march through a step plan on one grid: finite volumes about equally spaced nodes from the centre to the surface,
 * so that the heat that leaves one enters the next and the balance closes to rounding.
 *
 * <p>In time: TR-BDF2 (Bank et al. 1985). It is second order and unconditionally stable like Crank–Nicolson but, unlike
 * it, damps what a jump of the medium puts into the finest cells, so that it needs no special start; its two stages
 * share one tridiagonal matrix. Properties that depend on temperature are frozen at mid-step, found by a first pass.
 *
 * <p>Bare meat: only the surface is not linear. Its flux is taken out of the matrix; the answer of every node to a unit of
 * flux is solved once, and each stage is left with one unknown, the surface's temperature. The water lost is marched with
 * the same weights, and the wetness of a stage follows from the loss carried forward, which keeps the second order.
 */
final class RadialMarch {
    private static final double STAGE = 2 - Math.sqrt(2);
    private static final double BACK_NEW = 1 / (STAGE * (2 - STAGE));
    private static final double BACK_OLD = (1 - STAGE) * (1 - STAGE) / (STAGE * (2 - STAGE));

    /** Stands for an unlimited surface coefficient: beyond this Biot number the surface is the medium to 1e-7. */
    private static final double UNLIMITED_BIOT = 1e7;

    private final ThermalProperties properties;
    private final int cells;
    private final double halfThickness;
    private final double spacing;
    private final double[] faceArea;
    private final double[] volume;
    private final double totalVolume;

    private final double[] celsius;
    private final double[] stage;
    private final double[] right;
    private final double[] capacity;
    private final double[] conductance;
    private final double[] ratio;
    private final double[] inversePivot;
    private final double[] middle;

    /** Kelvin at each node for a W/m² through the surface over a stage. */
    private final double[] answer;

    private final double massPerArea;
    private double waterLost;
    private @Nullable SurfaceBalance balance;

    private double factoredStep = Double.NaN;
    private double factoredCoefficient = Double.NaN;
    private double factoredSurface;

    /** @param cells intervals between centre and surface, at least 2 */
    RadialMarch(Piece piece, ThermalProperties properties, int cells) {
        this.properties = properties;
        this.cells = cells;
        halfThickness = piece.halfThicknessMetres();
        spacing = halfThickness / cells;
        double power = piece.shapeFactor();
        faceArea = new double[cells + 1];
        volume = new double[cells + 1];
        double inner = 0;
        for (int i = 0; i < cells; i++) {
            double face = (i + 0.5) * spacing;
            faceArea[i] = Math.pow(face, power);
            double outer = Math.pow(face, power + 1) / (power + 1);
            volume[i] = outer - inner;
            inner = outer;
        }
        faceArea[cells] = Math.pow(halfThickness, power);
        totalVolume = Math.pow(halfThickness, power + 1) / (power + 1);
        volume[cells] = totalVolume - inner;

        celsius = new double[cells + 1];
        stage = new double[cells + 1];
        right = new double[cells + 1];
        capacity = new double[cells + 1];
        conductance = new double[cells];
        ratio = new double[cells + 1];
        inversePivot = new double[cells + 1];
        middle = new double[cells + 1];
        answer = new double[cells + 1];
        massPerArea = piece.massPerArea();
    }

    /**
     * Marches from a start.
     *
     * @param fineness 1 for the plan's own steps, 2 for steps half as long, and so on
     * @param positions where to look, as fractions of the way from centre (0) to surface (1)
     * @return for every asked minute the temperatures at the positions, then the mean over the volume, in °C, and the water
     *     lost in kg/m²
     */
    double[][] march(
            PieceState start, MediumSchedule schedule, StepPlan plan, int fineness, int asked, double[] positions) {
        double[][] found = new double[asked][];
        for (int i = 0; i <= cells; i++) {
            celsius[i] = start.celsius((double) i / cells);
        }
        waterLost = start.waterLost();
        factoredStep = Double.NaN;
        freezeProperties(celsius);
        int next = 0;
        while (next < asked && plan.stepsBefore(next) == 0) {
            found[next++] = look(positions);
        }
        for (int step = 0; step < plan.steps(); step++) {
            int segment = plan.segment(step);
            int parts = plan.parts(step, fineness);
            double length = plan.lengthSeconds(step) / parts;
            double zero = schedule.startMinute(segment) * 60;
            double slope = schedule.slope(segment) / 60;
            double coefficient = schedule.coefficient(segment);
            Optional<Exposure> bare = schedule.exposure(segment);
            for (int part = 0; part < parts; part++) {
                double since = plan.startSeconds(step) - zero + part * length;
                double medium = schedule.fromCelsius(segment) + slope * since;
                if (bare.isPresent()) {
                    advanceBare(length, bare.get(), medium, slope);
                } else {
                    advance(length, coefficient, medium, slope);
                }
            }
            while (next < asked && plan.stepsBefore(next) == step + 1) {
                found[next++] = look(positions);
            }
        }
        return found;
    }

    private void advance(double length, double coefficient, double medium, double slope) {
        if (properties.isConstant()) {
            if (length != factoredStep || coefficient != factoredCoefficient) {
                factor(length, coefficient);
            }
            solve(length, medium, slope);
        } else {
            System.arraycopy(celsius, 0, middle, 0, cells + 1);
            freezeProperties(celsius);
            factor(length, coefficient);
            solve(length, medium, slope);
            for (int i = 0; i <= cells; i++) {
                double start = middle[i];
                middle[i] = (start + celsius[i]) / 2;
                celsius[i] = start;
            }
            freezeProperties(middle);
            factor(length, coefficient);
            solve(length, medium, slope);
        }
    }

    private void advanceBare(double length, Exposure exposure, double medium, double slope) {
        if (balance == null || !balance.exposure().equals(exposure)) {
            balance = new SurfaceBalance(exposure);
        }
        if (properties.isConstant()) {
            if (length != factoredStep || factoredCoefficient != 0) {
                factorBare(length);
            }
            solveBare(balance, length, medium, slope);
        } else {
            double lostBefore = waterLost;
            System.arraycopy(celsius, 0, middle, 0, cells + 1);
            freezeProperties(celsius);
            factorBare(length);
            solveBare(balance, length, medium, slope);
            for (int i = 0; i <= cells; i++) {
                double start = middle[i];
                middle[i] = (start + celsius[i]) / 2;
                celsius[i] = start;
            }
            waterLost = lostBefore;
            freezeProperties(middle);
            factorBare(length);
            solveBare(balance, length, medium, slope);
        }
    }

    private void freezeProperties(double[] at) {
        double inner = properties.conductivity(at[0]);
        for (int i = 0; i <= cells; i++) {
            capacity[i] = properties.heatCapacity(at[i]) * volume[i];
            if (i < cells) {
                double outer = properties.conductivity(at[i + 1]);
                conductance[i] = (inner + outer) / 2 * faceArea[i] / spacing;
                inner = outer;
            }
        }
    }

    private double surfaceConductance(double coefficient) {
        double limit = UNLIMITED_BIOT * properties.conductivity(celsius[cells]) / halfThickness;
        return Math.min(coefficient, limit) * faceArea[cells];
    }

    private void factor(double length, double coefficient) {
        double half = STAGE * length / 2;
        factoredSurface = half * surfaceConductance(coefficient);
        double outward = 0;
        double carried = 0;
        for (int i = 0; i <= cells; i++) {
            double inward = outward;
            outward = i < cells ? half * conductance[i] : factoredSurface;
            double inverse = 1 / (capacity[i] + inward + outward - carried);
            inversePivot[i] = inverse;
            ratio[i] = outward * inverse;
            carried = ratio[i] * outward;
        }
        factoredStep = length;
        factoredCoefficient = coefficient;
    }

    /** One step of both stages with the matrix as factored. */
    private void solve(double length, double medium, double slope) {
        double half = STAGE * length / 2;
        double surface = factoredSurface;
        double mediumAtStage = medium + slope * STAGE * length;
        double mediumAtEnd = medium + slope * length;

        double inflow = 0;
        for (int i = 0; i < cells; i++) {
            double outflow = half * conductance[i] * (celsius[i + 1] - celsius[i]);
            right[i] = capacity[i] * celsius[i] + outflow - inflow;
            inflow = outflow;
        }
        right[cells] = capacity[cells] * celsius[cells] - inflow + surface * (medium - celsius[cells] + mediumAtStage);
        substitute(stage);

        for (int i = 0; i <= cells; i++) {
            right[i] = capacity[i] * (BACK_NEW * stage[i] - BACK_OLD * celsius[i]);
        }
        right[cells] += surface * mediumAtEnd;
        substitute(celsius);
    }

    /** The matrix without the surface, and the answer to a unit of flux. */
    private void factorBare(double length) {
        factor(length, 0);
        Arrays.fill(right, 0);
        right[cells] = STAGE * length / 2 * faceArea[cells];
        substitute(answer);
    }

    /** One step of both stages, each closed by the surface's own balance. */
    private void solveBare(SurfaceBalance surface, double length, double medium, double slope) {
        double half = STAGE * length / 2;
        Wetness wetness = surface.exposure().wetness();

        surface.at(celsius[cells], medium, wetness.share(waterLost, massPerArea));
        double heatBefore = surface.heat;
        double leavingBefore = surface.leaving;
        double inflow = 0;
        for (int i = 0; i < cells; i++) {
            double outflow = half * conductance[i] * (celsius[i + 1] - celsius[i]);
            right[i] = capacity[i] * celsius[i] + outflow - inflow;
            inflow = outflow;
        }
        right[cells] = capacity[cells] * celsius[cells] - inflow + half * faceArea[cells] * heatBefore;
        substitute(stage);
        double share = wetness.share(waterLost + STAGE * length * leavingBefore, massPerArea);
        surface.settle(stage[cells], answer[cells], medium + slope * STAGE * length, share, celsius[cells]);
        add(answer, surface.heat, stage);
        double leavingAtStage = surface.leaving;
        double lostAtStage = waterLost + half * (leavingBefore + leavingAtStage);

        for (int i = 0; i <= cells; i++) {
            right[i] = capacity[i] * (BACK_NEW * stage[i] - BACK_OLD * celsius[i]);
        }
        substitute(celsius);
        share = wetness.share(lostAtStage + (1 - STAGE) * length * leavingAtStage, massPerArea);
        surface.settle(celsius[cells], answer[cells], medium + slope * length, share, stage[cells]);
        add(answer, surface.heat, celsius);
        waterLost = BACK_NEW * lostAtStage - BACK_OLD * waterLost + half * surface.leaving;
    }

    private static void add(double[] direction, double times, double[] into) {
        for (int i = 0; i < into.length; i++) {
            into[i] += times * direction[i];
        }
    }

    private void substitute(double[] into) {
        double carried = right[0];
        into[0] = carried;
        for (int i = 1; i <= cells; i++) {
            carried = right[i] + ratio[i - 1] * carried;
            into[i] = carried;
        }
        double outer = carried * inversePivot[cells];
        into[cells] = outer;
        for (int i = cells - 1; i >= 0; i--) {
            outer = into[i] * inversePivot[i] + ratio[i] * outer;
            into[i] = outer;
        }
    }

    private double[] look(double[] positions) {
        double[] seen = new double[positions.length + 2];
        for (int p = 0; p < positions.length; p++) {
            seen[p] = PieceState.at(celsius, positions[p]);
        }
        double heat = 0;
        for (int i = 0; i <= cells; i++) {
            heat += volume[i] * celsius[i];
        }
        seen[positions.length] = heat / totalVolume;
        seen[positions.length + 1] = waterLost;
        return seen;
    }

    /** Where the march has come to. */
    PieceState state() {
        return new PieceState(celsius, waterLost);
    }
}
