package org.holdproof.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;

/**
 * A cooling schedule's stages timed on one trace.
 *
 * <p>A clock that starts with the food falling through a temperature starts at the first such fall; warming back above
 * it does not set the clock back. Arrival is the last time the food comes down to the lower temperature and stays.
 * Inside an interval nobody could see into, a crossing may lie anywhere, so both ends are kept.
 *
 * <p>A trace that begins below the upper temperature has no start: its time is at least what was logged and has no
 * upper bound, unless the record says when the heat ended. A trace that ends above the lower temperature has no arrival.
 */
public final class CoolingClock {
    private final Trace trace;
    private final double toleranceCelsius;
    private final double seeThroughMinutes;
    private final Events events;

    /**
     * What the record says beside the log; milliseconds since 1970-01-01T00:00Z.
     *
     * @param endOfHeating when the food left the heat: the earliest its clock can have started
     * @param latestEndOfHeating the latest moment it can have left the heat, where that is another one
     * @param startOfChilling when it went into the chill
     */
    public record Events(OptionalLong endOfHeating, OptionalLong latestEndOfHeating, OptionalLong startOfChilling) {
        /** Nothing recorded. */
        public static final Events NONE = new Events(OptionalLong.empty(), OptionalLong.empty());

        /** The food left the heat at one known moment. */
        public Events(OptionalLong endOfHeating, OptionalLong startOfChilling) {
            this(endOfHeating, OptionalLong.empty(), startOfChilling);
        }
    }

    /**
     * One stage's time.
     *
     * @param shortestMinutes the least it can have been
     * @param longestMinutes the most it can have been; infinite where the start or the arrival was not logged
     * @param startLogged whether the start is known
     * @param ended whether the end is known
     * @param startMillis the latest the clock can have started
     * @param earliestStartMillis the earliest it can have started; empty where that is not logged
     * @param limitMillis the latest the limit can have run out; empty without a limit
     */
    public record StageTime(
            CoolingRule.Stage stage,
            double shortestMinutes,
            double longestMinutes,
            boolean startLogged,
            boolean ended,
            long startMillis,
            OptionalLong earliestStartMillis,
            OptionalLong limitMillis) {}

    private record Moment(double earliest, double latest) {
        static Moment exactly(double minutes) {
            return new Moment(minutes, minutes);
        }
    }

    private CoolingClock(Trace trace, double toleranceCelsius, double seeThroughMinutes, Events events) {
        this.trace = trace;
        this.toleranceCelsius = toleranceCelsius;
        this.seeThroughMinutes = seeThroughMinutes;
        this.events = events;
    }

    /** The clock that trusts no line between readings and widens each by the tolerance: the interval's two ends. */
    public static CoolingClock bounding(Trace trace, double toleranceCelsius, Events events) {
        return new CoolingClock(trace, toleranceCelsius, 0, events);
    }

    /** The clock that draws straight lines between readings no further apart than {@code gapMinutes}. */
    public static CoolingClock straight(Trace trace, double gapMinutes, Events events) {
        return new CoolingClock(trace, 0, gapMinutes, events);
    }

    /**
     * Times every stage of a rule.
     *
     * @throws IllegalArgumentException if the trace is empty
     */
    public List<StageTime> time(CoolingRule rule) {
        if (trace.isEmpty()) {
            throw new IllegalArgumentException("no readings to time");
        }
        List<StageTime> times = new ArrayList<>();
        Moment first = Moment.exactly(0);
        Moment previousEnd = Moment.exactly(0);
        for (CoolingRule.Stage stage : rule.stages()) {
            Moment start = start(stage, first, previousEnd);
            Moment end = end(stage);
            if (times.isEmpty()) {
                first = start;
            }
            previousEnd = end;
            times.add(stage.clock() == CoolingRule.Clock.DWELL ? dwell(stage, start) : elapsed(stage, start, end));
        }
        return times;
    }

