package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.holdproof.core.assess.RowsMet.Counted;
import org.holdproof.core.batch.Ending;
import org.holdproof.core.batch.Product;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Account;
import org.holdproof.core.course.Accounts;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.course.Spell;
import org.holdproof.core.course.Spell.State;
import org.holdproof.core.log.Trace;
import org.holdproof.core.measure.ReheatClock;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.HotAllowance;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.LethalityTable.Counting;
import org.holdproof.core.rules.ReheatingRule;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/**
 * Was food that left the cold upward reheated hot enough, long enough and fast enough? Found from the readings. Food
 * reheated to order and served at once may be served at any temperature where the authority says so; food to be held hot
 * has a target, or one of its alternatives.
 */
public final class ReheatChecks {
    public static final String TARGET = "reheat.target";
    public static final String TIME = "reheat.time";

    /** How soon after its stage a reheated food must be served to be served at once, in minutes; a convention. */
    private static final double AT_ONCE_MINUTES = 30;

    /** The longest a food may take from the cold to the guest and still be reheated to order, in minutes; a convention. */
    private static final double TO_ORDER_MINUTES = 150;

    private final Evidence evidence;
    private final Accounts accounts;

    ReheatChecks(Evidence evidence, Accounts accounts) {
        this.evidence = evidence;
        this.accounts = accounts;
    }

    /** Whether food that left the cold and was served without becoming hot was reheated, by the record. */
    static boolean isReheat(Evidence evidence, Spell spell) {
        return spell.goes(State.COLD, State.ENDED)
                && (endedServed(evidence) || evidence.batch().ending().isEmpty())
                && stage(evidence, spell)
                        .filter(stage -> stage.kind() == Stage.Kind.REHEAT)
                        .isPresent();
    }

    private static boolean endedServed(Evidence evidence) {
        return evidence.batch()
                .ending()
                .filter(ending -> ending.how() == Ending.How.SERVED)
                .isPresent();
    }

    /** The heating stage a spell falls into: a reheat, or a cook that finishes food already lethal. */
    private static Optional<Stage> stage(Evidence evidence, Spell spell) {
        return evidence.batch().stages().stream()
                .filter(stage -> stage.to().isPresent())
                .filter(stage ->
                        stage.kind() == Stage.Kind.REHEAT || stage.kind().isCook())
                .filter(stage -> stage.from().toEpochMilli() < spell.span().toMillis()
                        && evidence.timeline().span(stage).toMillis()
                                > spell.span().fromMillis())
                .reduce((one, other) -> other);
    }

    /** One probe's way up from the cold, and all it had until it left hot again. */
    private record Reheating(Account account, Spell spell, Span window, Optional<Stage> stage) {}

    List<Check> checks() {
        List<List<Reheating>> byProbe = accounts.probes().stream()
                .map(account -> account.spells().stream()
                        .filter(spell -> !spell.timeOnly())
                        .filter(spell -> spell.goes(State.COLD, State.HOT) || isReheat(evidence, spell))
                        .map(spell -> new Reheating(
                                account,
                                spell,
                                new Span(spell.span().fromMillis(), until(account, spell)),
                                stage(evidence, spell)))
                        .toList())
                .toList();
        int most = byProbe.stream().mapToInt(List::size).max().orElse(0);
        List<Check> checks = new ArrayList<>();
        for (int number = 0; number < most; number++) {
            int at = number;
            List<Reheating> together = byProbe.stream()
                    .filter(found -> found.size() > at)
                    .map(found -> found.get(at))
                    .toList();
            checks.add(together.stream().map(this::target).max(Governing.ORDER).orElseThrow());
            time(together).ifPresent(checks::add);
        }
        return checks;
    }

    private static long until(Account account, Spell spell) {
        return account.spells().stream()
                .map(other -> other.span().fromMillis())
                .filter(from -> from > spell.span().fromMillis())
                .findFirst()
                .orElse(account.span().toMillis());
    }

