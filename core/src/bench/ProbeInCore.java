import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import org.holdproof.core.batch.Product.Shape;
import org.holdproof.core.heat.Conduction;
import org.holdproof.core.heat.MediumSchedule;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.ProbePlausibility;
import org.holdproof.core.heat.ThermalProperties;
import org.holdproof.core.log.Trace;

/**
 * Whether 25 h of readings, one a minute, can be a core's: processor seconds of this thread, median of the rounds after a
 * warm-up, beside two marches of the grid solver over the same medium, which gave the two bounds before the modes did.
 * The log is made up. Run by probe-in-core.sh.
 */
public final class ProbeInCore {
    private static final int READINGS = 1500;
    private static final int ROUNDS = 9;

    private interface Work {
        double run();
    }

    public static void main(String[] arguments) {
        double[] minutes = new double[READINGS];
        double[] bath = new double[READINGS];
        long[] millis = new long[READINGS];
        SplittableRandom random = new SplittableRandom(5);
        for (int i = 0; i < READINGS; i++) {
            minutes[i] = i;
            millis[i] = i * 60_000L;
            bath[i] = 60 + Math.round(random.nextGaussian()) / 10.0;
        }
        Piece piece = Piece.of(60, Shape.SLAB);
        double[] core = Conduction.of(piece, ThermalProperties.constant(0.48, 1.3e-7))
                .runAt(0, 4, MediumSchedule.held(60, 300), minutes);
        for (int i = 0; i < READINGS; i++) {
            core[i] = Math.round((core[i] + 0.1 * random.nextGaussian()) * 10) / 10.0;
        }
        Trace read = new Trace("core", millis, core);
        Trace water = new Trace("bath", millis, bath);
        Conduction grid = Conduction.of(Piece.of(54, 0.28), ThermalProperties.constant(0.5, 1.6e-7));
        MediumSchedule medium = MediumSchedule.logged(water, 0, Double.POSITIVE_INFINITY);
        double judged = time(() -> ProbePlausibility.judge(read, Optional.of(water), piece).thresholdCelsius());
        double march = time(() -> grid.runAt(0, 4, medium, minutes)[READINGS - 1]
                + grid.runAt(0, 4, medium, minutes)[READINGS - 2]);
        System.out.printf(
                Locale.ROOT, "judged %.6f s, two marches %.6f s, ratio %.1f%n", judged, march, march / judged);
    }

    private static double time(Work work) {
        double sum = 0;
        for (int i = 0; i < 300; i++) {
            sum += work.run();
        }
        double[] seconds = new double[ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            long start = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            for (int i = 0; i < 50; i++) {
                sum += work.run();
            }
            seconds[round] = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - start) / 50e9;
        }
        Arrays.sort(seconds);
        if (Double.isNaN(sum)) {
            throw new IllegalStateException("not a number");
        }
        return seconds[ROUNDS / 2];
    }
}
