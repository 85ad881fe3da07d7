package org.holdproof.core.assess;

import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.holdproof.core.batch.Ending;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Accounts;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.measure.CoolingClock;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.rules.ShelfLifeRule;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/**
 * Was the food used by its last day? The day counts from bagging, or from the end of the cook where it was not bagged.
 * The first rule the authority names governs; the others are said beside it.
 */
public final class ShelfLifeChecks {
    public static final String ID = "use-by";
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

    private final Evidence evidence;
    private final Optional<Accounts> accounts;

    /** The days of food under way, counted from its record alone. */
    public ShelfLifeChecks(Evidence evidence) {
        this(evidence, Optional.empty());
    }

    ShelfLifeChecks(Evidence evidence, Accounts accounts) {
        this(evidence, Optional.of(accounts));
    }

    private ShelfLifeChecks(Evidence evidence, Optional<Accounts> accounts) {
        this.evidence = evidence;
        this.accounts = accounts;
    }

    /** The check, where the food was cold before its end, whatever the record calls it. */
    Optional<Check> check() {
        List<ShelfLifeRule> rules = rules();
        boolean cold = accounts.flatMap(
                        found -> found.firstCold().stream().boxed().findFirst())
                .isPresent();
        Optional<Ending> used = evidence.batch().ending();
        if (rules.isEmpty() || !cold || used.isEmpty()) {
            return Optional.empty();
        }
        ShelfLifeRule rule = rules.get(0);
        LocalDate last = lastDay(rule);
        LocalDate day = day(used.get().at());
        double kept = ChronoUnit.DAYS.between(prepared(), day);
        double allowed = ChronoUnit.DAYS.between(prepared(), last);
        Bounded days = Bounded.exactly(kept);
        Verdict verdict = Check.judge(days, Comparison.AT_MOST, allowed);
        return Optional.of(Check.of(ID, "Used by its last day")
                .required(rule.days() + " days at or below "
                        + evidence.wording().boundary(rule.storeAt()) + ": last day " + DAY.format(last))
                .citation(rule.citation())
                .verdict(verdict)
                .measured(days)
                .limit(allowed)
                .comparison(Comparison.AT_MOST)
                .unit("d")
                .why((used.get().how() == Ending.How.IN_STORE ? "Still in store on " : "Used on ") + DAY.format(day)
                        + ", made or packed on " + DAY.format(prepared()) + ".")
                .next("Do not serve. " + rule.disposition() + ".")
                .build());
    }

    /** The use-by of each rule the authority names, for the label. */
    List<Caution> useBy() {
        List<Caution> cautions = new ArrayList<>();
        if (lastStore().isEmpty()) {
            return cautions;
        }
        for (ShelfLifeRule rule : rules()) {
            String place = " (" + rule.title() + ", " + rule.citation().text() + ").";
            String id = ID + "." + rule.id().toLowerCase(Locale.ROOT);
            if (rule.reach().isPresent() && !reachedInTime(rule, rule.reach().get())) {
                cautions.add(new Caution(
                        id,
                        "The " + rule.days()
                                + " days are not open to this batch: the log does not prove that it reached "
                                + evidence.wording().boundary(rule.reach().get()) + " within "
                                + Wording.minutes(rule.reachMinutes().orElse(0)) + " of the end of cooling" + place));
                continue;
            }
            cautions.add(new Caution(
                    id,
                    "Use by " + DAY.format(lastDay(rule)) + " at or below "
                            + evidence.wording().boundary(rule.storeAt()) + place));
        }
        return cautions;
    }

    /** Whether the log proves that every probe reached a colder temperature in time after the cooling rule's last one. */
    private boolean reachedInTime(ShelfLifeRule rule, Boundary reach) {
        Optional<Boundary> cooled = evidence.authority().cooling().stream()
                .flatMap(cooling -> cooling.stages().stream())
                .flatMap(stage -> stage.to().stream())
                .min(Comparator.comparingDouble(Boundary::celsius));
        Optional<Stage> chill = evidence.timeline().chill();
        if (cooled.isEmpty() || chill.isEmpty() || rule.reachMinutes().isEmpty()) {
            return false;
        }
        CoolingRule schedule = new CoolingRule(
                rule.id(),
                rule.title(),
                rule.jurisdiction(),
                rule.applies(),
                List.of(new CoolingRule.Stage(
                        1,
                        CoolingRule.Start.FALLS_THROUGH,
                        cooled,
                        Optional.of(reach),
                        rule.reachMinutes(),
                        Comparison.AT_MOST,
                        CoolingRule.Clock.ELAPSED)),
                CoolingRule.Condition.NONE,
                rule.disposition(),
                rule.citation());
        long to = evidence.timeline().span(lastStore().orElseThrow()).toMillis();
        long from = chill.get().from().toEpochMilli();
        return to > from
                && evidence.within(new Span(from, to)).stream()
                        .allMatch(trace -> !trace.isEmpty()
                                && CoolingClock.judge(CoolingClock.bounding(
                                                        trace, evidence.toleranceCelsius(), CoolingClock.Events.NONE)
                                                .time(schedule)
                                                .get(0))
                                        == Verdict.MET);
    }

    public List<ShelfLifeRule> rules() {
        return evidence.authority().shelfLives().stream()
                .filter(rule -> rule.from() != ShelfLifeRule.From.REMOVAL)
                .toList();
    }

    public LocalDate lastDay(ShelfLifeRule rule) {
        Optional<ShelfLife.Frozen> frozen = evidence.timeline().all(Stage.Kind.FREEZE).stream()
                .findFirst()
                .map(stage -> evidence.timeline().span(stage))
                .map(span -> new ShelfLife.Frozen(
                        day(Instant.ofEpochMilli(span.fromMillis())), day(Instant.ofEpochMilli(span.toMillis()))));
        return ShelfLife.lastDay(rule, prepared(), Optional.empty(), frozen);
    }

    private Optional<Stage> lastStore() {
        return evidence.timeline().all(Stage.Kind.STORE).stream().reduce((one, other) -> other);
    }

    /**
     * The day of bagging, or the one the food left the heat, whichever came first, but none before the cook. A record that
     * names no bagging is counted from the cook's beginning where the rule counts from packaging.
     */
    private LocalDate prepared() {
        Optional<Span> cook = evidence.timeline().cook();
        Instant cooked = Instant.ofEpochMilli(accounts.map(Accounts::firstLeftHot)
                .orElse(cook.map(Span::toMillis)
                        .orElse(evidence.timeline().log().fromMillis())));
        Instant began =
                cook.map(span -> Instant.ofEpochMilli(span.fromMillis())).orElse(cooked);
        Instant bagged = evidence.batch()
                .first(Stage.Kind.BAG)
                .map(Stage::from)
                .orElse(rules().get(0).from() == ShelfLifeRule.From.PACKAGING ? began : cooked);
        Instant first = bagged.isBefore(cooked) ? bagged : cooked;
        return day(first.isBefore(began) ? began : first);
    }

    private LocalDate day(Instant instant) {
        return instant.atZone(evidence.batch().kitchen().zone()).toLocalDate();
    }
}