    private Moment start(CoolingRule.Stage stage, Moment first, Moment previousEnd) {
        return switch (stage.start()) {
            case SAME_AS_FIRST -> first;
            case AFTER_PREVIOUS -> previousEnd;
            case FALLS_THROUGH -> stage.from().map(this::fall).orElse(Moment.exactly(0));
            case START_OF_CHILLING -> Moment.exactly(minutes(events.startOfChilling(), 0));
            case END_OF_COOKING, START_OF_HEATING, END_OF_PREPARATION -> {
                double earliest = minutes(events.endOfHeating(), 0);
                yield new Moment(earliest, Math.max(earliest, minutes(events.latestEndOfHeating(), earliest)));
            }
        };
    }

    private Moment end(CoolingRule.Stage stage) {
        return stage.to()
                .map(this::arrival)
                .orElseGet(() -> events.startOfChilling().isPresent()
                        ? Moment.exactly(minutes(events.startOfChilling(), 0))
                        : new Moment(minutesAt(trace.size() - 1), Double.POSITIVE_INFINITY));
    }

    private StageTime elapsed(CoolingRule.Stage stage, Moment start, Moment end) {
        double shortest = Math.max(0, end.earliest() - start.latest());
        double longest = Math.max(shortest, end.latest() - start.earliest());
        OptionalLong limit = stage.maxMinutes().isPresent()
                ? OptionalLong.of(millisAt(start.latest() + stage.maxMinutes().getAsDouble()))
                : OptionalLong.empty();
        return new StageTime(
                stage,
                shortest,
                longest,
                Double.isFinite(start.earliest()),
                Double.isFinite(end.latest()),
                millisAt(start.latest()),
                earliest(start),
                limit);
    }

    /** The first fall through a boundary: the last instant it was surely above, the first it was surely below. */
    private Moment fall(Boundary boundary) {
        double level = boundary.celsius() - TemperatureUnit.SLACK_CELSIUS;
        int possiblyBelow = firstBelow(level + toleranceCelsius);
        int surelyBelow = firstBelow(level - toleranceCelsius);
        double earliest;
        if (possiblyBelow == 0) {
            earliest = minutes(events.endOfHeating(), Double.NEGATIVE_INFINITY);
        } else if (possiblyBelow == trace.size()) {
            earliest = minutesAt(trace.size() - 1);
        } else {
            earliest = crossing(possiblyBelow - 1, boundary.celsius()).earliest();
        }
        double latest = surelyBelow == 0
                ? 0
                : surelyBelow == trace.size()
                        ? minutesAt(trace.size() - 1)
                        : crossing(surelyBelow - 1, boundary.celsius()).latest();
        return new Moment(earliest, Math.max(earliest, latest));
    }

    /** The last arrival at a boundary. */
    private Moment arrival(Boundary boundary) {
        double level = boundary.celsius() + TemperatureUnit.SLACK_CELSIUS;
        int surelyAbove = lastAbove(level + toleranceCelsius);
        int possiblyAbove = lastAbove(level - toleranceCelsius);
        double latest = possiblyAbove < 0
                ? 0
                : possiblyAbove == trace.size() - 1
                        ? Double.POSITIVE_INFINITY
                        : crossing(possiblyAbove, boundary.celsius()).latest();
        double earliest = surelyAbove < 0
                ? 0
                : surelyAbove == trace.size() - 1
                        ? minutesAt(surelyAbove)
                        : crossing(surelyAbove, boundary.celsius()).earliest();
        return new Moment(Math.min(earliest, latest), latest);
    }

    /** Where the interval after reading {@code i} meets a level: a point on the line, or the whole interval unseen. */
    private Moment crossing(int i, double levelCelsius) {
        double from = minutesAt(i);
        double to = minutesAt(i + 1);
        if (!seesThrough(i)) {
            return new Moment(from, to);
        }
        double share = (trace.celsius(i) - levelCelsius) / (trace.celsius(i) - trace.celsius(i + 1));
        return Moment.exactly(from + Math.min(1, Math.max(0, share)) * (to - from));
    }

