package org.holdproof.cli;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.cli.terminal.AgainstAnswer;
import org.holdproof.cli.terminal.Plates;
import org.holdproof.cli.terminal.QualityLines;
import org.holdproof.core.heat.smoke.Arrival;
import org.holdproof.core.plan.BathPlan;
import org.holdproof.core.plan.HeatFigures;
import org.holdproof.core.plan.NoPlan;
import org.holdproof.core.plan.Plan;
import org.holdproof.core.plan.PlanWording;
import org.holdproof.core.plan.PlannedCook;
import org.holdproof.core.plan.PlannedQuality;
import org.holdproof.core.plan.SmokerAllTheWay;
import org.holdproof.core.plan.UnplannableException;
import org.holdproof.core.quality.Price;
import org.holdproof.core.quality.QualityModels;
import org.holdproof.core.quality.QualityOutlook;
import org.holdproof.core.quality.WeighedCook;
import org.holdproof.core.quantity.QuantityKind;
import org.holdproof.core.quantity.UnreadableQuantityException;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.TrimmedCut;
import picocli.CommandLine.Option;

/** What a plan is asked about weight and cost. */
final class QualityOptions {
    @Option(names = "--weight", paramLabel = "WEIGHT", description = "What is bought, all pieces together.")
    private Optional<String> weight = Optional.empty();

    @Option(names = "--portion", paramLabel = "WEIGHT", description = "What one guest gets; needs --weight or --price.")
    private Optional<String> portion = Optional.empty();

    @Option(
            names = "--cut",
            paramLabel = "CUT",
            description =
                    "Its cut and trim, for the weight, such as brisket-flat-trimmed; any beef where it is not said.")
    private Optional<String> cut = Optional.empty();

    @Option(
            names = "--trim",
            paramLabel = "PERCENT",
            description = "What is cut off before the cook, such as \"20 %%\"; nothing where it is not said.")
    private Optional<String> trim = Optional.empty();

    @Option(
            names = "--price",
            paramLabel = "PRICE",
            description = "What the raw cut costs, such as \"4.99/lb\"; needs --portion.")
    private Optional<String> price = Optional.empty();

    @Option(
            names = "--against",
            paramLabel = "COOK",
            description = "Set the plan beside the same cook but for what is named, such as \"price 9.99/lb\", "
                    + "\"bath 145 °F for 36 h\" or \"smoker 250 °F to 203 °F\".")
    private Optional<String> against = Optional.empty();

    /** @param table whether a table of baths alone is asked for */
    void checkTogether(boolean table, boolean oneBath) throws Refusal {
        if (portion.isPresent() && weight.isEmpty() && price.isEmpty()) {
            throw Refusal.usage("--portion counts from what goes in: add --weight, or --price");
        }
        if (price.isPresent() && portion.isEmpty()) {
            throw Refusal.usage("--price is told by the portion: add --portion, such as \"6 oz\"");
        }
        if (table && (weight.isPresent() || cut.isPresent() || price.isPresent() || trim.isPresent())) {
            throw Refusal.usage("--table is of baths alone: leave out --weight, --cut, --trim and --price");
        }
        if (against.isPresent() && !oneBath) {
            throw Refusal.usage("--against sets one plan beside another: say what the bath is set to with --bath");
        }
    }

    Plates plates() throws Refusal {
        try {
            return new Plates(
                    kilograms("--weight", weight),
                    trim.isPresent() ? OtherCook.trim(trim.get()) : 0,
                    kilograms("--portion", portion),
                    price.isPresent() ? Optional.of(Price.parse(price.get())) : Optional.empty());
        } catch (UnreadableQuantityException unreadable) {
            throw Refusal.usage("--trim and --price: " + unreadable.getMessage());
        }
    }

    private static OptionalDouble kilograms(String option, Optional<String> text) throws Refusal {
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        try {
            double kilograms = QuantityKind.WEIGHT.parse(text.get());
            if (!(kilograms > 0)) {
                throw Refusal.usage(option + ": found '" + text.get() + "'; expected more than nothing");
            }
            return OptionalDouble.of(kilograms);
        } catch (UnreadableQuantityException unreadable) {
            throw Refusal.usage(option + ": " + unreadable.getMessage());
        }
    }

