package org.holdproof.core.assess;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.holdproof.core.batch.Product;
import org.holdproof.core.course.Account;
import org.holdproof.core.course.Accounts;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.kinetics.GeneralMethod;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.LethalityChoice;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.LethalityTable.Counting;
import org.holdproof.core.rules.ThermalDeath;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/** Was the core pasteurized, by the rule the authority names for this food? The coldest probe answers. */
public final class LethalityCheck {
    public static final String ID = "lethality";
    private static final String TITLE = "Core pasteurized";
    private static final String NOT_SERVED = "Do not serve. ";

    private final Evidence evidence;
    private final Accounts accounts;

    LethalityCheck(Evidence evidence, Accounts accounts) {
        this.evidence = evidence;
        this.accounts = accounts;
    }

    Check check() {
        Product product = evidence.batch().product();
        Optional<LethalityChoice> choice = accounts.choice();
        if (choice.isEmpty()) {
            return unanswered(
                    "none published for " + words(product),
                    evidence.authority().title() + " as held here names no time and temperature for " + words(product)
                            + ".",
                    NOT_SERVED
                            + "Ask the authority which process applies, or use a validated process of the site's own.");
        }
        if (evidence.timeline().cook().isEmpty()) {
            return unanswered(
                    "one row of the published table",
                    "The batch record names no cooking stage.",
                    "Add the smoke or bath stage with its times to the batch record.");
        }
        if (evidence.core().stream().anyMatch(Trace::isEmpty)) {
            return unanswered(
                    "one row of the published table",
                    "A core probe has no reading.",
                    NOT_SERVED + "Without a core reading nothing is proven.");
        }
        return choice.get().kinetics().isPresent()
                ? byKinetics(choice.get().kinetics().get())
                : byRows(RowsMet.rows(choice.get().tables(), product.fatPercent()));
    }

    private Check byRows(List<RowsMet.Counted> rows) {
        RowsMet governing = RowsMet.governing(accounts.probes().stream()
                .map(account -> RowsMet.of(account, rows, account.cook()))
                .toList());
        LethalityRow row = governing.row();
        String at = evidence.wording().boundary(row.at());
        String counted = governing.counting() == Counting.TOTAL ? " in all" : " without a break";
        return Check.of(ID, TITLE)
                .required("core at or above " + at + " for " + row.printedTime() + counted
                        + ", or another row of the table")
                .citation(row.citation())
                .verdict(governing.verdict())
                .measured(governing.minutes())
                .limit(governing.limitMinutes())
                .comparison(Comparison.AT_LEAST)
                .unit("min")
                .why(why(governing, rows, at))
                .next(next(governing.verdict()))
                .channel(governing.account().channel())
                .window(
                        governing.verdict() == Verdict.MET && governing.counting() == Counting.UNBROKEN
                                ? governing.longest()
                                : governing.account().cook())
                .build();
    }

    private String why(RowsMet governing, List<RowsMet.Counted> rows, String at) {
        double peak = peak(governing.account());
        LethalityRow lowest = lowestRow(rows);
        String probe = "The coldest probe (" + governing.account().channel() + ")";
        String asked = governing.row().printedTime() + " is asked";
        if (governing.verdict() == Verdict.MET) {
            return probe + " stayed at or above " + at + " for "
                    + Wording.minutes(governing.minutes().worst()) + " even at worst; " + asked + "."
                    + firstProven(governing.account());
        }
        if (peak + evidence.toleranceCelsius() < lowest.at().celsius() - TemperatureUnit.SLACK_CELSIUS) {
            return probe + " never rose above " + evidence.wording().temperature(peak)
                    + ". The table's lowest row is "
                    + evidence.wording().boundary(lowest.at()) + ": below it no time is long enough."
                    + nearMiss(peak, lowest);
        }
        if (governing.verdict() == Verdict.NOT_MET) {
            return probe + " was at or above " + at + " for "
                    + Wording.minutes(governing.minutes().best()) + " even at best; " + asked
                    + ", and no other row is met.";
        }
        String blind = hasGap(governing.account())
                ? "A gap in the readings lies in the cook: nothing is credited while nobody looked. "
                : "";
        return blind + probe + " was at or above " + at + " for "
                + Wording.between(
                        governing.minutes().worst(), governing.minutes().best()) + "; " + asked
                + ", so the record does not decide.";
    }

