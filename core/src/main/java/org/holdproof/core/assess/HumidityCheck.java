package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.Moisture;
import org.holdproof.core.batch.Moisture.Means;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Accounts;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.HumidityOption;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/**
 * Was the surface moist where the food was made lethal? Tables worked out for moist heat do not hold for a surface that
 * dries; a sealed bag needs nothing more. Put only where a row was met or may have been.
 */
public final class HumidityCheck {
    public static final String ID = "humidity";

    private final Evidence evidence;
    private final Accounts accounts;
    private final List<RowsMet.Counted> rows;

    HumidityCheck(Evidence evidence, Accounts accounts) {
        this.evidence = evidence;
        this.accounts = accounts;
        this.rows = accounts.choice()
                .map(choice ->
                        RowsMet.rows(choice.tables(), evidence.batch().product().fatPercent()))
                .orElse(List.of());
    }

    Optional<Check> check(Check lethality) {
        List<HumidityOption> options = evidence.authority().humidity();
        if (options.isEmpty()
                || rows.isEmpty()
                || lethality.verdict() == Verdict.NOT_MET
                || lethality.measured().isEmpty()) {
            return Optional.empty();
        }
        Optional<HumidityOption> bag = options.stream()
                .filter(option -> option.means() == Means.SEALED_BAG)
                .findFirst();
        if (bag.isPresent() && lethalWhenSealed(lethality)) {
            return Optional.of(answer(
                    bag.get(), Verdict.MET, "The lethal step, as far as there was one, ran sealed in the bag.", ""));
        }
        List<String> tried = new ArrayList<>();
        for (Stage stage : evidence.timeline().all(Stage.Kind.SMOKE)) {
            for (HumidityOption option : options) {
                if (offered(stage, option)) {
                    String missing = missing(option, stage);
                    if (missing.isEmpty()) {
                        return Optional.of(answer(
                                option,
                                Verdict.MET,
                                "The surface was kept moist in the "
                                        + stage.kind().title() + ": " + option.title() + ".",
                                ""));
                    }
                    tried.add(option.title() + ": " + missing);
                }
            }
        }
        return Optional.of(unproven(options.get(0), tried));
    }

    /**
     * Whether the food was made lethal sealed, or can only have been: the readings from bagging on meet a row by
     * themselves, or the time that decides lies after it.
     */
    private boolean lethalWhenSealed(Check lethality) {
        Optional<Stage> sealed = evidence.batch().first(Stage.Kind.BAG);
        if (sealed.isEmpty()) {
            return false;
        }
        long from = sealed.get().from().toEpochMilli();
        return lethality.window().filter(span -> span.fromMillis() >= from).isPresent()
                || accounts.probes().stream()
                        .allMatch(account -> from < account.cook().toMillis()
                                && RowsMet.of(
                                                        account,
                                                        rows,
                                                        new Span(
                                                                from,
                                                                account.cook().toMillis()))
                                                .verdict()
                                        == Verdict.MET);
    }

    private boolean offered(Stage stage, HumidityOption option) {
        return option.means() == Means.LARGE_PIECE
                ? option.pieceKilograms().isPresent()
                        && evidence.batch().product().weightKilograms().orElse(0)
                                >= option.pieceKilograms().getAsDouble()
                : stage.moisture()
                        .filter(moisture -> moisture.means() == option.means())
                        .isPresent();
    }

    /** What an option asks that the record does not show; empty where it shows all. */
    private String missing(HumidityOption option, Stage stage) {
        double cookMinutes = evidence.timeline().span(stage).minutes();
        if (cookMinutes < option.cookAtLeastMinutes()) {
            return "the cook lasted " + Wording.minutes(cookMinutes) + ", at least "
                    + Wording.minutes(option.cookAtLeastMinutes()) + " is asked";
        }
        double lasted = stage.moisture()
                .map(Moisture::minutes)
                .orElse(OptionalDouble.empty())
                .orElse(cookMinutes);
        double needed = option.neededMinutes(cookMinutes);
        if (lasted < needed - Check.FIGURE_SLACK) {
            return "it lasted " + Wording.minutes(lasted) + ", " + Wording.minutes(needed) + " is asked";
        }
        if (option.ovenAtLeast().isPresent()
                && stage.setPointCelsius().orElse(Double.NEGATIVE_INFINITY)
                        < option.ovenAtLeast().get().celsius()) {
            return "the oven's set point is not recorded at or above "
                    + evidence.wording().boundary(option.ovenAtLeast().get());
        }
        if (option.endPoint().isPresent()
                && !endPointMet(option.endPoint().get().celsius())) {
            return "it may only be used with a row at or above "
                    + evidence.wording().boundary(option.endPoint().get()) + ", and none was met";
        }
        return "";
    }

    private boolean endPointMet(double celsius) {
        List<RowsMet.Counted> hotEnough = rows.stream()
                .filter(counted -> counted.row().at().celsius() >= celsius - TemperatureUnit.SLACK_CELSIUS)
                .toList();
        return !hotEnough.isEmpty()
                && accounts.probes().stream()
                        .allMatch(account ->
                                RowsMet.of(account, hotEnough, account.cook()).verdict() == Verdict.MET);
    }

    private static Check answer(HumidityOption option, Verdict verdict, String why, String next) {
        return Check.of(ID, "Surface kept moist")
                .required(
                        "a moist surface in the lethal step: " + option.title().toLowerCase(Locale.ROOT))
                .citation(option.citation())
                .verdict(verdict)
                .comparison(Comparison.AT_LEAST)
                .why(why)
                .next(next)
                .build();
    }

    private static Check unproven(HumidityOption first, List<String> tried) {
        return Check.of(ID, "Surface kept moist")
                .required("a moist surface in the lethal step, by one of the guideline's options, or a sealed bag")
                .citation(first.citation())
                .verdict(Verdict.NOT_PROVEN)
                .comparison(Comparison.AT_LEAST)
                .why("The lethal step was not sealed, and the record shows no moist surface"
                        + (tried.isEmpty() ? "" : " (" + String.join("; ", tried) + ")")
                        + ". Dry heat without it is a gap the guideline names (scientific gap 3).")
                .next(
                        "Do not serve on this record. Add the moment of bagging, or how the surface was kept moist in the smoker, or finish the cook sealed in the bag until a row is met there.")
                .build();
    }

    /** Smoke that dries a piece before it is bagged may leave it drier than the table was worked out for. */
    static Optional<Caution> dried(Evidence evidence) {
        boolean bagged = evidence.batch().first(Stage.Kind.BAG).isPresent();
        boolean dry = evidence.timeline().all(Stage.Kind.SMOKE).stream()
                .anyMatch(stage -> stage.moisture().isEmpty());
        return evidence.authority().humidity().isEmpty() || !bagged || !dry
                ? Optional.empty()
                : Optional.of(
                        new Caution(
                                "humidity.dried",
                                "The piece was smoked, with no humidity recorded, before it was bagged. If its water activity fell, the guideline's table may ask too little of the bagged cook (scientific gap 5)."));
    }
}
