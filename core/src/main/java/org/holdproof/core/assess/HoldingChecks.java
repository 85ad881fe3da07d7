package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.batch.Ending;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Account;
import org.holdproof.core.course.Accounts;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.course.Limits;
import org.holdproof.core.course.Spell;
import org.holdproof.core.course.Spell.State;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.HotAllowance;
import org.holdproof.core.rules.HotAllowance.Outcome;
import org.holdproof.core.rules.TimeLimit;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/**
 * Was the food kept hot, or cold, from lethality to its end? Found from the readings; the coldest probe answers for hot,
 * the warmest for cold. A short time under hot is judged by what the authority allows; where no document gives a figure,
 * by this program's convention.
 */
public final class HoldingChecks {
    public static final String HOT = "hot-hold";
    public static final String COLD = "cold-store";
    public static final String UNDER_HOT = "under-hot";

    /** The longest unnamed time between the cook and what follows that is no hold, in minutes; this program's convention. */
    private static final double HANDLING_MINUTES = 30;

    private final Evidence evidence;
    private final Accounts accounts;

    HoldingChecks(Evidence evidence, Accounts accounts) {
        this.evidence = evidence;
        this.accounts = accounts;
    }

    // ---- hot

    List<Check> hot() {
        List<Check> checks = new ArrayList<>();
        Optional<HoldingRule> rule = accounts.limits().hotRule();
        for (Stage stage : evidence.timeline().all(Stage.Kind.HOT_HOLD)) {
            rule.ifPresent(found -> held(found, evidence.timeline().span(stage)).ifPresent(checks::add));
        }
        if (rule.isEmpty()) {
            unheld().ifPresent(checks::add);
        }
        return checks;
    }

    /** A hold under an authority whose figure is not held here. */
    private Optional<Check> unheld() {
        Optional<Span> named = evidence.timeline().all(Stage.Kind.HOT_HOLD).stream()
                .map(stage -> evidence.timeline().span(stage))
                .filter(span -> span.minutes() > HANDLING_MINUTES)
                .findFirst();
        Optional<Span> found = named.or(() -> accounts.probes().stream()
                .flatMap(account -> account.longestHold().stream())
                .filter(span -> span.minutes() > HANDLING_MINUTES)
                .findFirst());
        return found.map(span -> Check.of(HOT, "Held hot enough")
                .required("a hot-holding temperature")
                .why("The food was " + (named.isPresent() ? "in a hot hold" : "kept hot after the cook") + " for "
                        + Wording.minutes(span.minutes()) + ". " + notHeld("hot holding"))
                .next("Do not serve on this record. Ask the authority, or judge the hold by the approved HACCP plan.")
                .window(span)
                .build());
    }

    private String notHeld(String what) {
        return evidence.authority().title() + " as held here has no figure for " + what
                + ": ask the authority, or whoever approved the plan.";
    }

