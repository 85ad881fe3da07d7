package org.holdproof.core.assess;

import java.util.List;
import java.util.Optional;
import org.holdproof.core.batch.Moisture;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Account;
import org.holdproof.core.course.Accounts;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.OvenCondition;
import org.holdproof.core.rules.OvenCondition.Oven;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;

/**
 * Was the oven such as the roast's table asks? Where an oven made the food lethal, its temperature for the piece's weight
 * must be on record, or its humidity. A cook that is lethal in a sealed bag or in the water bath needs none.
 */
public final class OvenCheck {
    public static final String ID = "oven";

    private final Evidence evidence;
    private final Accounts accounts;

    OvenCheck(Evidence evidence, Accounts accounts) {
        this.evidence = evidence;
        this.accounts = accounts;
    }

    Optional<Check> check(Check lethality) {
        List<OvenCondition> conditions =
                accounts.choice().map(choice -> choice.ovens()).orElse(List.of());
        if (conditions.isEmpty()
                || lethality.verdict() == Verdict.NOT_MET
                || lethality.measured().isEmpty()
                || isLethalOutsideAnOven()) {
            return Optional.empty();
        }
        Optional<OvenCondition> kept = conditions.stream().filter(this::isKept).findFirst();
        OvenCondition first = kept.orElse(conditions.get(0));
        return Optional.of(Check.of(ID, "Oven as the table asks")
                .required(
                        kept.map(OvenCondition::title)
                                .orElse(
                                        "the oven's temperature for the piece's weight, humidity above 90 % for an hour, or a tight bag"))
                .citation(first.citation())
                .verdict(kept.isPresent() ? Verdict.MET : Verdict.NOT_PROVEN)
                .why(
                        kept.isPresent()
                                ? "The record shows it in the smoker."
                                : "The food was made lethal in the smoker, and the record shows none of the oven's conditions there.")
                .next(
                        "Do not serve on this record. Add the smoker's set point, the piece's weight and its humidity, or finish the cook sealed in the bag until a row is met there.")
                .build());
    }

    /** Whether the readings in the bath, or from sealing on, meet a row by themselves. */
    private boolean isLethalOutsideAnOven() {
        long sealed = evidence.batch()
                .first(Stage.Kind.BAG)
                .map(stage -> stage.from().toEpochMilli())
                .orElse(Long.MAX_VALUE);
        return accounts.probes().stream().allMatch(account -> isLethal(account, sealed));
    }

    private boolean isLethal(Account account, long sealed) {
        if (sealed < account.cook().toMillis()
                && met(account, new Span(sealed, account.cook().toMillis()))) {
            return true;
        }
        return evidence.timeline().all(Stage.Kind.BATH).stream()
                .map(stage -> evidence.timeline().span(stage))
                .anyMatch(span -> met(account, span));
    }

    private boolean met(Account account, Span window) {
        return accounts.choice()
                .map(choice ->
                        RowsMet.rows(choice.tables(), evidence.batch().product().fatPercent()))
                .filter(rows -> !rows.isEmpty())
                .map(rows -> RowsMet.of(account, rows, window).verdict() == Verdict.MET)
                .orElse(false);
    }

    /** An oven of unknown kind must be as hot as a still dry one; an unknown weight counts as a light piece. */
    private boolean isKept(OvenCondition condition) {
        double kilograms = evidence.batch().product().weightKilograms().orElse(0);
        List<Stage> smokes = evidence.timeline().all(Stage.Kind.SMOKE);
        if (!condition.isFor(kilograms) || smokes.isEmpty() || condition.oven() == Oven.CONVECTION) {
            return false;
        }
        return smokes.stream()
                .allMatch(smoke -> condition.oven() == Oven.STILL_DRY
                        ? smoke.setPointCelsius().isPresent()
                                && condition
                                        .comparison()
                                        .holds(
                                                smoke.setPointCelsius().getAsDouble(),
                                                condition.temperature().celsius(),
                                                TemperatureUnit.SLACK_CELSIUS)
                        : isHumid(smoke, condition.humidityMinutes().orElse(0)));
    }

    private boolean isHumid(Stage smoke, double minutes) {
        return smoke.moisture()
                .filter(moisture -> moisture.means() == Moisture.Means.HUMID_AIR)
                .filter(moisture -> moisture.minutes()
                                .orElse(evidence.timeline().span(smoke).minutes())
                        >= minutes - Check.FIGURE_SLACK)
                .isPresent();
    }
}
