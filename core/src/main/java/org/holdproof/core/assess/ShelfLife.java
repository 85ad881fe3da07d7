package org.holdproof.core.assess;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.holdproof.core.rules.ShelfLifeRule;

/** The last day a chilled food may be served, counted in calendar days as its rule counts them. */
public final class ShelfLife {
    private ShelfLife() {}

    /**
     * Days in the freezer, which do not count; the days before do.
     *
     * @param from the day it was frozen, at its close
     * @param thawed the day it was thawed
     */
    public record Frozen(LocalDate from, LocalDate thawed) {}

    /**
     * The last day.
     *
     * @param packaged the day of preparation or packaging; of a food combined from several, the earliest
     * @param removed the day it left the colder store, for a rule that counts from there
     * @throws IllegalArgumentException if the rule counts from removal and the food was not removed
     */
    public static LocalDate lastDay(
            ShelfLifeRule rule, LocalDate packaged, Optional<LocalDate> removed, Optional<Frozen> frozen) {
        LocalDate last =
                switch (rule.from()) {
                    case DAY_ONE -> packaged.plusDays(rule.days() - 1L);
                    case PREPARATION, PACKAGING -> packaged.plusDays(rule.days());
                    case REMOVAL ->
                        removed.orElseThrow(() -> new IllegalArgumentException(rule.id() + " counts from removal"))
                                .plusDays(rule.days());
                };
        if (rule.packagedDays().isPresent()) {
            LocalDate never = packaged.plusDays(rule.packagedDays().getAsInt());
            last = last.isAfter(never) ? never : last;
        }
        if (frozen.isEmpty()) {
            return last;
        }
        long daysInTheFreezer =
                ChronoUnit.DAYS.between(frozen.get().from(), frozen.get().thawed()) - 1;
        return last.plusDays(Math.max(0, daysInTheFreezer));
    }
}
