package org.holdproof.core.standing;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.assess.RowJudgement;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/**
 * How long the core must still stay at its present temperature until a published row is proven, at the probe that needs
 * longest. The row is the one soonest met of those at or below the reading less the tolerance; time already spent there
 * without a break counts.
 *
 * @param channel the probe
 * @param celsius its last reading, corrected, in °C
 * @param creditedCelsius that less the tolerance
 * @param row the row that governs; empty where no row is as low as the reading: nothing is credited
 * @param minutesLeft minutes from now until the row is proven
 * @param projection when the lowest row's temperature would be reached at the present rate; a projection, no proof
 * @param words all of it in a few sentences
 */
public record LethalityOutlook(
        String channel,
        double celsius,
        double creditedCelsius,
        Optional<LethalityRow> row,
        OptionalDouble minutesLeft,
        Optional<Projection> projection,
        String words) {

    /**
     * A straight line drawn on from the last readings, where the rise quickens no more. A core slows as it nears what
     * heats it: expect it later.
     *
     * @param celsiusAnHour the rise over the last readings, in °C an hour
     * @param row the table's lowest row
     * @param reachesMillis when a reading would credit that row, in milliseconds since 1970-01-01T00:00Z
     */
    public record Projection(double celsiusAnHour, LethalityRow row, long reachesMillis) {}

    /** The readings a rate of rise is taken from. */
    private static final double RATE_MINUTES = 30;

    private static final double FEWEST_RATE_MINUTES = 10;

    private record Need(Trace trace, double credited, Optional<LethalityRow> row, double minutes) {}

    /** The outlook of a cook with readings, judged by rows of which at least one probe has met none yet. */
    static Optional<LethalityOutlook> of(
            Evidence evidence, List<LethalityRow> rows, Optional<Stage> underWay, long presentMillis) {
        Optional<Span> cook = evidence.timeline().cook();
        if (rows.isEmpty() || cook.isEmpty()) {
            return Optional.empty();
        }
        return evidence.within(cook.get()).stream()
                .filter(trace -> !trace.isEmpty())
                .filter(trace -> RowJudgement.of(trace, rows, evidence.toleranceCelsius(), evidence.gapMinutes(trace))
                                .verdict()
                        != Verdict.MET)
                .map(trace -> need(evidence, trace, rows, presentMillis))
                .max(Comparator.comparingDouble(Need::minutes)
                        .thenComparing(
                                Comparator.comparingDouble(Need::credited).reversed()))
                .map(need -> outlook(evidence, need, rows, underWay, presentMillis));
    }

    private static Need need(Evidence evidence, Trace trace, List<LethalityRow> rows, long presentMillis) {
        double credited = trace.celsius(trace.size() - 1) - evidence.toleranceCelsius();
        double silent = (presentMillis - trace.lastMillis()) / 60_000.0;
        Need soonest = new Need(trace, credited, Optional.empty(), Double.POSITIVE_INFINITY);
        if (silent > evidence.gapMinutes(trace)) {
            return soonest;
        }
        for (LethalityRow row : rows) {
            double level = row.at().celsius() - TemperatureUnit.SLACK_CELSIUS;
            if (credited < level) {
                continue;
            }
            double left = row.seconds() / 60 - spentAtOrAbove(evidence, trace, level) - silent;
            if (left < soonest.minutes()) {
                soonest = new Need(trace, credited, Optional.of(row), Math.max(0, left));
            }
        }
        return soonest;
    }

    /** Minutes of the unbroken spell at or above a level that the last reading ends. */
    private static double spentAtOrAbove(Evidence evidence, Trace trace, double level) {
        double gap = evidence.gapMinutes(trace);
        int first = trace.size() - 1;
        while (first > 0
                && trace.celsius(first - 1) - evidence.toleranceCelsius() >= level
                && trace.minutesAfter(first - 1) <= gap) {
            first--;
        }
        return (trace.lastMillis() - trace.millis(first)) / 60_000.0;
    }

    private static LethalityOutlook outlook(
            Evidence evidence, Need need, List<LethalityRow> rows, Optional<Stage> underWay, long presentMillis) {
        double celsius = need.trace().celsius(need.trace().size() - 1);
        Wording wording = evidence.wording();
        String now = need.trace().channel() + " reads " + wording.temperature(celsius)
                + (evidence.toleranceCelsius() > 0 ? ", less tolerance " + wording.temperature(need.credited()) : "");
        if (need.row().isPresent()) {
            LethalityRow row = need.row().get();
            long at = presentMillis + (long) Math.ceil(need.minutes() * 60_000);
            return new LethalityOutlook(
                    need.trace().channel(),
                    celsius,
                    need.credited(),
                    need.row(),
                    OptionalDouble.of(need.minutes()),
                    Optional.empty(),
                    leaves(evidence, need, row)
                            .map(millis -> now + ", and falls: at its present pace it leaves "
                                    + wording.boundary(row.at()) + " at " + wording.clock(millis) + ", before the "
                                    + Wording.minutes(Math.ceil(need.minutes())) + " it still needs there.")
                            .orElse(now + ": " + Wording.minutes(Math.ceil(need.minutes())) + " more there proves "
                                    + wording.boundary(row.at()) + " for " + row.printedTime() + ", at "
                                    + wording.clock(upToTheMinute(at)) + "."));
        }
        double silent = (presentMillis - need.trace().lastMillis()) / 60_000.0;
        if (silent > evidence.gapMinutes(need.trace())) {
            return blind(
                    need,
                    celsius,
                    need.trace().channel() + " has had no reading for " + Wording.minutes(silent)
                            + ": nothing is credited while nobody looks.");
        }
        LethalityRow lowest = rows.stream()
                .min(Comparator.comparingDouble(row -> row.at().celsius()))
                .orElseThrow();
        String below =
                now + ": below the table's lowest row, " + wording.boundary(lowest.at()) + ", no time is long enough.";
        double level = lowest.at().celsius() + evidence.toleranceCelsius();
        OptionalDouble setPoint = underWay.map(Stage::setPointCelsius).orElse(OptionalDouble.empty());
        if (setPoint.isPresent() && setPoint.getAsDouble() < level) {
            return blind(
                    need,
                    celsius,
                    below + " Nor will it be: the set point is " + wording.temperature(setPoint.getAsDouble())
                            + ", and " + wording.temperature(level) + " must be read.");
        }
        Optional<Projection> projection = projection(need.trace(), lowest, level);
        return new LethalityOutlook(
                need.trace().channel(),
                celsius,
                need.credited(),
                Optional.empty(),
                OptionalDouble.empty(),
                projection,
                below
                        + projection
                                .map(line -> " Projection only, a straight line at "
                                        + wording.difference(line.celsiusAnHour()) + " an hour: "
                                        + wording.temperature(level) + " about "
                                        + wording.clock(line.reachesMillis()) + " or later, then "
                                        + lowest.printedTime() + " there.")
                                .orElse(""));
    }

    /** When a falling core leaves the row's temperature, if that is before the row is proven. */
    private static Optional<Long> leaves(Evidence evidence, Need need, LethalityRow row) {
        double lowest = row.at().celsius() + evidence.toleranceCelsius();
        double last = need.trace().celsius(need.trace().size() - 1);
        return Trend.of(need.trace())
                .filter(trend -> trend.surely() && trend.celsiusAMinute() < 0)
                .map(trend -> (lowest - last) / trend.celsiusAMinute())
                .filter(minutes -> minutes < need.minutes())
                .map(minutes -> need.trace().lastMillis() + Math.round(minutes * 60_000));
    }

    private static LethalityOutlook blind(Need need, double celsius, String words) {
        return new LethalityOutlook(
                need.trace().channel(),
                celsius,
                need.credited(),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                words);
    }

    private static Optional<Projection> projection(Trace trace, LethalityRow lowest, double levelCelsius) {
        int last = trace.size() - 1;
        int first = last;
        while (first > 0 && (trace.lastMillis() - trace.millis(first - 1)) / 60_000.0 <= RATE_MINUTES) {
            first--;
        }
        double minutes = (trace.lastMillis() - trace.millis(first)) / 60_000.0;
        double rise = trace.celsius(last) - trace.celsius(first);
        boolean quickens = Trend.of(trace).filter(Trend::quickening).isPresent();
        if (minutes < FEWEST_RATE_MINUTES || rise <= 0 || quickens) {
            return Optional.empty();
        }
        double wait = (levelCelsius - trace.celsius(last)) / (rise / minutes);
        return Optional.of(new Projection(
                rise / minutes * 60, lowest, trace.lastMillis() + (long) Math.ceil(Math.max(0, wait) * 60_000)));
    }

    private static long upToTheMinute(long millis) {
        return -Math.floorDiv(-millis, 60_000L) * 60_000;
    }
}
