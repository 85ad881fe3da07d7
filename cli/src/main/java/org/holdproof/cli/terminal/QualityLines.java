package org.holdproof.cli.terminal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.holdproof.core.plan.PlanWording;
import org.holdproof.core.quality.CommonPractice;
import org.holdproof.core.quality.QualityOutlook;
import org.holdproof.core.quality.ServedCost;
import org.holdproof.core.quality.Tenderness;
import org.holdproof.core.quality.WeightLoss;
import org.holdproof.core.quantity.Predicted;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.LossRange;

/**
 * What a cook is likely to do to weight, tenderness and cost, in words: both ends of each, never one figure.
 *
 * @param before what is likely by the published figures alone
 * @param outlook what is likely, after any earlier cook that was weighed or eaten
 * @param plates what is bought, and what a guest gets
 */
public record QualityLines(QualityOutlook before, QualityOutlook outlook, Plates plates, PlanWording wording) {
    private static final int WHOLE = 100;

    /** Lost and left, in one or two lines. */
    public String weight() {
        if (outlook.weight().isEmpty()) {
            return "nothing is published on its loss in such a cook";
        }
        WeightLoss loss = outlook.weight().get();
        return lost(loss) + left(loss) + practice(loss);
    }

    private static String lost(WeightLoss loss) {
        String ends = ends(loss.leastPercent(), loss.mostPercent()) + " % lost";
        if (loss instanceof WeightLoss.Modelled modelled) {
            return ends + ", likely " + Math.round(modelled.totalPercent().central()) + ": juice "
                    + ends(modelled.pressedOutPercent()) + ", fat " + ends(modelled.renderedPercent())
                    + evaporated(modelled);
        }
        if (loss instanceof WeightLoss.Weighed weighed) {
            return ends + ", likely " + Math.round(weighed.totalPercent().central()) + " after "
                    + (weighed.cooks() == 1 ? "one weighed cook" : weighed.cooks() + " weighed cooks") + " (before: "
                    + ends(weighed.before().leastPercent(), weighed.before().mostPercent()) + " %)";
        }
        return ends + " (published ranges, whatever the hours)";
    }

    private static String evaporated(WeightLoss.Modelled modelled) {
        return modelled.evaporatedPercent().high() == 0 ? "" : ", evaporated " + ends(modelled.evaporatedPercent());
    }

    private String left(WeightLoss loss) {
        if (plates.boughtKilograms().isEmpty()) {
            return "";
        }
        double raw = plates.boughtKilograms().getAsDouble() * (1 - plates.trimmedOff());
        String left = ". Of " + wording.weight(raw) + " " + wording.weight(raw * loss.leastLeft()) + " to "
                + wording.weight(raw * loss.mostLeft()) + " left";
        if (plates.portionKilograms().isEmpty()) {
            return left;
        }
        double portion = plates.portionKilograms().getAsDouble();
        return left + ": at least " + ServedCost.portions(raw, loss, portion) + " portions of "
                + wording.weight(portion);
    }

    private static String practice(WeightLoss loss) {
        return loss.practice()
                .map(practice -> "; trade: " + practice.words() + " (" + CommonPractice.MARK + ")")
                .orElse("");
    }

    /** How long it has had, in a word, with what softens and what stiffens; empty but for beef. */
    public Optional<String> tender() {
        return outlook.tenderness()
                .map(tender -> tender.word().title() + ": tough cuts took " + hours(tender.hoursThere())
                        + " at " + wording.whole(tender.heldCelsius()) + "; softened "
                        + short1(tender.softening().central() / tender.need().central())
                        + " of the middle need; against it, fibres set "
                        + percent(tender.actinDenatured()) + eaten(tender));
    }

    /** What an earlier piece's bite changed. */
    private String eaten(Tenderness tender) {
        return before.tenderness()
                .filter(published -> !published.need().equals(tender.need()))
                .map(published -> " (before the last was eaten: " + hours(published.hoursThere()) + ")")
                .orElse("");
    }

    private static String hours(Predicted hours) {
        return figure(hours.low()) + " to " + figure(hours.high()) + " h";
    }

    private static String figure(double value) {
        return value < 10 ? short1(value) : Long.toString(Math.round(value));
    }