    /** All time between a stage's two boundaries from its start on. */
    private StageTime dwell(CoolingRule.Stage stage, Moment start) {
        double upper = stage.from().map(Boundary::celsius).orElse(Double.POSITIVE_INFINITY);
        double lower = stage.to().map(Boundary::celsius).orElse(Double.NEGATIVE_INFINITY);
        double shortest = 0;
        double longest = 0;
        double usedUp = Double.NaN;
        double max = stage.maxMinutes().orElse(Double.POSITIVE_INFINITY);
        for (int i = 0; i + 1 < trace.size(); i++) {
            double minutes = trace.minutesAfter(i);
            double cold = Math.min(trace.celsius(i), trace.celsius(i + 1));
            double hot = Math.max(trace.celsius(i), trace.celsius(i + 1));
            if (seesThrough(i)) {
                double inside = minutes * BandTime.share(cold, hot, lower, upper);
                if (Double.isNaN(usedUp) && shortest + inside > max) {
                    usedUp = minutesAt(i) + entry(i, lower, upper) + (max - shortest);
                }
                shortest += inside;
                longest += inside;
            } else {
                boolean surely = cold - toleranceCelsius > lower && hot + toleranceCelsius < upper;
                boolean possibly = hot + toleranceCelsius > lower && cold - toleranceCelsius < upper;
                if (surely && Double.isNaN(usedUp) && shortest + minutes > max) {
                    usedUp = minutesAt(i) + (max - shortest);
                }
                shortest += surely ? minutes : 0;
                longest += possibly ? minutes : 0;
            }
        }
        boolean startLogged = trace.celsius(0) >= upper - TemperatureUnit.SLACK_CELSIUS + toleranceCelsius
                || events.endOfHeating().isPresent();
        boolean ended = trace.celsius(trace.size() - 1) <= lower + TemperatureUnit.SLACK_CELSIUS - toleranceCelsius;
        if (events.endOfHeating().isPresent() && trace.celsius(0) < upper) {
            longest += Math.max(0, -minutes(events.endOfHeating(), 0));
        }
        OptionalLong limit = stage.maxMinutes().isEmpty()
                ? OptionalLong.empty()
                : OptionalLong.of(millisAt(
                        Double.isNaN(usedUp)
                                ? (ended ? start.latest() + max : minutesAt(trace.size() - 1) + max - shortest)
                                : usedUp));
        return new StageTime(
                stage,
                shortest,
                startLogged && ended ? longest : Double.POSITIVE_INFINITY,
                startLogged,
                ended,
                millisAt(Double.isFinite(start.latest()) ? start.latest() : 0),
                earliest(start),
                limit);
    }

    /** Minutes into the interval after reading {@code i} at which its line enters the band. */
    private double entry(int i, double lower, double upper) {
        double first = trace.celsius(i);
        if (first <= upper && first >= lower) {
            return 0;
        }
        return crossing(i, first > upper ? upper : lower).earliest() - minutesAt(i);
    }

    private boolean seesThrough(int i) {
        return trace.minutesAfter(i) <= seeThroughMinutes;
    }

    private int firstBelow(double level) {
        int i = 0;
        while (i < trace.size() && trace.celsius(i) >= level) {
            i++;
        }
        return i;
    }

    private int lastAbove(double level) {
        int i = trace.size() - 1;
        while (i >= 0 && trace.celsius(i) <= level) {
            i--;
        }
        return i;
    }

    private double minutesAt(int i) {
        return (trace.millis(i) - trace.firstMillis()) / 60_000.0;
    }

    private double minutes(OptionalLong millis, double otherwise) {
        return millis.isPresent() ? (millis.getAsLong() - trace.firstMillis()) / 60_000.0 : otherwise;
    }

    private OptionalLong earliest(Moment start) {
        return Double.isFinite(start.earliest()) ? OptionalLong.of(millisAt(start.earliest())) : OptionalLong.empty();
    }

    private long millisAt(double minutes) {
        return trace.firstMillis() + Math.round(minutes * 60_000);
    }

    /** A stage's time judged against its limit. */
    public static Verdict judge(StageTime time) {
        double limit = time.stage().maxMinutes().orElse(Double.POSITIVE_INFINITY);
        Comparison comparison = time.stage().comparison();
        if (comparison.holds(time.longestMinutes(), limit, Check.FIGURE_SLACK)) {
            return Verdict.MET;
        }
        return comparison.holds(time.shortestMinutes(), limit, Check.FIGURE_SLACK)
                ? Verdict.NOT_PROVEN
                : Verdict.NOT_MET;
    }
}