    /** When a row of the table was first proven, which may be another one, earlier. */
    private String firstProven(Account account) {
        return account.lethalMillis().isPresent()
                ? " A row of the table was first proven at "
                        + evidence.wording().clock(account.lethalMillis().getAsLong()) + "."
                : "";
    }

    /** A core that met the rounded Celsius figure but not the Fahrenheit one it stands for. */
    private static String nearMiss(double peakCelsius, LethalityRow lowest) {
        double rounded = Math.floor(lowest.at().celsius() * 10) / 10;
        if (lowest.at().unit() == TemperatureUnit.FAHRENHEIT && peakCelsius >= rounded) {
            return String.format(
                    Locale.ROOT,
                    " (%.1f °C is %.2f °F, not %s.)",
                    rounded,
                    TemperatureUnit.FAHRENHEIT.fromCelsius(rounded),
                    lowest.at().text());
        }
        return "";
    }

    private Check byKinetics(ThermalDeath death) {
        double target = death.targetLog10().orElseThrow();
        List<Trace> traces = accounts.probes().stream()
                .map(account -> account.bounds()
                        .trace()
                        .between(account.cook().fromMillis(), account.cook().toMillis()))
                .toList();
        Comparator<Bounded> byWorst = Comparator.comparingDouble(Bounded::worst);
        Trace governing = traces.get(0);
        Bounded least = null;
        for (Trace trace : traces) {
            Bounded reduction = new GeneralMethod(
                            List.of(death), evidence.toleranceCelsius(), evidence.gapMinutes(trace))
                    .log10Reductions(trace)
                    .get(0);
            if (least == null || byWorst.compare(reduction, least) < 0) {
                least = reduction;
                governing = trace;
            }
        }
        Bounded reduction = Objects.requireNonNull(least);
        Verdict verdict = Check.judge(reduction, Comparison.AT_LEAST, target);
        return Check.of(ID, TITLE)
                .required(String.format(Locale.ROOT, "%.1f-log reduction of %s, integrated", target, death.organism()))
                .citation(death.citation())
                .verdict(verdict)
                .measured(reduction)
                .limit(target)
                .comparison(Comparison.AT_LEAST)
                .unit("log10")
                .why(String.format(
                        Locale.ROOT,
                        "The coldest probe (%s) gives %.1f log at worst, %.1f at best; %.1f is asked.",
                        governing.channel(),
                        reduction.worst(),
                        reduction.best(),
                        target))
                .next(next(verdict))
                .channel(governing.channel())
                .build();
    }

    private static boolean hasGap(Account account) {
        return account.unseen().stream()
                .anyMatch(gap -> gap.fromMillis() < account.cook().toMillis());
    }

    private static String next(Verdict verdict) {
        return switch (verdict) {
            case MET -> "";
            case NOT_PROVEN ->
                NOT_SERVED
                        + "While the food is still hot, cook on until a row is proven; otherwise hold it apart and have it evaluated.";
            case NOT_MET ->
                NOT_SERVED
                        + "While the food is still hot, cook on until a row is met; otherwise hold it apart, and recook or discard it as the HACCP plan says.";
        };
    }

    private static Check unanswered(String rule, String why, String next) {
        return Check.of(ID, TITLE)
                .required(rule)
                .verdict(Verdict.NOT_PROVEN)
                .comparison(Comparison.AT_LEAST)
                .why(why)
                .next(next)
                .build();
    }

    private static LethalityRow lowestRow(List<RowsMet.Counted> rows) {
        return rows.stream()
                .map(RowsMet.Counted::row)
                .min(Comparator.comparingDouble(row -> row.at().celsius()))
                .orElseThrow();
    }

    private static double peak(Account account) {
        double peak = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < account.bounds().size(); i++) {
            if (account.bounds().isRead(i)
                    && account.bounds().fromMillis(i) < account.cook().toMillis()) {
                peak = Math.max(
                        peak, account.bounds().high(i) - account.bounds().toleranceCelsius());
            }
        }
        return peak;
    }

    private static String words(Product product) {
        return word(product.form()) + " " + word(product.species());
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
