package org.holdproof.core.course;

import java.util.Arrays;
import java.util.Optional;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Span;

/**
 * What surrounded the food while it cooked, as logged: the smoker's air, then the bath's water.
 *
 * @param logged the readings, and the bench between two stages
 * @param hottestSoFar the hottest it had been up to each reading: no core can be hotter than in that
 * @param waterOnly whether the food went straight into the bath
 */
public record CookMedium(Trace logged, Trace hottestSoFar, boolean waterOnly) {
    /** What a piece meets on the bench between smoker and bath, in °C; common practice, no source. */
    private static final double BENCH_CELSIUS = 20;

    /** The medium over all cooking stages; empty where one of them was not logged. */
    public static Optional<CookMedium> of(ProbeLog log, BatchRecord batch, CookTimeline timeline) {
        Readings medium = new Readings(log.rows() + 4 * batch.stages().size());
        boolean waterOnly = true;
        for (Stage stage : batch.stages()) {
            if (!stage.kind().isCook()) {
                continue;
            }
            Optional<Integer> channel = (stage.kind() == Stage.Kind.SMOKE
                            ? batch.columns().air()
                            : batch.columns().bath())
                    .stream().findFirst().flatMap(log::channelNamed);
            if (channel.isEmpty()) {
                return Optional.empty();
            }
            Span span = timeline.span(stage);
            Trace trace = log.trace(channel.get()).between(span.fromMillis(), span.toMillis());
            if (trace.isEmpty()) {
                return Optional.empty();
            }
            medium.add(trace);
            waterOnly &= stage.kind() == Stage.Kind.BATH;
        }
        return medium.size == 0
                ? Optional.empty()
                : Optional.of(new CookMedium(medium.trace(), medium.hottestSoFar(), waterOnly));
    }

    /** The stages' readings one after another. */
    private static final class Readings {
        private final long[] millis;
        private final double[] celsius;
        private int size;

        Readings(int most) {
            millis = new long[most];
            celsius = new double[most];
        }

        private void add(Trace trace) {
            if (size > 0 && trace.firstMillis() - millis[size - 1] > 2) {
                put(millis[size - 1] + 1, BENCH_CELSIUS);
                put(trace.firstMillis() - 1, BENCH_CELSIUS);
            }
            for (int i = 0; i < trace.size(); i++) {
                put(trace.millis(i), trace.celsius(i));
            }
        }

        private void put(long atMillis, double atCelsius) {
            if (size == 0 || atMillis > millis[size - 1]) {
                millis[size] = atMillis;
                celsius[size++] = atCelsius;
            }
        }

        private Trace trace() {
            return new Trace("medium", Arrays.copyOf(millis, size), Arrays.copyOf(celsius, size));
        }

        Trace hottestSoFar() {
            double[] hottest = Arrays.copyOf(celsius, size);
            for (int i = 1; i < size; i++) {
                hottest[i] = Math.max(hottest[i], hottest[i - 1]);
            }
            return new Trace("medium", Arrays.copyOf(millis, size), hottest);
        }
    }
}
