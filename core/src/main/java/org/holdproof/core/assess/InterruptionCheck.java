package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Account;
import org.holdproof.core.course.Accounts;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.wording.Wording;

/**
 * Was it one cook? Food that was cold again before it was lethal is another process: it has its own limits and needs a
 * procedure the authority approved beforehand. So is food that fell back for hours on its way. Found from the readings,
 * whatever the stages say; food that was lethal first is reheated, not cooked in two heatings.
 */
public final class InterruptionCheck {
    public static final String ID = "one-cook";

    /** The longest a heating may be interrupted and still be one, in minutes; a convention of this program. */
    static final double LONGEST_BREAK_MINUTES = 120;

    private final Evidence evidence;
    private final List<Account> accounts;

    InterruptionCheck(Evidence evidence, Accounts accounts) {
        this.evidence = evidence;
        this.accounts = accounts.probes();
    }

    List<Check> checks() {
        List<Check> checks = new ArrayList<>();
        Optional<Account> before =
                accounts.stream().filter(Account::heatedBefore).findFirst();
        if (before.isPresent()) {
            checks.add(Check.of(ID, "One cook from the cold")
                    .required("the log begins with the food cold, before its first heat")
                    .why(
                            "The log of " + before.get().channel()
                                    + " shows heat, and then cold, before the first stage the record names. The record does not say whether that was this food.")
                    .next("If it was another batch, cut the log before this one. If it was this food, add its stages.")
                    .channel(before.get().channel())
                    .build());
        }
        Optional<Account> twice = accounts.stream().filter(Account::interrupted).findFirst();
        Optional<CoolingRule> rule = evidence.authority().nonContinuous();
        if (twice.isPresent()) {
            checks.add(twoHeatings(twice.get(), rule));
            rule.flatMap(found -> firstHeating(found)).ifPresent(checks::add);
            return checks;
        }
        accounts.stream()
                .filter(account -> evidence.timeline().cook().isPresent())
                .max(Comparator.comparingDouble(
                        account -> account.brokenMinutes().worst()))
                .filter(account -> account.brokenMinutes().worst() > LONGEST_BREAK_MINUTES)
                .map(this::broken)
                .ifPresent(checks::add);
        return checks;
    }

    private Check broken(Account account) {
        return Check.of(ID, "One cook without a long break")
                .required("heating before lethality interrupted for at most " + Wording.minutes(LONGEST_BREAK_MINUTES)
                        + " (this program's convention)")
                .measured(account.brokenMinutes())
                .limit(LONGEST_BREAK_MINUTES)
                .unit("min")
                .why("Before it was lethal, the core (" + account.channel() + ") had fallen back by more than "
                        + evidence.wording().difference(Account.FALL_CELSIUS) + " for up to "
                        + Wording.minutes(account.brokenMinutes().worst()) + ".")
                .next(
                        "Do not serve on this record. Have growth during the break evaluated, or put it to the authority.")
                .channel(account.channel())
                .window(new Span(
                        account.span().fromMillis(),
                        account.lethalMillis().orElse(account.cook().toMillis())))
                .build();
    }

    private Check twoHeatings(Account account, Optional<CoolingRule> rule) {
        String approval = evidence.batch().approval();
        return Check.of(ID, "Approved as a cook in two heatings")
                .required(
                        "a written procedure the authority approved beforehand, for food chilled between two heatings")
                .citation(rule.map(CoolingRule::citation))
                .why(
                        approval.isEmpty()
                                ? "The core (" + account.channel()
                                        + ") was cold again before it was lethal, and the record names no approval."
                                : "The record names approval " + approval
                                        + "; whether this batch kept its terms is for the authority to say.")
                .next("Do not serve on this record. Put it to the authority with the approved procedure.")
                .channel(account.channel())
                .window(account.cook())
                .build();
    }

    /** The first heating's own limit. */
    private Optional<Check> firstHeating(CoolingRule rule) {
        Optional<CoolingRule.Stage> limited = rule.stages().stream()
                .filter(stage -> stage.start() == CoolingRule.Start.START_OF_HEATING
                        && stage.maxMinutes().isPresent())
                .findFirst();
        Optional<Stage> first = evidence.batch().stages().stream()
                .filter(stage -> stage.kind().isCook())
                .findFirst();
        if (limited.isEmpty() || first.isEmpty()) {
            return Optional.empty();
        }
        Span heating = evidence.timeline().span(first.get());
        double limit = limited.get().maxMinutes().getAsDouble();
        Bounded minutes = Bounded.exactly(heating.minutes());
        return Optional.of(Check.of(ID + ".first-heating", "First heating short enough")
                .required("first heating " + limited.get().comparison().words() + " " + Wording.minutes(limit))
                .citation(rule.citation())
                .verdict(Check.judge(minutes, limited.get().comparison(), limit))
                .measured(minutes)
                .limit(limit)
                .comparison(limited.get().comparison())
                .unit("min")
                .why("The first heating lasted " + Wording.minutes(heating.minutes()) + " by the record's stage times.")
                .next("Do not serve on this record. Put it to the authority.")
                .window(heating)
                .build());
    }

    /** How far and how long the core fell on its way from the smoker to the bath. */
    Optional<Caution> changeOver() {
        Optional<Stage> smoke =
                evidence.timeline().all(Stage.Kind.SMOKE).stream().reduce((one, other) -> other);
        Optional<Stage> bath = evidence.timeline().all(Stage.Kind.BATH).stream().findFirst();
        if (smoke.isEmpty()
                || bath.isEmpty()
                || evidence.timeline().chillBetweenCooks().isPresent()) {
            return Optional.empty();
        }
        long left = evidence.timeline().span(smoke.get()).toMillis();
        long until = evidence.timeline().span(bath.get()).toMillis();
        if (until <= left) {
            return Optional.empty();
        }
        return evidence.within(new Span(left, until)).stream()
                .filter(trace -> trace.size() > 1)
                .map(Dip::of)
                .filter(dip -> dip.fallCelsius() > evidence.toleranceCelsius())
                .max(Comparator.comparingDouble(Dip::fallCelsius))
                .map(dip -> new Caution(
                        "change-over",
                        "Between smoker and bath the core at " + dip.channel() + " fell by "
                                + evidence.wording().difference(dip.fallCelsius()) + " to "
                                + evidence.wording().temperature(dip.lowestCelsius())
                                + " and was back after " + Wording.minutes(dip.minutes())
                                + ". It counts as one cook; before lethality the time is in the come-up."));
    }

    private record Dip(String channel, double fallCelsius, double lowestCelsius, double minutes) {
        static Dip of(Trace trace) {
            double start = trace.celsius(0);
            int lowest = 0;
            int back = 0;
            while (back + 1 < trace.size() && trace.celsius(back + 1) < start) {
                back++;
                lowest = trace.celsius(back) < trace.celsius(lowest) ? back : lowest;
            }
            return new Dip(
                    trace.channel(),
                    start - trace.celsius(lowest),
                    trace.celsius(lowest),
                    (trace.millis(Math.min(back + 1, trace.size() - 1)) - trace.firstMillis()) / 60_000.0);
        }
    }
}
