package org.holdproof.core.assess;

import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.Instrument;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.course.InstrumentStanding;
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

/** Is the record good enough to be judged: does it cover the stages, often enough, with a thermometer to be trusted? */
final class RecordChecks {
    private final Evidence evidence;

    RecordChecks(Evidence evidence) {
        this.evidence = evidence;
    }

    List<Check> checks() {
        return List.of(coverage(), interval(), instrument());
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
            for (Trace trace : evidence.within(span)) {
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
    private double blindMinutes(Trace trace, Span span) {
        if (trace.isEmpty()) {
            return span.minutes();
        }
        double gap = evidence.gapMinutes(trace);
        double before = (trace.firstMillis() - span.fromMillis()) / 60_000.0;
        double after = (span.toMillis() - trace.lastMillis()) / 60_000.0;
        return (before > gap ? before : 0) + (after > gap ? after : 0);
    }

    private Check interval() {
        double longest = evidence.core().stream()
                .mapToDouble(GapLimit::medianMinutes)
                .max()
                .orElse(0);
        Verdict verdict = Check.judge(Bounded.exactly(longest), Comparison.AT_MOST, GapLimit.CEILING_MINUTES);
        return Check.of("record.interval", "Read often enough")
                .required("a reading at least every " + Wording.minutes(GapLimit.CEILING_MINUTES)
                        + " (FSIS Cooking Guideline 2021, page 75)")
                .verdict(verdict == Verdict.MET ? Verdict.MET : Verdict.NOT_PROVEN)
                .measured(Bounded.exactly(longest))
                .limit(GapLimit.CEILING_MINUTES)
                .comparison(Comparison.AT_MOST)
                .unit("min")
                .why("The usual interval between core readings is " + Wording.minutes(longest) + ".")
                .next("Set the logger to a shorter interval.")
                .build();
    }

    private Check instrument() {
        Instrument instrument = evidence.batch().instrument();
        OptionalDouble allowed = evidence.authority().toleranceCelsius();
        OptionalDouble error = InstrumentStanding.of(instrument).errorCelsius();
        String rule = allowed.isPresent()
                ? "a thermometer checked and true within " + evidence.wording().difference(allowed.getAsDouble())
                : "a thermometer checked against a known temperature";
        if (error.isEmpty()) {
            return Check.of("instrument", "Thermometer trusted")
                    .required(rule)
                    .verdict(Verdict.NOT_PROVEN)
                    .limit(allowed)
                    .comparison(Comparison.AT_MOST)
                    .why("The batch record holds no check of thermometer " + instrument.id() + ".")
                    .next("Check it in ice water or boiling water and add the result to the batch record.")
                    .build();
        }
        double off = Math.abs(error.getAsDouble());
        Verdict verdict = allowed.isPresent()
                ? Check.judge(Bounded.exactly(off), Comparison.AT_MOST, allowed.getAsDouble())
                : Verdict.MET;
        String corrected = off < 0.05
                ? "Its last check found no error."
                : String.format(
                        Locale.ROOT,
                        "Its last check found it %s too %s; every reading was corrected by that much.",
                        evidence.wording().difference(off),
                        error.getAsDouble() > 0 ? "high" : "low");
        return Check.of("instrument", "Thermometer trusted")
                .required(rule)
                .verdict(verdict == Verdict.MET ? Verdict.MET : Verdict.NOT_PROVEN)
                .measured(Bounded.exactly(off))
                .limit(allowed)
                .comparison(Comparison.AT_MOST)
                .unit("°C")
                .why(corrected + (verdict == Verdict.MET ? "" : " It is outside what the authority allows."))
                .next("Take the thermometer out of use until it is serviced and checked again.")
                .build();
    }

    List<Caution> cautions(ProbeLog log) {
        List<Caution> cautions = new ArrayList<>();
        overdue().ifPresent(cautions::add);
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

    private Optional<Caution> overdue() {
        Instrument instrument = evidence.batch().instrument();
        OptionalDouble every = instrument.checkEveryDays().isPresent()
                ? instrument.checkEveryDays()
                : evidence.authority().checkEveryDays();
        if (instrument.lastCheck().isEmpty() || every.isEmpty()) {
            return Optional.empty();
        }
        LocalDate cooked = Instant.ofEpochMilli(evidence.timeline().log().fromMillis())
                .atZone(evidence.batch().kitchen().zone())
                .toLocalDate();
        long days = ChronoUnit.DAYS.between(instrument.lastCheck().get().date(), cooked);
        return days <= every.getAsDouble()
                ? Optional.empty()
                : Optional.of(new Caution(
                        "instrument.overdue",
                        String.format(
                                Locale.ROOT,
                                "The thermometer was last checked %d days before the cook; it is due every %.0f days.",
                                days,
                                every.getAsDouble())));
    }
}