    /** To one decimal, without a trailing nought. */
    static String short1(double value) {
        String text = String.format(Locale.ROOT, "%.1f", value);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    private static String percent(Predicted share) {
        long low = Math.round(WHOLE * share.low());
        long high = Math.round(WHOLE * share.high());
        return low == high ? low + " %" : low + " to " + high + " %";
    }

    private static String ends(Predicted range) {
        return ends(range.low(), range.high());
    }

    private static String ends(double low, double high) {
        long least = Math.round(low);
        long most = Math.round(high);
        return least == most ? Long.toString(least) : least + " to " + most;
    }

    /** What a portion costs, if a price was said. */
    public Optional<String> cost() {
        return servedCost()
                .map(cost -> portion(cost) + " a portion of "
                        + wording.weight(cost.portionKilograms())
                        + (cost.trimmedOff() > 0
                                ? ", " + Math.round(WHOLE * cost.trimmedOff()) + " % trimmed off before"
                                : ", nothing trimmed off before"));
    }

    static String portion(ServedCost cost) {
        return cost.price().words(cost.leastAPortion()) + " to " + cost.price().words(cost.mostAPortion());
    }

    Optional<ServedCost> servedCost() {
        if (plates.price().isEmpty()
                || plates.portionKilograms().isEmpty()
                || outlook.weight().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new ServedCost(
                plates.price().get(),
                plates.trimmedOff(),
                outlook.weight().get(),
                plates.portionKilograms().getAsDouble()));
    }

    /** Every source, and what must not be read into the figures. */
    public List<String> explanation() {
        List<String> lines = new ArrayList<>();
        outlook.weight().ifPresent(loss -> explain(loss, lines));
        tradeWater().ifPresent(text -> lines.addAll(Wrapped.at(text)));
        outlook.tenderness().ifPresent(tender -> explain(tender, lines));
        outlook.colour().forEach(words -> lines.addAll(Wrapped.at("Colour: " + words)));
        lines.addAll(Wrapped.at("Weight, tenderness and colour are predictions for the kitchen. They say nothing about"
                + " safety, and juice lost is not juiciness felt."));
        return lines;
    }

    private static void explain(WeightLoss loss, List<String> lines) {
        if (loss instanceof WeightLoss.Published published) {
            published.ranges().forEach(range -> lines.addAll(Wrapped.at(range(range))));
            return;
        }
        WeightLoss.Modelled modelled =
                loss instanceof WeightLoss.Weighed weighed ? weighed.before() : (WeightLoss.Modelled) loss;
        lines.addAll(Wrapped.at("Weight: reckoned as " + modelled.cut().title() + " ("
                + cited(modelled.cut().citation())
                + "). Juice by a model whose rates are calorimetry's and whose shares"
                + " are fitted to four published means; 28 of 29 published losses of beef lay inside its interval."));
        if (modelled.evaporatedPercent().high() > 0) {
            lines.addAll(
                    Wrapped.at(
                            "Weight: water evaporated is what weighed smoked briskets allow. The drying reckoned"
                                    + " for the core's heat loses more, part of which the lean would have pressed out anyway."));
        }
    }

    private static String range(LossRange range) {
        return "Weight: " + range.title() + ", " + ends(range.lowPercent(), range.highPercent()) + " %: "
                + cited(range.citation())
                + (range.citation().note().isEmpty()
                        ? ""
                        : "; " + range.citation().note())
                + ".";
    }

    private static String cited(Citation citation) {
        return citation.text() + ", " + citation.how().title();
    }

    private void explain(Tenderness tender, List<String> lines) {
        lines.addAll(Wrapped.at("Tender: 1 is the middle of ten published and trade cases; two of three pieces need "
                + String.format(
                        Locale.ROOT,
                        "%.1f to %.1f",
                        tender.need().low(),
                        tender.need().high())
                + ". Fibres stiffen as their actin sets, above 60 °C: tender and dry rise together. Enzymes that help"
                + " below 60 °C are not reckoned."));
        lines.addAll(Wrapped.at("Tender: in the trade a tough cut takes " + CommonPractice.USUAL_TIME + " ("
                + CommonPractice.MARK + ")."));
    }

    /** What the trade's loss is in water, for a reader who measures it in cups. */
    private Optional<String> tradeWater() {
        Optional<CommonPractice> trade = outlook.weight().flatMap(WeightLoss::practice);
        if (trade.isEmpty() || plates.boughtKilograms().isEmpty() || wording.leading() != TemperatureUnit.FAHRENHEIT) {
            return Optional.empty();
        }
        double raw = plates.boughtKilograms().getAsDouble() * (1 - plates.trimmedOff());
        double kilograms = trade.get().lost(raw);
        return Optional.of("Weight: " + trade.get().words() + ", of " + wording.weight(raw) + ", is "
                + wording.weight(kilograms) + " of water, about "
                + short1(CommonPractice.usCups(kilograms)) + " US cups (" + CommonPractice.MARK + ").");
    }
}
