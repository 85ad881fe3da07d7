package org.holdproof.core.rules;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.holdproof.core.batch.Product;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.quantity.TemperatureUnit;

/**
 * Which rule answers which question under one authority. Made with a {@link Builder}, by name.
 *
 * @param id the id a batch record names
 * @param title as printed
 * @param units the scales its reader uses, the first one leading
 * @param paper the sheet its reader prints on
 * @param lethality which table serves which food, first match wins
 * @param comeUp the come-up limit, where the authority has one
 * @param comeUpGuidance a come-up limit of another authority, where this one sets none: a caution, never a verdict
 * @param lowCook a limit on the time below a temperature while cooking
 * @param gaps processes its tables may be used for without one of their conditions
 * @param humidity ways to keep the surface moist that its tables are tied to; empty: none asked
 * @param surface how an intact piece may be made safe at its surface alone
 * @param parasites what kills the parasites of fish eaten raw or lightly cooked
 * @param undercooked what it asks of food served undercooked to a guest who asks for it
 * @param nonContinuous limits on a cook in two heatings with cooling between
 * @param seal the temperature a bag sealed after the cook must be sealed at
 * @param cooling the schedules it accepts, any one of which will do; the first one leads
 * @param hotHold the hot-holding minimum
 * @param hotHoldRoast the hot-holding minimum of a whole roast cooked by its roast table, where that is another one
 * @param hotAllowance what follows from a time under the hot-holding temperature
 * @param timeLimits rules by which time alone may keep food safe; one kept is enough
 * @param coldHold the cold-holding maximum
 * @param shelfLives how long the chilled food may be kept, the strictest reading first
 * @param reheat what food to be held hot is reheated to, or any food where it does not tell them apart
 * @param reheatToOrder what food for immediate service is reheated to, where that is another rule
 * @param reheatRoast what a whole roast cooked by its roast table may be reheated to instead
 * @param toleranceCelsius the accuracy it asks of a food thermometer, as a difference in °C
 * @param checkEveryDays how old a thermometer's last check may be, where it says
 * @param records what its records must hold
 * @param left questions it leaves to the local authority, in words
 */
