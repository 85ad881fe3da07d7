package org.holdproof.core.assess;

import java.util.List;
import java.util.Optional;
import org.holdproof.core.assess.TimeAsControl.TimeOut;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Account;
import org.holdproof.core.course.Accounts;
import org.holdproof.core.course.CoreBounds;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.course.Spell;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.TimeLimit;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/**
 * Was food that was kept by time alone used within its time? Its spells add up; it must have started cold or hot enough
 * by the log, less or plus the tolerance, and bear its mark where the rule asks for one. One rule kept is enough.
 */
final class TimeOnlyCheck {
    static final String ID = "time-only";

    private final Evidence evidence;
    private final List<Stage> spells;

    private final Accounts accounts;

    TimeOnlyCheck(Evidence evidence, Accounts accounts) {
        this.evidence = evidence;
        this.accounts = accounts;
        this.spells = evidence.timeline().all(Stage.Kind.TIME_ONLY);
    }

    Optional<Check> check() {
        List<TimeLimit> limits = evidence.authority().timeLimits();
        if (spells.isEmpty()) {
            return Optional.empty();
        }
        if (limits.isEmpty()) {
            return Optional.of(Check.of(ID, "Used within its time")
                    .required("a rule by which time alone keeps food safe")
                    .why("The record keeps the food by time alone. "
                            + evidence.authority().title()
                            + " as held here has no such rule: ask the authority, or whoever approved the plan.")
                    .next("Do not serve on this record.")
                    .window(evidence.timeline().span(spells.get(0)))
                    .build());
        }
        Bounded minutes = Bounded.exactly(
                out(limits.get(0)).stream().mapToDouble(Double::doubleValue).sum());
        List<Account> readings = accounts.probes();
        Optional<TimeLimit> kept = limits.stream()
                .filter(limit -> readings.stream().allMatch(account -> keeps(limit, account, true)))
                .findFirst();
        boolean possible =
                limits.stream().anyMatch(limit -> readings.stream().allMatch(account -> keeps(limit, account, false)));
        TimeLimit limit = kept.orElse(limits.get(0));
        Verdict verdict = kept.isPresent() ? Verdict.MET : possible ? Verdict.NOT_PROVEN : Verdict.NOT_MET;
        return Optional.of(Check.of(ID, "Used within its time")
                .required("out of temperature control for "
                        + limit.timeComparison().words() + " "
                        + Wording.minutes(limit.maxMinutes())
                        + (limit.marked() ? ", marked with its time" : "") + start(limit))
                .citation(limit.citation())
                .verdict(verdict)
                .measured(minutes)
                .limit(limit.maxMinutes())
                .comparison(limit.timeComparison())
                .unit("min")
                .why(why(minutes, limit))
                .next("Do not serve on this record. " + limit.disposition() + ".")
                .window(evidence.timeline().span(spells.get(0)))
                .build());
    }

    private String start(TimeLimit limit) {
        return limit.coldStart()
                        .map(cold ->
                                ", started at or below " + evidence.wording().boundary(cold))
                        .orElse("")
                + limit.hotStart()
                        .map(hot -> (limit.coldStart().isPresent() ? " or" : ", started") + " at or above "
                                + evidence.wording().boundary(hot))
                        .orElse("");
    }

    private String why(Bounded minutes, TimeLimit limit) {
        String out = "It was out for " + Wording.minutes(minutes.nominal()) + " in all";
        Account first = accounts.probes().get(0);
        int at = pieceAt(first, start());
        String started = at < 0 || !first.bounds().isRead(at)
                ? "; no reading shows what it started at"
                : ", starting at "
                        + evidence.wording().temperature(first.bounds().lineFrom(at));
        boolean marked = spells.stream().noneMatch(stage -> stage.mark().isEmpty());
        return out + started + (limit.marked() && !marked ? "; the record names no mark on the container" : "") + ".";
    }

    /** Whether a rule is kept by the readings as far against the cook, or for, as the tolerance allows. */
    private boolean keeps(TimeLimit limit, Account account, boolean atWorst) {
        CoreBounds core = account.bounds();
        int at = pieceAt(account, start());
        if (at < 0 || !core.isRead(at)) {
            return !atWorst && limit.timeComparison().holds(sum(limit), limit.maxMinutes(), Check.FIGURE_SLACK);
        }
        double tolerance = (atWorst ? 1 : -1) * evidence.toleranceCelsius();
        double begin = core.lineFrom(at);
        boolean fromHot = limit.hotStart().isPresent()
                && (limit.coldStart().isEmpty()
                        || begin
                                > (limit.coldStart().get().celsius()
                                                + limit.hotStart().get().celsius())
                                        / 2);
        double warmest = begin + tolerance;
        for (int i = at; i < core.size(); i++) {
            warmest = Math.max(
                    warmest,
                    atWorst ? core.high(i) : core.isRead(i) ? core.lineTo(i) + tolerance : Double.NEGATIVE_INFINITY);
        }
        return TimeAsControl.keeps(
                limit,
                new TimeOut(
                        out(limit),
                        begin + (fromHot ? -tolerance : tolerance),
                        warmest,
                        spells.stream().noneMatch(stage -> stage.mark().isEmpty()),
                        spells.size() - 1));
    }

    /**
     * The spells out of temperature control, in minutes. Food with one period only is out from the moment it left hot or
     * cold until it was used, whatever its stage's times say.
     */
    private List<Double> out(TimeLimit limit) {
        List<Span> stages =
                spells.stream().map(stage -> evidence.timeline().span(stage)).toList();
        if (limit.count() != TimeLimit.Count.ONE_PERIOD) {
            double found = accounts.probes().stream()
                    .mapToDouble(account -> account.spells().stream()
                            .filter(Spell::timeOnly)
                            .mapToDouble(spell -> spell.minutes().worst())
                            .sum())
                    .max()
                    .orElse(0);
            double said = stages.stream().mapToDouble(Span::minutes).sum();
            return found > said
                    ? List.of(found)
                    : stages.stream().map(Span::minutes).toList();
        }
        long from = accounts.probes().stream()
                .flatMap(account -> account.spells().stream())
                .filter(Spell::timeOnly)
                .mapToLong(spell -> spell.span().fromMillis())
                .min()
                .orElse(Long.MAX_VALUE);
        long to = evidence.batch()
                .ending()
                .map(ending -> ending.at().toEpochMilli())
                .orElse(Long.MIN_VALUE);
        Span whole = new Span(
                Math.min(from, stages.get(0).fromMillis()),
                Math.max(to, stages.get(stages.size() - 1).toMillis()));
        return List.of(whole.minutes());
    }

    private double sum(TimeLimit limit) {
        return out(limit).stream().mapToDouble(Double::doubleValue).sum();
    }

    /** When the food's time began: with its stage, or with the spell that stage falls into. */
    private long start() {
        return Math.min(
                evidence.timeline().span(spells.get(0)).fromMillis(),
                accounts.probes().stream()
                        .flatMap(account -> account.spells().stream())
                        .filter(Spell::timeOnly)
                        .mapToLong(spell -> spell.span().fromMillis())
                        .min()
                        .orElse(Long.MAX_VALUE));
    }

    private static int pieceAt(Account account, long millis) {
        for (int i = 0; i < account.bounds().size(); i++) {
            if (account.bounds().fromMillis(i) <= millis
                    && millis < account.bounds().toMillis(i)) {
                return i;
            }
        }
        return -1;
    }
}
