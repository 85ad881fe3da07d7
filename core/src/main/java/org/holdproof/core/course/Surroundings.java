package org.holdproof.core.course;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.log.GapLimit;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Span;

/**
 * What the medium's log says of a core nobody read. A piece without heat of its own stays between its own extremes when
 * last read and the medium's since (the maximum principle of heat conduction). A gap in the medium's log ends that, and
 * so does a moment the record names no stage for. Evaporation can cool a bare wet piece below the air, so only a sealed
 * one has a lower bound.
 */
public final class Surroundings {
    /** No medium was logged. */
    public static final Surroundings NONE = new Surroundings(List.of(), Optional.empty());

    private final List<Stretch> stretches;
    private final Optional<Long> sealedMillis;

    private record Stretch(Span span, Trace medium) {}

    /**
     * What a core can have been, in °C.
     *
     * @param low minus infinity where nothing bounds it from below
     * @param high infinite where nothing bounds it from above
     */
    public record Range(double low, double high) {
        /** Nothing is known. */
        public static final Range UNKNOWN = new Range(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    private Surroundings(List<Stretch> stretches, Optional<Long> sealedMillis) {
        this.stretches = stretches;
        this.sealedMillis = sealedMillis;
    }

    /** The medium of each stage: the water in a bath, the air elsewhere. */
    public static Surroundings of(ProbeLog log, BatchRecord batch, CookTimeline timeline, double correctionCelsius) {
        List<Stretch> stretches = new ArrayList<>();
        Optional<Trace> air = medium(log, batch.columns().air(), correctionCelsius);
        Optional<Trace> bath = medium(log, batch.columns().bath(), correctionCelsius);
        for (Stage stage : batch.stages()) {
            if (!stage.kind().isMoment()) {
                (stage.kind() == Stage.Kind.BATH ? bath : air)
                        .ifPresent(trace -> stretches.add(new Stretch(timeline.span(stage), trace)));
            }
        }
        stretches.sort(Comparator.comparingLong(stretch -> stretch.span().fromMillis()));
        return new Surroundings(
                List.copyOf(stretches),
                batch.first(Stage.Kind.BAG).map(stage -> stage.from().toEpochMilli()));
    }

    private static Optional<Trace> medium(ProbeLog log, List<String> columns, double correctionCelsius) {
        return columns.stream()
                .findFirst()
                .flatMap(log::channelNamed)
                .map(log::trace)
                .filter(trace -> !trace.isEmpty())
                .map(trace -> trace.corrected(correctionCelsius));
    }

    /**
     * What a core last read at {@code enteredCelsius} can have been from then until an instant.
     *
     * @param toleranceCelsius how far any reading may lie from the truth, in °C
     */
    Range range(double enteredCelsius, long fromMillis, long toMillis, double toleranceCelsius) {
        double low = enteredCelsius;
        double high = enteredCelsius;
        long present = fromMillis;
        for (Stretch stretch : stretches) {
            if (stretch.span().toMillis() <= present) {
                continue;
            }
            if (stretch.span().fromMillis() > present || present >= toMillis) {
                break;
            }
            long until = Math.min(toMillis, stretch.span().toMillis());
            Optional<Range> extremes = extremes(stretch.medium(), present, until);
            if (extremes.isEmpty()) {
                return Range.UNKNOWN;
            }
            low = Math.min(low, extremes.get().low());
            high = Math.max(high, extremes.get().high());
            present = until;
        }
        if (present < toMillis) {
            return Range.UNKNOWN;
        }
        boolean sealed = sealedMillis.filter(at -> at <= fromMillis).isPresent();
        return new Range(sealed ? low - toleranceCelsius : Double.NEGATIVE_INFINITY, high + toleranceCelsius);
    }

    /** The medium's extremes over a stretch it was read throughout; the readings around its edges count. */
    private static Optional<Range> extremes(Trace medium, long fromMillis, long toMillis) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        long edge = Math.round(GapLimit.FLOOR_MINUTES * 60_000);
        int i = 0;
        int end = medium.size();
        while (i < end) {
            int middle = (i + end) >>> 1;
            if (medium.millis(middle) < fromMillis) {
                i = middle + 1;
            } else {
                end = middle;
            }
        }
        i = Math.max(0, i - 1);
        if (medium.millis(i) > fromMillis + edge) {
            return Optional.empty();
        }
        for (; i < medium.size(); i++) {
            low = Math.min(low, medium.celsius(i));
            high = Math.max(high, medium.celsius(i));
            if (medium.millis(i) >= toMillis) {
                return Optional.of(new Range(low, high));
            }
            if (i + 1 < medium.size() && medium.millis(i + 1) > fromMillis && GapLimit.isGap(medium, i)) {
                return Optional.empty();
            }
        }
        return toMillis - medium.lastMillis() <= edge ? Optional.of(new Range(low, high)) : Optional.empty();
    }
}
