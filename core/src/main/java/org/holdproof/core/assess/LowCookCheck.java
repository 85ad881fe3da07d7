package org.holdproof.core.assess;

import java.util.Comparator;
import java.util.Optional;
import org.holdproof.core.course.Account;
import org.holdproof.core.course.Accounts;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.Trace;
import org.holdproof.core.measure.BandTime;
import org.holdproof.core.measure.Slowest;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/** Was the core below a temperature for no longer than the authority allows, heating and cooking together? */
public final class LowCookCheck {
    public static final String ID = "low-cook";

    private final Evidence evidence;
    private final HoldingRule rule;

    private final Accounts accounts;

    LowCookCheck(Evidence evidence, Accounts accounts, HoldingRule rule) {
        this.evidence = evidence;
        this.accounts = accounts;
        this.rule = rule;
    }

    /** Minutes of a cook spent below the rule's temperature. */
    public static Bounded minutesBelow(Trace trace, HoldingRule rule, double toleranceCelsius) {
        return BandTime.minutes(
                trace, Double.NEGATIVE_INFINITY, rule.limit().orElseThrow().celsius(), toleranceCelsius);
    }

    Optional<Check> check() {
        Optional<Span> cook = evidence.timeline().cook();
        if (cook.isEmpty() || rule.limit().isEmpty() || rule.maxMinutes().isEmpty()) {
            return Optional.empty();
        }
        record Timed(Trace trace, Bounded minutes) {}
        double limit = rule.maxMinutes().getAsDouble();
        return accounts.probes().stream()
                .map(this::heating)
                .filter(trace -> !trace.isEmpty())
                .map(trace -> new Timed(trace, minutesBelow(trace, rule, evidence.toleranceCelsius())))
                .max(Comparator.comparing(Timed::minutes, Slowest.GOVERNS))
                .map(slowest -> {
                    Verdict verdict = Check.judge(slowest.minutes(), rule.timeComparison(), limit);
                    String below = evidence.wording().boundary(rule.limit().get());
                    return Check.of(ID, "Not cooked too long below " + below)
                            .required("heating and cooking below " + below + " for "
                                    + rule.timeComparison().words() + " " + Wording.minutes(limit))
                            .citation(rule.citation())
                            .verdict(verdict == Verdict.MET ? Verdict.MET : Verdict.NOT_PROVEN)
                            .measured(slowest.minutes())
                            .limit(limit)
                            .comparison(rule.timeComparison())
                            .unit("min")
                            .why("The coldest probe (" + slowest.trace().channel() + ") was below it for "
                                    + Wording.between(
                                            slowest.minutes().best(),
                                            slowest.minutes().worst()) + ".")
                            .next("Do not serve on this record. Ask the authority which validated process applies.")
                            .channel(slowest.trace().channel())
                            .window(new Span(
                                    slowest.trace().firstMillis(),
                                    slowest.trace().lastMillis()))
                            .build();
                });
    }

    /** The readings from the record's beginning until the core first left hot. */
    private Trace heating(Account account) {
        long until = account.spells().stream()
                .findFirst()
                .map(spell -> spell.span().fromMillis())
                .orElse(account.cook().toMillis());
        return account.bounds()
                .trace()
                .between(
                        account.cook().fromMillis(),
                        Math.max(until, account.cook().fromMillis()));
    }
}
