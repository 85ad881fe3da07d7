package org.holdproof.core.course;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.heat.Surroundings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Span;

/**
 * What surrounded the food while it was heated: the smoker's air, then the bath's water, and the bench between them. A stage
 * whose medium was not logged is as hot as its set point: that bounds it from above and says nothing of a fall.
 *
 * @param surroundings over all stages; empty where nothing is known of one of them
 * @param bySetPoint stages known by their set point alone
 * @param unknown stages with neither a log nor a set point
 */
public record CookMedium(Optional<Surroundings> surroundings, List<Stage> bySetPoint, List<Stage> unknown) {
    /** What a piece meets on the bench between smoker and bath, in °C; common practice, no source. */
    private static final double BENCH_CELSIUS = 20;

    public CookMedium {
        bySetPoint = List.copyOf(bySetPoint);
        unknown = List.copyOf(unknown);
    }

    /** The medium over cooking stages that follow each other. */
    public static CookMedium of(ProbeLog log, BatchRecord batch, CookTimeline timeline, List<Stage> stages) {
        Readings medium = new Readings(log.rows() + 4 * stages.size());
        List<Stage> bySetPoint = new ArrayList<>();
        List<Stage> unknown = new ArrayList<>();
        boolean inWater = true;
        for (Stage stage : stages) {
            Optional<Trace> logged = logged(log, batch, stage, timeline.span(stage));
            if (logged.isPresent()) {
                medium.add(logged.get());
            } else if (stage.setPointCelsius().isPresent()) {
                bySetPoint.add(stage);
                medium.add(held(stage.setPointCelsius().getAsDouble(), timeline.span(stage)));
            } else {
                unknown.add(stage);
            }
            inWater &= stage.kind() == Stage.Kind.BATH;
        }
        if (!unknown.isEmpty() || medium.size == 0) {
            return new CookMedium(Optional.empty(), bySetPoint, unknown);
        }
        Trace whole = medium.trace();
        return new CookMedium(
                Optional.of(new Surroundings(
                        Surroundings.hottestSoFar(whole),
                        bySetPoint.isEmpty() ? Optional.of(whole) : Optional.empty(),
                        inWater)),
                bySetPoint,
                unknown);
    }

    private static Optional<Trace> logged(ProbeLog log, BatchRecord batch, Stage stage, Span span) {
        List<String> columns = stage.kind() == Stage.Kind.SMOKE
                ? batch.columns().air()
                : batch.columns().bath();
        return columns.stream()
                .findFirst()
                .flatMap(log::channelNamed)
                .map(channel -> log.trace(channel).between(span.fromMillis(), span.toMillis()))
                .filter(trace -> !trace.isEmpty());
    }

    private static Trace held(double celsius, Span span) {
        return span.fromMillis() == span.toMillis()
                ? new Trace("set point", new long[] {span.fromMillis()}, new double[] {celsius})
                : new Trace(
                        "set point", new long[] {span.fromMillis(), span.toMillis()}, new double[] {celsius, celsius});
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
    }
}
