import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Shape;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.heat.Conduction;
import org.holdproof.core.heat.MediumSchedule;
import org.holdproof.core.heat.MediumSchedule.Segment;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.PieceTemperatures;
import org.holdproof.core.heat.ThermalFit;
import org.holdproof.core.heat.ThermalProperties;
import org.holdproof.core.heat.smoke.SmokerSurface;
import org.holdproof.core.log.Trace;
import org.holdproof.core.plan.ChillMedium;
import org.holdproof.core.plan.HeatFigures;
import org.holdproof.core.plan.PlanTable;
import org.holdproof.core.plan.PlannedCook;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.rules.RuleLibrary;

/**
 * One bath solved, one smoked cook of a day solved, a 20 by 20 table planned, one log fitted: processor seconds of this thread, median of the rounds after
 * a warm-up, one line each with a figure that bath_plans.py must come to as well. Run by bath-plans.sh. The log is made
 * up: conduction with Gaussian noise of 0.2 °C.
 */
public final class BathPlans {
    private static final int ROUNDS = 9;
    private static final double CONDUCTIVITY = 0.48;
    private static final double DIFFUSIVITY = 1.3e-7;
    private static final double COEFFICIENT = 95;

    private interface Work {
        double run() throws Exception;
    }

    public static void main(String[] arguments) throws Exception {
        time("solve", 400, BathPlans::solve);
        time("smoke", 200, BathPlans::smoke);
        time("table", 20, BathPlans::table);
        Trace core = log();
        Trace bath = bath(core.size());
        time("fit", 20, () -> ThermalFit.of(Piece.of(50, 0.28), 5, 0, core, bath)
                .decayPerMinute()
                .estimate());
    }

    private static void time(String name, int warmUp, Work work) throws Exception {
        double figure = 0;
        for (int i = 0; i < warmUp; i++) {
            figure = work.run();
        }
        double[] seconds = new double[ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            long start = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            int times = Math.max(1, warmUp / ROUNDS);
            for (int i = 0; i < times; i++) {
                figure = work.run();
            }
            seconds[round] =
                    (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - start) / 1e9 / times;
        }
        Arrays.sort(seconds);
        System.out.printf(Locale.ROOT, "%s %.6f %.6f%n", name, seconds[ROUNDS / 2], figure);
    }

    /** The core of 50 mm after 150 of 300 minutes at 60 °C, in °C; to 0.02 °C, every minute. */
    private static double solve() {
        return Conduction.of(Piece.of(50, 0.28), ThermalProperties.constant(CONDUCTIVITY, DIFFUSIVITY))
                .runAt(0, 5, MediumSchedule.held(60, COEFFICIENT), minutes(301))[150];
    }

    /** The core after 8 h of smoke, of 100 mm that then lie 16 h in a bath; to 0.1 °C, every 4 min. */
    private static double smoke() {
        double[] asked = new double[361];
        Arrays.setAll(asked, i -> 4.0 * i);
        PieceTemperatures day = Conduction.of(Piece.of(100, 0.5), ThermalProperties.constant(CONDUCTIVITY, DIFFUSIVITY))
                .within(0.1)
                .run(
                        4,
                        MediumSchedule.of(
                                Segment.bare(480, 115, 115, SmokerSurface.nominal()),
                                Segment.hold(960, 68, COEFFICIENT)),
                        asked);
        return day.coreCelsius(120);
    }

    /** The covering time of 50 mm at 60 °C out of a table of 400 cells, in minutes. */
    private static double table() {
        PlannedCook like = new PlannedCook(
                Species.BEEF,
                Form.INTACT,
                OptionalDouble.empty(),
                Shape.ROAST,
                50,
                5,
                Optional.empty(),
                60,
                OptionalDouble.empty(),
                RuleLibrary.builtIn().profile("us-food-code-2022").orElseThrow(),
                ChillMedium.ICE_SLUSH);
        List<Double> thicknesses = new ArrayList<>();
        List<Boundary> baths = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            thicknesses.add(10.0 + 5 * i);
            baths.add(new Boundary(56 + i, TemperatureUnit.CELSIUS));
        }
        HeatFigures heat = HeatFigures.published(like.species(), like.fatPercent());
        return PlanTable.of(like, heat, thicknesses, baths).minutes(8, 4).orElseThrow();
    }

    private static Trace log() {
        double[] minutes = minutes(241);
        double[] core = Conduction.of(Piece.of(50, 0.28), ThermalProperties.constant(CONDUCTIVITY, DIFFUSIVITY))
                .within(0.002)
                .runAt(0, 5, MediumSchedule.held(60, COEFFICIENT), minutes);
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < core.length; i++) {
            core[i] += 0.2 * random.nextGaussian();
        }
        return new Trace("core", millis(core.length), core);
    }

    private static Trace bath(int count) {
        double[] held = new double[count];
        Arrays.fill(held, 60);
        return new Trace("bath", millis(count), held);
    }

    private static double[] minutes(int count) {
        double[] minutes = new double[count];
        for (int i = 0; i < count; i++) {
            minutes[i] = i;
        }
        return minutes;
    }

    private static long[] millis(int count) {
        long[] millis = new long[count];
        for (int i = 0; i < count; i++) {
            millis[i] = 60_000L * i;
        }
        return millis;
    }
}
