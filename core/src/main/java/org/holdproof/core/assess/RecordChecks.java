package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.holdproof.core.batch.Ending;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Account;
import org.holdproof.core.course.Accounts;
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
    private static final int MOST_NAMED = 3;

    private final Evidence evidence;

    private final Accounts accounts;

    RecordChecks(Evidence evidence, Accounts accounts) {
        this.evidence = evidence;
        this.accounts = accounts;
    }

    List<Check> checks() {
        return List.of(coverage(), end(), interval(), ThermometerCheck.worst(evidence));
    }

    /** From the first stage to the end every minute must be seen, or proven hot or cold by the medium's log. */
    private Check coverage() {
        Account blind = accounts.probes().stream()
                .max(Comparator.comparingDouble(RecordChecks::unseenMinutes))
                .orElseThrow();
        List<Span> unseen = blind.unseen();
        double missing = unseenMinutes(blind);
        boolean met = unseen.isEmpty();
        return Check.of("record.coverage", "Record covers the batch")
                .required(
                        "core readings, or the medium's where they prove hot or cold, from the first stage to the end")
                .verdict(met ? Verdict.MET : Verdict.NOT_PROVEN)
                .measured(Bounded.exactly(missing))
                .limit(0)
                .unit("min")
                .why(
                        met
                                ? "Every minute from the first stage to the end is accounted for."
                                : "The record does not say what happened to the core (" + blind.channel() + ") "
                                        + unseen.stream()
                                                .limit(MOST_NAMED)
                                                .map(span -> evidence.wording().clock(span.fromMillis()) + " to "
                                                        + evidence.wording().clock(span.toMillis()))
                                                .collect(Collectors.joining(", "))
                                        + (unseen.size() > MOST_NAMED
                                                ? " and in " + (unseen.size() - MOST_NAMED) + " more places"
                                                : "")
                                        + ".")
                .next("Add the missing part of the log or of the medium's, or mend the times if they are wrong.")
                .channel(blind.channel())
                .window(unseen.stream().findFirst())
                .build();
    }

    private static double unseenMinutes(Account account) {
        return account.unseen().stream().mapToDouble(Span::minutes).sum();
    }

    private Check end() {
        Optional<Ending> ending = evidence.batch().ending();
        return Check.of("record.end", "Record says how it ended")
                .required("what became of the food: served, discarded, sold on or still in store")
                .verdict(ending.isPresent() ? Verdict.MET : Verdict.NOT_PROVEN)
                .why(ending.map(end -> "Ended "
                                + evidence.wording().clock(end.at().toEpochMilli()) + ": "
                                + end.how().title() + ".")
                        .orElse("The record does not say what became of the food."))
                .next("Add the end of the batch to its record.")
                .build();
    }

    private static boolean needsReadings(Stage.Kind kind) {
        return switch (kind) {
            case SMOKE, BATH, HOT_HOLD, CHILL, REHEAT -> true;
            case BAG, STORE, SERVE, FREEZE, TIME_ONLY -> false;
        };
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