    /**
     * A stage called a hot hold must be hot, once the food is lethal: until then it is still being cooked. What the authority allows under hot once, or before service, is judged apart;
     * where its document excepts no time, any is a miss.
     */
    private Optional<Check> held(HoldingRule rule, Span stage) {
        record Held(Account account, Bounded celsius, Verdict verdict) {}
        double limit = rule.limit().orElseThrow().celsius();
        Optional<Held> coldestProbe = accounts.probes().stream()
                .filter(account -> account.lethalMillis().orElse(stage.fromMillis()) < stage.toMillis())
                .map(account -> {
                    Bounded coldest = coldest(account, stage);
                    Verdict plain = Verdict.of(coldest, rule.comparison(), limit, TemperatureUnit.SLACK_CELSIUS);
                    return new Held(account, coldest, excused(account, stage) ? Verdict.MET : plain);
                })
                .max(Comparator.comparing(Held::verdict)
                        .thenComparingDouble(held -> -held.celsius().nominal()));
        if (coldestProbe.isEmpty()) {
            return Optional.empty();
        }
        Held governing = coldestProbe.get();
        TemperatureUnit unit = rule.limit().get().unit();
        String at = evidence.wording().boundary(rule.limit().get());
        boolean below = governing.verdict() == Verdict.MET
                && !rule.comparison().holds(governing.celsius().worst(), limit, TemperatureUnit.SLACK_CELSIUS);
        Check.Builder check = Check.of(HOT, "Held hot enough")
                .required("core " + rule.comparison().words() + " " + at + " throughout the hot hold"
                        + (below ? ", but for what the authority allows" : ""))
                .citation(rule.citation())
                .verdict(governing.verdict())
                .comparison(rule.comparison())
                .why("The coldest probe (" + governing.account().channel() + ") "
                        + (Double.isInfinite(governing.celsius().worst())
                                ? "was not read throughout the hot hold; a gap hides what happened in it."
                                : "fell to "
                                        + evidence.wording()
                                                .temperature(governing.celsius().nominal())
                                        + " with a tolerance of "
                                        + evidence.wording().difference(evidence.toleranceCelsius())
                                        + (below ? "; the time under hot is judged on its own." : ".")))
                .next("Do not serve on this record. " + disposition(rule))
                .channel(governing.account().channel())
                .window(stage);
        return Optional.of(
                below
                        ? check.build()
                        : check.measured(inUnit(governing.celsius(), unit))
                                .limit(rule.limit().get().value())
                                .unit(unit.symbol())
                                .build());
    }

    /** Whether the authority's own document allows the time under hot in a hold, or it ran into service. */
    private boolean excused(Account account, Span stage) {
        boolean documented = evidence.authority()
                .hotAllowance()
                .filter(rule -> rule.count() != TimeLimit.Count.EACH_SPELL)
                .isPresent();
        List<Spell> inside = account.spells().stream()
                .filter(spell -> spell.span().fromMillis() < stage.toMillis()
                        && spell.span().toMillis() > stage.fromMillis())
                .toList();
        return !inside.isEmpty()
                && seen(account, stage)
                && inside.stream()
                        .allMatch(spell -> spell.timeOnly()
                                || (isUnderHot(spell)
                                        && (documented || (spell.after() == State.ENDED && ended(Ending.How.SERVED)))));
    }

    private static boolean seen(Account account, Span stage) {
        return account.unseen().stream()
                .noneMatch(gap -> gap.fromMillis() < stage.toMillis() && gap.toMillis() > stage.fromMillis());
    }

