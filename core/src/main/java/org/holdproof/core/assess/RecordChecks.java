package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.GapLimit;
import org.holdproof.core.log.LogFault;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/** Is the record good enough to be judged: does it cover the stages, often enough? */
final class RecordChecks {
    private final Evidence evidence;

    RecordChecks(Evidence evidence) {
        this.evidence = evidence;
    }

    List<Check> checks() {
        return List.of(coverage(), interval(), ThermometerCheck.worst(evidence));
    }

    /** Every stage that heats or chills must have core readings from its start to its end; a gap inside it is judged by the checks it touches. */
    private Check coverage() {
        double missing = 0;
        List<String> uncovered = new ArrayList<>();
        for (Stage stage : evidence.batch().stages()) {
            if (!needsReadings(stage.kind())) {
                continue;
            }
            Span span = evidence.timeline().span(stage);
            double blind = 0;
            for (Trace trace : evidence.core()) {
                blind = Math.max(blind, blindMinutes(trace, span));
            }
            if (blind > 0) {
                uncovered.add(stage.kind().title() + " (" + Wording.minutes(blind) + ")");
                missing = Math.max(missing, blind);
            }
        }
        boolean met = uncovered.isEmpty();
        return Check.of("record.coverage", "Record covers the stages")
                .required("core readings from the start to the end of each stage that heats or chills")
                .verdict(met ? Verdict.MET : Verdict.NOT_PROVEN)
                .measured(Bounded.exactly(missing))
                .limit(0)
                .comparison(Comparison.AT_MOST)
                .unit("min")
                .why(
                        met
                                ? "Each stage has core readings from its start to its end."
                                : "No core reading at the start or the end of: " + String.join(", ", uncovered) + ".")
                .next(met ? "" : "Add the missing part of the log, or mend the stage times if they are wrong.")
                .build();
    }

    private static boolean needsReadings(Stage.Kind kind) {
        return switch (kind) {
            case SMOKE, BATH, HOT_HOLD, CHILL, REHEAT -> true;
            case BAG, STORE, SERVE, FREEZE, TIME_ONLY -> false;
        };
    }

    /** Minutes at either end of a span without a reading, where that is more than a gap. */
    private static double blindMinutes(Trace whole, Span span) {
        Trace trace = whole.between(span.fromMillis(), span.toMillis());
        if (trace.isEmpty()) {
            return span.minutes();
        }
        int first = whole.indexFrom(span.fromMillis());
        int last = whole.indexFrom(span.toMillis() + 1) - 1;
        double before = (trace.firstMillis() - span.fromMillis()) / 60_000.0;
        double after = (span.toMillis() - trace.lastMillis()) / 60_000.0;
        boolean seenBefore = first > 0 ? !GapLimit.isGap(whole, first - 1) : before <= limitAt(whole, first);
        boolean seenAfter = last + 1 < whole.size() ? !GapLimit.isGap(whole, last) : after <= limitAt(whole, last - 1);
        return (seenBefore ? 0 : before) + (seenAfter ? 0 : after);
    }

    /** The limit by the rhythm at an end of the log; with one reading, the least there is. */
    private static double limitAt(Trace trace, int interval) {
        return interval >= 0 && interval + 1 < trace.size() ? GapLimit.around(trace, interval) : GapLimit.FLOOR_MINUTES;
    }

    /** The longest interval anywhere in what must be read, and its place. */
    private Check interval() {
        double longest = 0;
        Optional<Span> where = Optional.empty();
        String channel = "";
        for (Span span : read()) {
            for (Trace trace : evidence.within(span)) {
                for (int i = 0; i + 1 < trace.size(); i++) {
                    if (trace.minutesAfter(i) > longest) {
                        longest = trace.minutesAfter(i);
                        where = Optional.of(new Span(trace.millis(i), trace.millis(i + 1)));
                        channel = trace.channel();
                    }
                }
            }
        }
        boolean met =
                Check.judge(Bounded.exactly(longest), Comparison.AT_MOST, GapLimit.CEILING_MINUTES) == Verdict.MET;
        String place = where.map(span -> " (" + evidence.wording().clock(span.fromMillis()) + " to "
                        + evidence.wording().clock(span.toMillis()) + ")")
                .orElse("");
        Check.Builder check = Check.of("record.interval", "Read often enough")
                .required("a reading at least every " + Wording.minutes(GapLimit.CEILING_MINUTES)
                        + " (FSIS Cooking Guideline 2021, page 75)")
                .verdict(met ? Verdict.MET : Verdict.NOT_PROVEN)
                .measured(Bounded.exactly(longest))
                .limit(GapLimit.CEILING_MINUTES)
                .comparison(Comparison.AT_MOST)
                .unit("min")
                .why("The longest interval between core readings while the food was heated, held hot or chilled is "
                        + Wording.minutes(longest) + (met ? "" : place) + ".")
                .next(met ? "" : "Add the missing part of the log; set the logger to a shorter interval.");
        return met || channel.isEmpty() ? check.build() : check.channel(channel).build();
    }

    /** The stages that must be read, each from the end of the one before where nothing else lies between them. */
    private List<Span> read() {
        List<Span> read = new ArrayList<>();
        long before = Long.MAX_VALUE;
        for (Stage stage : evidence.batch().stages()) {
            Span span = evidence.timeline().span(stage);
            if (needsReadings(stage.kind())) {
                read.add(new Span(Math.min(before, span.fromMillis()), span.toMillis()));
                before = span.toMillis();
            } else if (stage.kind() != Stage.Kind.BAG) {
                before = Long.MAX_VALUE;
            }
        }
        return read;
    }

    List<Caution> cautions(ProbeLog log) {
        List<Caution> cautions = new ArrayList<>(ThermometerCheck.allCautions(evidence));
        for (LogFault.Kind kind : LogFault.Kind.values()) {
            List<LogFault> faults =
                    log.faults().stream().filter(fault -> fault.kind() == kind).toList();
            if (!faults.isEmpty() && worthSaying(kind)) {
                LogFault first = faults.get(0);
                cautions.add(new Caution(
                        "log." + kind.name().toLowerCase(Locale.ROOT).replace('_', '-'),
                        "In the log: " + kind.title() + (faults.size() > 1 ? ", in " + faults.size() + " places" : "")
                                + ", first at line " + first.firstLine() + ": " + first.detail()));
            }
        }
        return cautions;
    }

    private static boolean worthSaying(LogFault.Kind kind) {
        return switch (kind) {
            case NEWEST_FIRST, REPEATED_CLOCK -> false;
            default -> true;
        };
    }
}