public record AuthorityProfile(
        String id,
        String title,
        List<TemperatureUnit> units,
        Paper paper,
        List<LethalityChoice> lethality,
        Optional<HoldingRule> comeUp,
        Optional<HoldingRule> comeUpGuidance,
        Optional<HoldingRule> lowCook,
        List<SupportGap> gaps,
        List<HumidityOption> humidity,
        Optional<SurfaceRule> surface,
        Optional<ParasiteRule> parasites,
        Optional<WrittenRule> undercooked,
        Optional<CoolingRule> nonContinuous,
        Optional<WrittenRule> seal,
        List<CoolingRule> cooling,
        Optional<HoldingRule> hotHold,
        Optional<HoldingRule> hotHoldRoast,
        Optional<HotAllowance> hotAllowance,
        List<TimeLimit> timeLimits,
        Optional<HoldingRule> coldHold,
        List<ShelfLifeRule> shelfLives,
        Optional<ReheatingRule> reheat,
        Optional<ReheatingRule> reheatToOrder,
        Optional<ReheatingRule> reheatRoast,
        OptionalDouble toleranceCelsius,
        OptionalDouble checkEveryDays,
        List<WrittenRule> records,
        List<String> left) {

    public AuthorityProfile {
        units = List.copyOf(units);
        gaps = List.copyOf(gaps);
        lethality = List.copyOf(lethality);
        humidity = List.copyOf(humidity);
        cooling = List.copyOf(cooling);
        timeLimits = List.copyOf(timeLimits);
        shelfLives = List.copyOf(shelfLives);
        records = List.copyOf(records);
        left = List.copyOf(left);
    }

    /** The sheet a report is printed on. */
    public enum Paper {
        LETTER,
        A4
    }

    /** What makes a cook of this food lethal; empty: the authority names nothing for it. */
    public Optional<LethalityChoice> lethalityFor(Species species, Form form) {
        return lethality.stream().filter(choice -> choice.serves(species, form)).findFirst();
    }

    /** What makes a cook of this product lethal; empty: the authority names nothing for it. */
    public Optional<LethalityChoice> lethalityFor(Product product) {
        return lethalityFor(product.species(), product.form());
    }

    /** The come-up limit a plan keeps to: the authority's own, or the one it takes as guidance. */
    public Optional<HoldingRule> comeUpToPlanBy() {
        return comeUp.or(() -> comeUpGuidance);
    }

    /** The gap that lets this product be cooked without a condition; empty: none does. */
    public Optional<SupportGap> gap(SupportGap.Waives waived, Product product) {
        return gaps.stream()
                .filter(gap -> gap.waives() == waived && gap.covers(product))
                .findFirst();
    }

    /** The scale its reader reads first. */
    public TemperatureUnit leadingUnit() {
        return units.get(0);
    }

    /** A builder that holds nothing but these; every other question starts out unanswered. */
    public static Builder of(String id, String title, List<TemperatureUnit> units, Paper paper) {
        return new Builder(id, title, units, paper);
    }

    /** A builder that starts from this profile. */
    public Builder but() {
        return new Builder(id, title, units, paper).answersOf(this);
    }

    /** A profile in the making. Parts not set are unanswered: empty. */
    public static final class Builder {
        private final String id;
        private final String title;
        private final List<TemperatureUnit> units;
        private final Paper paper;
        private List<LethalityChoice> lethality = List.of();
        private Optional<HoldingRule> comeUp = Optional.empty();
        private Optional<HoldingRule> comeUpGuidance = Optional.empty();
        private Optional<HoldingRule> lowCook = Optional.empty();
        private List<SupportGap> gaps = List.of();
        private List<HumidityOption> humidity = List.of();
        private Optional<SurfaceRule> surface = Optional.empty();
        private Optional<ParasiteRule> parasites = Optional.empty();
        private Optional<WrittenRule> undercooked = Optional.empty();
        private Optional<CoolingRule> nonContinuous = Optional.empty();
        private Optional<WrittenRule> seal = Optional.empty();
        private List<CoolingRule> cooling = List.of();
        private Optional<HoldingRule> hotHold = Optional.empty();
        private Optional<HoldingRule> hotHoldRoast = Optional.empty();
        private Optional<HotAllowance> hotAllowance = Optional.empty();
        private List<TimeLimit> timeLimits = List.of();
        private Optional<HoldingRule> coldHold = Optional.empty();
        private List<ShelfLifeRule> shelfLives = List.of();
        private Optional<ReheatingRule> reheat = Optional.empty();
        private Optional<ReheatingRule> reheatToOrder = Optional.empty();
        private Optional<ReheatingRule> reheatRoast = Optional.empty();
        private OptionalDouble toleranceCelsius = OptionalDouble.empty();
        private OptionalDouble checkEveryDays = OptionalDouble.empty();
        private List<WrittenRule> records = List.of();
        private List<String> left = List.of();

        private Builder(String id, String title, List<TemperatureUnit> units, Paper paper) {
            this.id = id;
            this.title = title;
            this.units = units;
            this.paper = paper;
        }

        /** Takes over every answer of a profile; what is set afterwards replaces it. */
        public Builder answersOf(AuthorityProfile base) {
            lethality = base.lethality;
            comeUp = base.comeUp;
            comeUpGuidance = base.comeUpGuidance;
            lowCook = base.lowCook;
            gaps = base.gaps;
            humidity = base.humidity;
            surface = base.surface;
            parasites = base.parasites;
            undercooked = base.undercooked;
            nonContinuous = base.nonContinuous;
            seal = base.seal;
            cooling = base.cooling;
            hotHold = base.hotHold;
            hotHoldRoast = base.hotHoldRoast;
            hotAllowance = base.hotAllowance;
            timeLimits = base.timeLimits;
            coldHold = base.coldHold;
            shelfLives = base.shelfLives;
            reheat = base.reheat;
            reheatToOrder = base.reheatToOrder;
            reheatRoast = base.reheatRoast;
            toleranceCelsius = base.toleranceCelsius;
            checkEveryDays = base.checkEveryDays;
            records = base.records;
            left = base.left;
            return this;
        }

        /** Choices that are asked before those there are. */
        public Builder servesFirst(List<LethalityChoice> choices) {
            lethality = Stream.concat(choices.stream(), lethality.stream()).toList();
            return this;
        }

        public Builder lethality(List<LethalityChoice> lethality) {
            this.lethality = lethality;
            return this;
        }

        public Builder comeUp(Optional<HoldingRule> comeUp) {
            this.comeUp = comeUp;
            return this;
        }

        public Builder comeUpGuidance(Optional<HoldingRule> comeUpGuidance) {
            this.comeUpGuidance = comeUpGuidance;
            return this;
        }

        public Builder lowCook(Optional<HoldingRule> lowCook) {
            this.lowCook = lowCook;
            return this;
        }

        public Builder gaps(List<SupportGap> gaps) {
            this.gaps = gaps;
            return this;
        }

        public Builder humidity(List<HumidityOption> humidity) {
            this.humidity = humidity;
            return this;
        }

        public Builder surface(Optional<SurfaceRule> surface) {
            this.surface = surface;
            return this;
        }

        public Builder parasites(Optional<ParasiteRule> parasites) {
            this.parasites = parasites;
            return this;
        }

        public Builder undercooked(Optional<WrittenRule> undercooked) {
            this.undercooked = undercooked;
            return this;
        }

        public Builder nonContinuous(Optional<CoolingRule> nonContinuous) {
            this.nonContinuous = nonContinuous;
            return this;
        }

        public Builder seal(Optional<WrittenRule> seal) {
            this.seal = seal;
            return this;
        }

        public Builder cooling(List<CoolingRule> cooling) {
            this.cooling = cooling;
            return this;
        }

        public Builder hotHold(Optional<HoldingRule> hotHold) {
            this.hotHold = hotHold;
            return this;
        }

        public Builder hotHoldRoast(Optional<HoldingRule> hotHoldRoast) {
            this.hotHoldRoast = hotHoldRoast;
            return this;
        }

        public Builder hotAllowance(Optional<HotAllowance> hotAllowance) {
            this.hotAllowance = hotAllowance;
            return this;
        }

        public Builder timeLimits(List<TimeLimit> timeLimits) {
            this.timeLimits = timeLimits;
            return this;
        }

        public Builder coldHold(Optional<HoldingRule> coldHold) {
            this.coldHold = coldHold;
            return this;
        }

        public Builder shelfLives(List<ShelfLifeRule> shelfLives) {
            this.shelfLives = shelfLives;
            return this;
        }

        public Builder reheat(Optional<ReheatingRule> reheat) {
            this.reheat = reheat;
            return this;
        }

        public Builder reheatToOrder(Optional<ReheatingRule> reheatToOrder) {
            this.reheatToOrder = reheatToOrder;
            return this;
        }

        public Builder reheatRoast(Optional<ReheatingRule> reheatRoast) {
            this.reheatRoast = reheatRoast;
            return this;
        }

        public Builder toleranceCelsius(OptionalDouble toleranceCelsius) {
            this.toleranceCelsius = toleranceCelsius;
            return this;
        }

        public Builder checkEveryDays(OptionalDouble checkEveryDays) {
            this.checkEveryDays = checkEveryDays;
            return this;
        }

        public Builder records(List<WrittenRule> records) {
            this.records = records;
            return this;
        }

        public Builder left(List<String> left) {
            this.left = left;
            return this;
        }

        /** The profile. */
        public AuthorityProfile build() {
            return new AuthorityProfile(
                    id,
                    title,
                    units,
                    paper,
                    lethality,
                    comeUp,
                    comeUpGuidance,
                    lowCook,
                    gaps,
                    humidity,
                    surface,
                    parasites,
                    undercooked,
                    nonContinuous,
                    seal,
                    cooling,
                    hotHold,
                    hotHoldRoast,
                    hotAllowance,
                    timeLimits,
                    coldHold,
                    shelfLives,
                    reheat,
                    reheatToOrder,
                    reheatRoast,
                    toleranceCelsius,
                    checkEveryDays,
                    records,
                    left);
        }
    }
}