    /** The cut named; empty: any of the species. */
    Optional<TrimmedCut> cut(QualityModels models) throws Refusal {
        try {
            return cut.map(id -> OtherCook.cut(models, id));
        } catch (UnplannableException unknown) {
            throw Refusal.usage("--cut: " + unknown.getMessage());
        }
    }

    /** What a plan is likely to do; empty where there is none. */
    Optional<QualityLines> lines(QualityModels models, Plan plan, HeatFigures heat, List<WeighedCook> earlier)
            throws Refusal {
        return plan instanceof BathPlan bath
                ? Optional.of(lines(models, bath, heat, cut(models), plates(), earlier))
                : Optional.empty();
    }

    private static QualityLines lines(
            QualityModels models,
            BathPlan plan,
            HeatFigures heat,
            Optional<TrimmedCut> cut,
            Plates plates,
            List<WeighedCook> earlier) {
        PlannedCook cook = plan.cook();
        double stay = plan.bathMinutes();
        QualityOutlook before = PlannedQuality.of(models, cook, heat, cut, stay).outlook(cook.bathCelsius(), stay);
        return new QualityLines(
                before,
                before.narrowedBy(models, earlier),
                plates,
                new PlanWording(cook.authority().units()));
    }

    /** The other cook beside the plan, if asked for and there is a plan to set it beside. */
    Optional<AgainstAnswer> against(RuleLibrary library, Plan plan, HeatFigures heat, List<WeighedCook> earlier)
            throws Refusal {
        QualityModels models = QualityModels.of(library);
        Optional<QualityLines> planned = lines(models, plan, heat, earlier);
        if (against.isEmpty() || planned.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(
                    beside(library, planned.get(), OtherCook.parse(models, against.get()), plan.cook(), heat, earlier));
        } catch (UnplannableException wrong) {
            throw Refusal.usage("--against: " + wrong.getMessage());
        }
    }

    private static String hours(Arrival arrival) {
        String earliest = whole(arrival.earliest());
        return "about " + whole(arrival.likely()) + " h" + (earliest.isEmpty() ? "" : ", from " + earliest)
                + (arrival.latest().isPresent() ? " to " + whole(arrival.latest()) + " h" : " to longer than a day");
    }

    private static String whole(OptionalDouble minutes) {
        return minutes.isPresent() ? Long.toString(Math.round(minutes.getAsDouble() / 60)) : "";
    }

    private AgainstAnswer beside(
            RuleLibrary library,
            QualityLines planned,
            OtherCook other,
            PlannedCook cook,
            HeatFigures heat,
            List<WeighedCook> earlier)
            throws Refusal {
        QualityModels models = QualityModels.of(library);
        Plates plates = planned.plates();
        Plates otherPlates = new Plates(
                plates.boughtKilograms(),
                other.trimmedOff().orElse(plates.trimmedOff()),
                plates.portionKilograms(),
                other.price().or(plates::price));
        Optional<TrimmedCut> otherCut = other.cut().isPresent() ? other.cut() : cut(models);
        if (other.smoker().isPresent()) {
            OtherCook.Smoker smoker = other.smoker().get();
            SmokerAllTheWay smoked =
                    SmokerAllTheWay.of(models, cook, heat, otherCut, smoker.airCelsius(), smoker.coreCelsius());
            return new AgainstAnswer(
                    planned,
                    other.name(),
                    hours(smoked.arrival()),
                    "Nothing is said of the other cook's safety: no bath is planned in it.",
                    new QualityLines(
                            smoked.outlook(),
                            smoked.outlook().narrowedBy(models, earlier),
                            otherPlates,
                            planned.wording()));
        }
        Plan otherPlan = Plan.of(other.changed(cook), heat, library);
        if (otherPlan instanceof BathPlan bath) {
            return new AgainstAnswer(
                    planned,
                    other.name(),
                    PlanWording.time(bath.outMinute()),
                    "The other cook has a plan of its own: print it before cooking it.",
                    lines(models, bath, heat, otherCut, otherPlates, earlier));
        }
        throw new UnplannableException("there is no safe plan for the other cook: " + ((NoPlan) otherPlan).reason());
    }
}