    private Check target(Reheating heating) {
        if (isToOrder(heating)) {
            ReheatingRule rule = evidence.authority().reheatToOrder().orElseThrow();
            return Check.of(TARGET, "Reheated to order")
                    .required("served at once, at any temperature")
                    .citation(rule.citation())
                    .verdict(Verdict.MET)
                    .why("Reheated and served within "
                            + Wording.minutes(minutes(
                                    heating.window().fromMillis(),
                                    heating.account().span().toMillis()))
                            + " of leaving the cold.")
                    .channel(heating.account().channel())
                    .window(heating.window())
                    .build();
        }
        Optional<ReheatingRule> rule = evidence.authority().reheat().filter(found -> !found.asksNoTemperature());
        List<Check> ways = new ArrayList<>();
        rule.ifPresent(found -> ways.add(byRule(heating, found)));
        byTable(heating).ifPresent(ways::add);
        if (ways.isEmpty()) {
            return Check.of(TARGET, "Reheated hot enough")
                    .required("a reheating temperature")
                    .why(
                            "The food left the cold and was heated. "
                                    + evidence.authority().title()
                                    + " as held here has no figure for reheating: ask the authority, or whoever approved the plan.")
                    .next("Do not serve on this record. Judge the reheating by the approved HACCP plan.")
                    .channel(heating.account().channel())
                    .window(heating.window())
                    .build();
        }
        return ways.stream().min(Comparator.comparing(Check::verdict)).orElseThrow();
    }

    private boolean isToOrder(Reheating heating) {
        return toOrder(evidence, heating.account())
                .filter(window -> window.fromMillis() == heating.window().fromMillis())
                .isPresent();
    }

    /** From leaving the cold to the guest, where the food was reheated to order and served at once. */
    static Optional<Span> toOrder(Evidence evidence, Account account) {
        boolean anyTemperature = evidence.authority()
                .reheatToOrder()
                .filter(ReheatingRule::asksNoTemperature)
                .isPresent();
        if (!anyTemperature || !endedServed(evidence)) {
            return Optional.empty();
        }
        long served = account.span().toMillis();
        return account.spells().stream()
                .filter(spell -> spell.before() == State.COLD && spell.after() != State.COLD && !spell.timeOnly())
                .reduce((one, other) -> other)
                .filter(spell -> minutes(spell.span().fromMillis(), served) <= TO_ORDER_MINUTES)
                .filter(spell -> stage(evidence, spell)
                        .filter(stage -> stage.kind() == Stage.Kind.REHEAT)
                        .filter(stage -> minutes(evidence.timeline().span(stage).toMillis(), served) <= AT_ONCE_MINUTES)
                        .isPresent())
                .map(spell -> new Span(spell.span().fromMillis(), served));
    }

    private static double minutes(long from, long to) {
        return (to - from) / 60_000.0;
    }

    private Check byRule(Reheating heating, ReheatingRule rule) {
        List<Counted> rows = rule.targets().stream()
                .map(target -> new Counted(
                        new LethalityRow(
                                target.at(),
                                OptionalInt.empty(),
                                target.holdSeconds(),
                                Wording.minutes(target.holdSeconds() / 60),
                                rule.citation()),
                        Counting.UNBROKEN))
                .toList();
        if (rows.isEmpty()) {
            rows = rule.table().stream()
                    .flatMap(table -> RowsMet.rows(List.of(table), OptionalDouble.empty()).stream())
                    .toList();
        }
        return held(heating, rows, "reheated to ");
    }

    /** A roast's own table; or, in a stage the record calls a cook, the table the food was cooked by. */
    private Optional<Check> byTable(Reheating heating) {
        Product product = evidence.batch().product();
        boolean roast =
                product.form() == Product.Form.INTACT && product.species().isRedMeat();
        Optional<ReheatingRule> own = evidence.authority().reheatRoast().filter(rule -> roast);
        if (own.isPresent()) {
            return own.map(rule -> byRule(heating, rule));
        }
        double longest = evidence.authority()
                .comeUpToPlanBy()
                .flatMap(rule -> rule.maxMinutes().stream().boxed().findFirst())
                .orElse(0.0);
        boolean cooked = heating.stage().filter(stage -> stage.kind().isCook()).isPresent();
        if (!cooked || heating.spell().minutes().worst() > longest) {
            return Optional.empty();
        }
        return accounts.choice()
                .filter(choice -> !choice.tables().isEmpty())
                .map(choice -> held(
                        heating, RowsMet.rows(choice.tables(), product.fatPercent()), "cooked again by its table, "));
    }

    private Check held(Reheating heating, List<Counted> rows, String how) {
        RowsMet met = RowsMet.of(heating.account(), rows, heating.window());
        LethalityRow row = met.row();
        boolean late = met.verdict() == Verdict.MET && isServedLate(heating);
        return Check.of(TARGET, "Reheated hot enough")
                .required(how
                        + evidence.wording().boundary(row.at())
                        + (row.seconds() > 0 ? " for " + row.printedTime() : "")
                        + (rows.size() > 1 ? ", or one of the alternatives" : ""))
                .citation(row.citation())
                .verdict(late ? Verdict.NOT_PROVEN : met.verdict())
                .measured(met.minutes())
                .limit(met.limitMinutes())
                .comparison(Comparison.AT_LEAST)
                .unit("min")
                .why("The coldest probe (" + heating.account().channel() + ") was there for "
                        + Wording.between(met.minutes().worst(), met.minutes().best()) + "."
                        + (late ? " It was served later than the authority allows food under hot." : ""))
                .next(next())
                .channel(heating.account().channel())
                .window(heating.window())
                .build();
    }