    private static Bounded coldest(Account account, Span stage) {
        double worst = Double.POSITIVE_INFINITY;
        double nominal = Double.POSITIVE_INFINITY;
        double best = Double.POSITIVE_INFINITY;
        var core = account.bounds();
        long from = Math.max(stage.fromMillis(), account.lethalMillis().orElse(stage.fromMillis()));
        for (int i = 0; i < core.size(); i++) {
            if (core.toMillis(i) > from && core.fromMillis(i) < stage.toMillis()) {
                worst = Math.min(worst, core.low(i));
                if (core.isRead(i)) {
                    nominal = Math.min(nominal, Math.min(core.lineFrom(i), core.lineTo(i)));
                    best = Math.min(best, Math.min(core.lineFrom(i), core.lineTo(i)) + core.toleranceCelsius());
                }
            }
        }
        if (Double.isInfinite(nominal)) {
            return new Bounded(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
        }
        return new Bounded(Math.min(worst, nominal), nominal, Math.max(nominal, best));
    }

    // ---- time under hot

    private static boolean isUnderHot(Spell spell) {
        return spell.before() == State.HOT && spell.after() != State.COLD;
    }

    private boolean ended(Ending.How how) {
        return evidence.batch().ending().filter(ending -> ending.how() == how).isPresent();
    }

    /** Each probe's time under hot that was no cooling, by what the authority allows. */
    Optional<Check> underHot() {
        return accounts.probes().stream()
                .flatMap(account -> underHot(account).stream())
                .max(Governing.ORDER);
    }

    private Optional<Check> underHot(Account account) {
        List<Spell> spells = account.spells().stream()
                .filter(spell -> isUnderHot(spell) && !spell.timeOnly())
                .filter(spell -> ReheatChecks.toOrder(evidence, account)
                        .filter(window -> window.fromMillis() <= spell.span().fromMillis())
                        .isEmpty())
                .filter(spell -> spell.after() == State.HOT || ended(Ending.How.SERVED))
                .toList();
        if (spells.isEmpty()) {
            return Optional.empty();
        }
        Optional<HotAllowance> rule = evidence.authority().hotAllowance();
        if (rule.isEmpty()) {
            return Optional.of(Check.of(UNDER_HOT, "Under hot only as long as allowed")
                    .required("a time the authority allows under hot")
                    .measured(sum(spells))
                    .unit("min")
                    .why("The core was under hot for up to "
                            + Wording.minutes(sum(spells).worst()) + ". " + notHeld("that"))
                    .next("Do not serve on this record. Ask the authority.")
                    .channel(account.channel())
                    .window(spells.get(0).span())
                    .build());
        }
        return rule.get().count() == TimeLimit.Count.EACH_SPELL
                ? spells.stream()
                        .map(spell -> judge(account, rule.get(), List.of(spell), spell.minutes()))
                        .max(Governing.ORDER)
                : Optional.of(judge(
                        account,
                        rule.get(),
                        spells,
                        rule.get().count() == TimeLimit.Count.ONE_PERIOD ? period(spells) : cumulative(account)));
    }

    private static Bounded sum(List<Spell> spells) {
        return new Bounded(
                spells.stream().mapToDouble(spell -> spell.minutes().worst()).sum(),
                spells.stream().mapToDouble(spell -> spell.minutes().nominal()).sum(),
                spells.stream().mapToDouble(spell -> spell.minutes().best()).sum());
    }

    /** One period: at worst from the first leaving to the last return, at best the time itself. */
    private static Bounded period(List<Spell> spells) {
        Bounded sum = sum(spells);
        double whole = (spells.get(spells.size() - 1).span().toMillis()
                        - spells.get(0).span().fromMillis())
                / 60_000.0;
        return new Bounded(Math.max(whole, sum.worst()), sum.nominal(), sum.best());
    }

    /** Every time between cold and hot that was neither cooling nor reheating adds up. */
    private Bounded cumulative(Account account) {
        return sum(account.spells().stream()
                .filter(spell -> !spell.timeOnly())
                .filter(spell -> !spell.goes(State.HOT, State.COLD) && !spell.goes(State.COLD, State.HOT))
                .toList());
    }

    private Check judge(Account account, HotAllowance rule, List<Spell> spells, Bounded minutes) {
        Spell last = spells.get(spells.size() - 1);
        HotAllowance.Band worst = rule.band(minutes.worst(), Check.FIGURE_SLACK);
        HotAllowance.Band best = rule.band(minutes.best(), Check.FIGURE_SLACK);
        Verdict verdict = verdict(account, worst, spells).and(Verdict.MET);
        Verdict atBest = verdict(account, best, spells);
        verdict =
                verdict == Verdict.MET ? Verdict.MET : atBest == Verdict.NOT_MET ? Verdict.NOT_MET : Verdict.NOT_PROVEN;
        HotAllowance.Band first = rule.bands().get(0);
        return Check.of(UNDER_HOT, "Under hot only as long as allowed")
                .required("after lethality, under hot for " + first.comparison().words() + " "
                        + Wording.minutes(first.maxMinutes().orElse(0))
                        + switch (rule.count()) {
                            case EACH_SPELL -> " each time";
                            case ONE_PERIOD -> ", once";
                            case CUMULATIVE -> " in all";
                        }
                        + (rule.bands().size() > 2 && rule.bands().get(1).outcome() == Outcome.SERVED_NOW
                                ? "; longer, up to "
                                        + Wording.minutes(
                                                rule.bands().get(1).maxMinutes().orElse(0)) + ", only if then served"
                                : ""))
                .citation(worst.citation())
                .verdict(verdict)
                .measured(minutes)
                .limit(first.maxMinutes())
                .comparison(first.comparison())
                .unit("min")
                .why("The core (" + account.channel() + ") was under hot from "
                        + evidence.wording().clock(spells.get(0).span().fromMillis()) + " for "
                        + Wording.between(minutes.best(), minutes.worst())
                        + (last.after() == State.ENDED ? ", until it was served." : ", and then was hot again."))
                .next("Do not serve on this record. Hold the food apart and follow the HACCP plan.")
                .channel(account.channel())
                .window(new Span(spells.get(0).span().fromMillis(), last.span().toMillis()))
                .build();
    }

    private Verdict verdict(Account account, HotAllowance.Band band, List<Spell> spells) {
        boolean served = spells.get(spells.size() - 1).after() == State.ENDED && ended(Ending.How.SERVED);
        return switch (band.outcome()) {
            case ALLOWED ->
                served || isDocumented() || spells.stream().allMatch(this::isBetweenNamedStages)
                        ? Verdict.MET
                        : Verdict.NOT_PROVEN;
            case SERVED_NOW -> served && spells.size() == 1 ? Verdict.MET : Verdict.NOT_MET;
            case MARKED -> Verdict.NOT_PROVEN;
            case MISSED -> Verdict.NOT_MET;
            case AS_COOLING -> asCooling(account, spells);
        };
    }

    private Verdict asCooling(Account account, List<Spell> spells) {
        CoolingChecks cooling = new CoolingChecks(evidence, accounts);
        return spells.stream()
                        .map(spell -> cooling.asFarAsItRan(account, spell))
                        .anyMatch(verdict -> verdict == Verdict.NOT_MET)
                ? Verdict.NOT_MET
                : Verdict.NOT_PROVEN;
    }

    /** Whether the allowance counts more than one spell, as documents do and this program's convention does not. */
    private boolean isDocumented() {
        return evidence.authority()
                .hotAllowance()
                .filter(rule -> rule.count() != TimeLimit.Count.EACH_SPELL)
                .isPresent();
    }

    /**
     * A dip that is no hot hold's own: inside a cook, or between a stage that is meant to be hot and the next one. The
     * convention for handling covers it only where the record says so.
     */
    private boolean isBetweenNamedStages(Spell spell) {
        List<Stage> hot = evidence.batch().stages().stream()
                .filter(stage -> stage.kind().isCook()
                        || stage.kind() == Stage.Kind.HOT_HOLD
                        || stage.kind() == Stage.Kind.REHEAT)
                .toList();
        boolean inHold = evidence.timeline().all(Stage.Kind.HOT_HOLD).stream()
                .map(stage -> evidence.timeline().span(stage))
                .anyMatch(span -> span.fromMillis() < spell.span().toMillis()
                        && span.toMillis() > spell.span().fromMillis());
        boolean before = hot.stream()
                .anyMatch(stage -> stage.from().toEpochMilli() <= spell.span().fromMillis());
        boolean after = hot.stream()
                .anyMatch(stage -> evidence.timeline().span(stage).toMillis()
                        >= spell.span().toMillis());
        return !inHold && before && after;
    }

    // ---- cold

    /** The cold from the first moment it was reached; what was warm again in between counts, whatever it was called. */
    Optional<Check> cold() {
        record Warm(Account account, Bounded celsius, Bounded minutes, Verdict verdict, Span window) {}
        Optional<Limits.Level> limit = accounts.limits().cold();
        if (limit.isEmpty()) {
            return Optional.empty();
        }
        Optional<HoldingRule> rule = accounts.limits().coldRule();
        List<Warm> probes = new ArrayList<>();
        for (Account account : accounts.probes()) {
            long from = account.firstColdFrom(
                            account.lethalMillis().orElse(account.cook().toMillis()))
                    .orElse(-1);
            if (from < 0) {
                continue;
            }
            List<Spell> warm = account.spells().stream()
                    .filter(spell -> spell.before() == State.COLD && !spell.timeOnly())
                    .filter(spell -> spell.after() == State.COLD || (spell.after() == State.ENDED && !isReheat(spell)))
                    .toList();
            Bounded minutes = sum(warm);
            Bounded celsius = warmest(account, from, warm);
            Verdict plain = warm.isEmpty()
                    ? Verdict.MET
                    : minutes.best() > Check.FIGURE_SLACK ? Verdict.NOT_MET : Verdict.NOT_PROVEN;
            Verdict verdict = allowedWarm(account, warm).orElse(plain);
            verdict = verdict == Verdict.NOT_MET && rule.isEmpty() ? Verdict.NOT_PROVEN : verdict;
            probes.add(new Warm(
                    account,
                    celsius,
                    minutes,
                    verdict,
                    new Span(from, account.span().toMillis())));
        }
        return probes.stream()
                .max(Comparator.comparing(Warm::verdict)
                        .thenComparingDouble(warm -> warm.celsius().nominal()))
                .map(warm -> {
                    TemperatureUnit unit = limit.get().at().unit();
                    boolean allowed =
                            warm.verdict() == Verdict.MET && warm.minutes().worst() > 0;
                    String beyond = warm.minutes().worst() > 0
                            ? ", and was above the limit for "
                                    + Wording.between(
                                            warm.minutes().best(),
                                            warm.minutes().worst())
                            : "";
                    Check.Builder check = Check.of(COLD, "Stored cold enough")
                            .required("core " + limit.get().comparison().words() + " "
                                    + evidence.wording().boundary(limit.get().at())
                                    + " once it was cold"
                                    + (allowed ? ", but for what the authority allows" : ""))
                            .citation(rule.map(HoldingRule::citation))
                            .verdict(warm.verdict())
                            .comparison(limit.get().comparison())
                            .why("The warmest probe (" + warm.account().channel() + ") rose to "
                                    + evidence.wording()
                                            .temperature(warm.celsius().nominal())
                                    + beyond + "."
                                    + (rule.isEmpty() ? " " + notHeld("cold holding") : ""))
                            .next("Do not serve on this record. "
                                    + rule.map(HoldingChecks::disposition)
                                            .orElse("Ask the authority which figure governs."))
                            .channel(warm.account().channel())
                            .window(warm.window());
                    return allowed
                            ? check.build()
                            : check.measured(inUnit(warm.celsius(), unit))
                                    .limit(limit.get().at().value())
                                    .unit(unit.symbol())
                                    .build();
                });
    }

    /** A store that was never cold, or under an authority with no figure for it. */
    Optional<Check> neverCold() {
        Optional<Stage> store = evidence.batch().first(Stage.Kind.STORE);
        boolean never = accounts.probes().stream().anyMatch(account -> account.firstColdFrom(
                        account.lethalMillis().orElse(account.cook().toMillis()))
                .isEmpty());
        if (store.isEmpty() || !never) {
            return Optional.empty();
        }
        Optional<HoldingRule> rule = accounts.limits().coldRule();
        return Optional.of(Check.of(COLD, "Stored cold enough")
                .required(accounts.limits()
                        .cold()
                        .map(level -> "core " + level.comparison().words() + " "
                                + evidence.wording().boundary(level.at()) + " in store")
                        .orElse("a cold-holding temperature"))
                .citation(rule.map(HoldingRule::citation))
                .why(
                        rule.isPresent()
                                ? "The food was in store, and a core probe shows no moment at which it was surely cold."
                                : "The food was in store. " + notHeld("cold holding"))
                .next("Do not serve on this record. "
                        + rule.map(HoldingChecks::disposition).orElse("Ask the authority which figure governs."))
                .window(evidence.timeline().span(store.get()))
                .build());
    }

    private boolean isReheat(Spell spell) {
        return ReheatChecks.isReheat(evidence, spell);
    }

    private Optional<Verdict> allowedWarm(Account account, List<Spell> warm) {
        if (warm.isEmpty()) {
            return Optional.empty();
        }
        Optional<TimeLimit> period = evidence.authority().timeLimits().stream()
                .filter(rule -> rule.count() == TimeLimit.Count.ONE_PERIOD
                        && !rule.marked()
                        && rule.coldStart().isPresent()
                        && rule.hotStart().isEmpty()
                        && rule.ceiling().isEmpty())
                .findFirst();
        if (period.isPresent()) {
            return Optional.of(Check.judge(
                    period(warm), period.get().timeComparison(), period.get().maxMinutes()));
        }
        Optional<HotAllowance> cumulative =
                evidence.authority().hotAllowance().filter(rule -> rule.count() == TimeLimit.Count.CUMULATIVE);
        return cumulative.map(rule -> {
            Bounded all = cumulative(account);
            boolean served = warm.get(warm.size() - 1).after() == State.ENDED && ended(Ending.How.SERVED);
            Verdict atWorst = outcome(rule.band(all.worst(), Check.FIGURE_SLACK), served && warm.size() == 1);
            Verdict atBest = outcome(rule.band(all.best(), Check.FIGURE_SLACK), served);
            return atWorst == Verdict.MET
                    ? Verdict.MET
                    : atBest == Verdict.NOT_MET ? Verdict.NOT_MET : Verdict.NOT_PROVEN;
        });
    }

    private static Verdict outcome(HotAllowance.Band band, boolean served) {
        return switch (band.outcome()) {
            case ALLOWED -> Verdict.MET;
            case SERVED_NOW -> served ? Verdict.MET : Verdict.NOT_MET;
            case MARKED, AS_COOLING -> Verdict.NOT_PROVEN;
            case MISSED -> Verdict.NOT_MET;
        };
    }

    private static Bounded warmest(Account account, long from, List<Spell> warm) {
        double worst = Double.NEGATIVE_INFINITY;
        double nominal = Double.NEGATIVE_INFINITY;
        var core = account.bounds();
        for (int i = 0; i < core.size(); i++) {
            long at = core.fromMillis(i);
            boolean inside = at >= from
                    && account.spells().stream()
                            .filter(spell -> !warm.contains(spell))
                            .noneMatch(spell -> spell.span().fromMillis() <= at
                                    && at < spell.span().toMillis())
                    && !account.isHotAt(i);
            if (inside && core.isRead(i)) {
                worst = Math.max(worst, core.high(i));
                nominal = Math.max(nominal, Math.max(core.lineFrom(i), core.lineTo(i)));
            }
        }
        if (Double.isInfinite(nominal)) {
            return new Bounded(Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY);
        }
        double tolerance = core.toleranceCelsius();
        return new Bounded(Math.max(worst, nominal), nominal, Math.min(nominal, worst - 2 * tolerance));
    }

    private static Bounded inUnit(Bounded celsius, TemperatureUnit unit) {
        return new Bounded(
                unit.fromCelsius(celsius.worst()),
                unit.fromCelsius(celsius.nominal()),
                unit.fromCelsius(celsius.best()));
    }

    private static String disposition(HoldingRule rule) {
        return rule.correctiveAction().isEmpty()
                ? "Hold the food apart and follow the HACCP plan."
                : rule.correctiveAction().strip().replaceAll("[.;]*$", "") + ".";
    }
}
