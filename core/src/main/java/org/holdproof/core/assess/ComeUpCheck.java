package org.holdproof.core.assess;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.course.Account;
import org.holdproof.core.course.Accounts;
import org.holdproof.core.course.CoreBounds;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.SupportGap;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/**
 * Did the core pass through the growth range fast enough while heating? Times add up until a lethal time and temperature
 * was reached, dips and benches included (FSIS Cooking Guideline 2021, page 25). Where the authority sets no limit of its
 * own, another authority's is told as a caution and has no verdict.
 */
public final class ComeUpCheck {
    public static final String ID = "come-up";

    private final Evidence evidence;
    private final List<Account> accounts;

    ComeUpCheck(Evidence evidence, Accounts accounts) {
        this.evidence = evidence;
        this.accounts = accounts.probes();
    }

    private record Heating(Account account, Bounded minutes, boolean startLogged, Span span) {}

    /** The come-up, where the authority sets a limit and the batch has a cook. */
    Optional<Check> check() {
        return evidence.authority().comeUp().filter(this::isWhole).flatMap(rule -> slowest(rule)
                .map(heating -> judge(heating, rule)));
    }

    /** What goes with a come-up that the authority's limit or its guidance does not bear out. */
    Optional<Caution> caution() {
        Optional<HoldingRule> own = evidence.authority().comeUp().filter(this::isWhole);
        if (own.isPresent()) {
            return slowest(own.get())
                    .filter(heating -> kept(heating, own.get()) != Verdict.MET)
                    .flatMap(heating -> gap().map(gap -> new Caution(
                            "come-up.gap",
                            gap.title() + ": " + gap.vulnerability() + " ("
                                    + gap.citation().text() + ").")));
        }
        Optional<HoldingRule> guidance = evidence.authority().comeUpGuidance().filter(this::isWhole);
        return guidance.flatMap(rule -> slowest(rule)
                .filter(heating -> kept(heating, rule) != Verdict.MET)
                .map(heating -> new Caution(
                        "come-up.guidance",
                        evidence.authority().title() + " sets no come-up time. " + why(heating, rule, Verdict.MET)
                                + " As guidance, " + rule.citation().text() + " asks "
                                + rule.timeComparison().words() + " "
                                + Wording.minutes(rule.maxMinutes().orElseThrow())
                                + " there; toxin of S. aureus is not undone by heat.")));
    }

    private boolean isWhole(HoldingRule rule) {
        return rule.limit().isPresent()
                && rule.from().isPresent()
                && rule.maxMinutes().isPresent()
                && evidence.timeline().cook().isPresent();
    }

    private Optional<SupportGap> gap() {
        return evidence.authority()
                .gap(SupportGap.Waives.COME_UP, evidence.batch().product());
    }

    private static Verdict kept(Heating heating, HoldingRule rule) {
        return Check.judge(
                heating.minutes(), rule.timeComparison(), rule.maxMinutes().orElseThrow());
    }

    private Optional<Heating> slowest(HoldingRule rule) {
        return accounts.stream()
                .map(account -> measure(account, rule))
                .max(Comparator.<Heating, Verdict>comparing(heating -> kept(heating, rule))
                        .thenComparingDouble(heating -> heating.minutes().worst())
                        .thenComparingDouble(heating -> heating.minutes().nominal()));
    }

    private static Heating measure(Account account, HoldingRule rule) {
        long until = account.lethalMillis().orElse(account.cook().toMillis());
        Span span = new Span(
                account.span().fromMillis(), Math.max(until, account.span().fromMillis()));
        CoreBounds core = account.bounds();
        double lower = rule.from().orElseThrow().celsius();
        double upper = rule.limit().orElseThrow().celsius();
        double worst = 0;
        double nominal = 0;
        double best = 0;
        for (int i = 0; i < core.size() && core.fromMillis(i) < until; i++) {
            double minutes = (Math.min(until, core.toMillis(i)) - core.fromMillis(i)) / 60_000.0;
            boolean touched = core.high(i) > lower + TemperatureUnit.SLACK_CELSIUS
                    && core.low(i) < upper - TemperatureUnit.SLACK_CELSIUS;
            boolean inside = core.low(i) > lower && core.high(i) < upper;
            worst += touched ? minutes : 0;
            nominal += minutes
                    * (core.shareAtOrAbove(i, lower + TemperatureUnit.SLACK_CELSIUS)
                            - core.shareAtOrAbove(i, upper - TemperatureUnit.SLACK_CELSIUS));
            best += inside ? minutes : 0;
        }
        boolean startLogged = core.size() > 0
                && core.isRead(0)
                && core.lineFrom(0) + core.toleranceCelsius() <= lower + TemperatureUnit.SLACK_CELSIUS;
        return new Heating(
                account,
                new Bounded(
                        startLogged ? worst : Double.POSITIVE_INFINITY, Math.max(best, Math.min(worst, nominal)), best),
                startLogged,
                span);
    }

    private Check judge(Heating heating, HoldingRule rule) {
        double limit = rule.maxMinutes().orElseThrow();
        Verdict kept = kept(heating, rule);
        boolean allowed = kept == Verdict.MET || gap().isPresent();
        String band = evidence.wording().boundary(rule.from().orElseThrow()) + " and "
                + evidence.wording().boundary(rule.limit().orElseThrow());
        return Check.of(ID, "Come-up fast enough")
                .required(rule.timeComparison().words() + " " + Wording.minutes(limit) + " in all between " + band
                        + " while heating"
                        + gap().filter(found -> kept != Verdict.MET)
                                .map(found -> ", or " + found.title())
                                .orElse(""))
                .citation(
                        kept == Verdict.MET
                                ? rule.citation()
                                : gap().map(SupportGap::citation).orElse(rule.citation()))
                .verdict(allowed ? Verdict.MET : Verdict.NOT_PROVEN)
                .measured(heating.minutes())
                .limit(limit)
                .comparison(rule.timeComparison())
                .unit("min")
                .why(why(heating, rule, kept))
                .next(
                        "Do not serve on this record. Have growth during the come-up evaluated; S. aureus toxin is not undone by heat.")
                .channel(heating.account().channel())
                .window(heating.span())
                .build();
    }

    private String why(Heating heating, HoldingRule rule, Verdict kept) {
        String slowest = "The slowest probe (" + heating.account().channel() + ") ";
        if (!heating.startLogged()) {
            return slowest + "was already at "
                    + evidence.wording().temperature(heating.account().bounds().lineFrom(0))
                    + " at its first reading: how long it had been in the range is not logged.";
        }
        String range = slowest + "was in the range for "
                + Wording.between(heating.minutes().best(), heating.minutes().worst()) + ".";
        return kept == Verdict.NOT_MET
                ? range + " Beyond " + Wording.minutes(rule.maxMinutes().orElseThrow())
                        + " the guideline names a scientific gap (long come-up, gap 6): not a failure by itself, but no published support either."
                : range;
    }
}