    /** Food that met its target but was never hot must be served within what is allowed under hot. */
    private boolean isServedLate(Reheating heating) {
        if (heating.spell().after() != State.ENDED) {
            return false;
        }
        long ended = heating.stage()
                .map(stage -> evidence.timeline().span(stage).toMillis())
                .orElse(heating.window().fromMillis());
        double allowed = evidence.authority()
                .hotAllowance()
                .flatMap(rule -> rule.bands().stream().findFirst())
                .map(HotAllowance.Band::maxMinutes)
                .orElse(OptionalDouble.empty())
                .orElse(0);
        return (heating.window().toMillis() - ended) / 60_000.0 > allowed;
    }

    /** The clock from the cold to the leading target, where the rule has one and the rule is what was kept. */
    private Optional<Check> time(List<Reheating> heatings) {
        Optional<ReheatingRule> rule = evidence.authority()
                .reheat()
                .filter(found -> found.target().isPresent()
                        && found.from().isPresent()
                        && found.maxMinutes().isPresent());
        List<Reheating> clocked = heatings.stream()
                .filter(heating -> !isToOrder(heating))
                .filter(heating -> byTable(heating)
                        .filter(check -> check.verdict() == Verdict.MET)
                        .isEmpty())
                .toList();
        if (rule.isEmpty() || clocked.isEmpty()) {
            return Optional.empty();
        }
        Boundary from = rule.get().from().orElseThrow();
        Boundary target = rule.get().target().orElseThrow();
        double limit = rule.get().maxMinutes().orElseThrow();
        record Timed(Reheating heating, Bounded minutes, Verdict verdict) {}
        Timed slowest = clocked.stream()
                .map(heating -> {
                    Bounded minutes = ReheatClock.minutes(
                            readings(heating), from.celsius(), target.celsius(), evidence.toleranceCelsius());
                    return new Timed(
                            heating, minutes, Check.judge(minutes, rule.get().timeComparison(), limit));
                })
                .max(Comparator.comparing(Timed::verdict)
                        .thenComparingDouble(timed -> timed.minutes().worst())
                        .thenComparingDouble(timed -> timed.minutes().nominal()))
                .orElseThrow();
        return Optional.of(Check.of(TIME, "Reheated fast enough")
                .required("from " + evidence.wording().boundary(from) + " to "
                        + evidence.wording().boundary(target) + " in "
                        + rule.get().timeComparison().words() + " " + Wording.minutes(limit))
                .citation(rule.get().citation())
                .verdict(slowest.verdict())
                .measured(slowest.minutes())
                .limit(limit)
                .comparison(rule.get().timeComparison())
                .unit("min")
                .why("The slowest probe (" + slowest.heating().account().channel() + ") took "
                        + Wording.between(
                                slowest.minutes().best(), slowest.minutes().worst()) + ".")
                .next(next())
                .channel(slowest.heating().account().channel())
                .window(slowest.heating().spell().span())
                .build());
    }

    /** The readings from the last one before the cold was left. */
    private static Trace readings(Reheating heating) {
        Trace whole = heating.account().bounds().trace();
        int first = 0;
        while (first + 1 < whole.size()
                && whole.millis(first + 1) <= heating.window().fromMillis()) {
            first++;
        }
        return whole.between(
                whole.millis(first),
                Math.max(whole.millis(first), heating.window().toMillis()));
    }

    private String next() {
        return "Do not serve on this record. "
                + evidence.authority()
                        .reheat()
                        .map(ReheatingRule::correctiveAction)
                        .filter(action -> !action.isEmpty())
                        .map(action -> action.strip().replaceAll("[.;]*$", "") + ".")
                        .orElse("Hold the food apart and follow the HACCP plan.");
    }

    /** Food reheated more than once has been in the growth range more often than any of the rules here was made for. */
    static Optional<Caution> again(Evidence evidence) {
        int times = evidence.timeline().all(Stage.Kind.REHEAT).size();
        return times < 2
                ? Optional.empty()
                : Optional.of(new Caution(
                        "reheat.again",
                        "The food was reheated " + times + " times. Reheating is meant for once"
                                + evidence.authority()
                                        .reheat()
                                        .filter(rule -> rule.conditions().contains("once"))
                                        .map(rule -> " (" + rule.citation().text() + ")")
                                        .orElse(" (common practice, no source)")
                                + "."));
    }
}
