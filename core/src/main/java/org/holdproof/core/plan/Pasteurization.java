package org.holdproof.core.plan;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.kinetics.LethalRate;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.LethalityChoice;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.ThermalDeath;

/**
 * What an authority asks of a food's core: one row of its tables, or a reduction by its kinetics.
 *
 * @param rows by rising temperature; empty where the rule is stated as kinetics
 * @param death the kinetics with their target, where the rule is stated so
 */
public record Pasteurization(List<LethalityRow> rows, Optional<ThermalDeath> death) {
    public Pasteurization {
        rows = List.copyOf(rows);
    }

    /**
     * One row timed on a curve.
     *
     * @param reachedMinute when the core first came to its temperature; empty if never
     * @param metMinute when it had been there for its time; empty if never
     */
    public record RowTime(LethalityRow row, OptionalDouble reachedMinute, OptionalDouble metMinute) {}

    /** What the authority names for a food; empty where it names nothing. */
    public static Optional<Pasteurization> of(
            AuthorityProfile authority, Species species, Form form, OptionalDouble fatPercent) {
        return authority.lethalityFor(species, form).map(choice -> of(choice, fatPercent));
    }

    private static Pasteurization of(LethalityChoice choice, OptionalDouble fatPercent) {
        return new Pasteurization(
                choice.kinetics().isPresent() ? List.of() : choice.rowsFor(fatPercent), choice.kinetics());
    }

    /** The lowest temperature that is credited, in °C. */
    public double lowestCelsius() {
        return death.map(ThermalDeath::floorCelsius)
                .orElseGet(() -> rows.get(0).at().celsius());
    }

    /** Every row's times on a curve. */
    public List<RowTime> times(CoreCurve core) {
        return rows.stream()
                .map(row -> new RowTime(
                        row,
                        core.reaches(row.at().celsius()),
                        core.heldAtOrAbove(row.at().celsius(), row.seconds() / 60)))
                .toList();
    }

    /** The row that is met first. */
    public Optional<RowTime> first(CoreCurve core) {
        return times(core).stream()
                .filter(time -> time.metMinute().isPresent())
                .min(Comparator.comparingDouble(time -> time.metMinute().getAsDouble()));
    }

    /** The earliest minute at which the core is safe by the rule; empty if it never is. */
    public OptionalDouble safeMinute(CoreCurve core) {
        if (death.isPresent()) {
            return killed(death.get(), core);
        }
        return first(core).map(RowTime::metMinute).orElse(OptionalDouble.empty());
    }

    private static OptionalDouble killed(ThermalDeath death, CoreCurve core) {
        LethalRate rate = LethalRate.of(death);
        double needed = death.dMinutes() * death.targetLog10().orElseThrow();
        double done = 0;
        for (int i = 1; i < core.size(); i++) {
            double length = core.minute(i) - core.minute(i - 1);
            double step = rate.equivalentMinutes(core.celsius(i - 1), core.celsius(i), length);
            if (done + step >= needed) {
                return OptionalDouble.of(core.minute(i - 1) + length * (needed - done) / step);
            }
            done += step;
        }
        double end = core.celsius(core.size() - 1);
        return rate.at(end) > 0
                ? OptionalDouble.of(core.minute(core.size() - 1) + (needed - done) / rate.at(end))
                : OptionalDouble.empty();
    }
}
