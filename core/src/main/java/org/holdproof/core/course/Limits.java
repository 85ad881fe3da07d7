package org.holdproof.core.course;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.batch.Product;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.rules.HoldingRule;

/**
 * Where hot ends and cold begins for one product under one authority. Where the authority holds no rule for holding, the
 * ends of its cooling rule stand in; where it has neither, nothing is hot outside the cook, or nothing is cold.
 *
 * @param hot the least a core held hot may be
 * @param hotRule the rule that says so; empty where the cooling rule stands in or nothing does
 * @param leavesHot the least a core may be outside every stage that is meant to be hot, which may be more
 * @param cold the most a core held cold may be
 * @param coldRule the rule that says so; empty where the cooling rule stands in or nothing does
 * @param lowestRowCelsius the lowest temperature the product's rows credit, in °C; infinite without rows
 */
public record Limits(
        Optional<Level> hot,
        Optional<HoldingRule> hotRule,
        Optional<Level> leavesHot,
        Optional<Level> cold,
        Optional<HoldingRule> coldRule,
        double lowestRowCelsius) {

    /** A temperature and the side of it to be on. */
    public record Level(Boundary at, Comparison comparison) {
        boolean holds(double celsius) {
            return comparison.holds(celsius, at.celsius(), TemperatureUnit.SLACK_CELSIUS);
        }
    }

    /** The limits of a product under a profile. */
    public static Limits of(AuthorityProfile authority, Product product, double lowestRowCelsius) {
        boolean roast =
                product.form() == Product.Form.INTACT && product.species().isRedMeat();
        Optional<HoldingRule> hotRule = (roast ? authority.hotHoldRoast() : Optional.<HoldingRule>empty())
                .or(authority::hotHold)
                .filter(rule -> rule.limit().isPresent());
        List<CoolingRule> cooling = authority.cooling().stream()
                .filter(rule -> rule.isOpenTo(product))
                .toList();
        Optional<Level> begins = cooling.stream()
                .limit(1)
                .flatMap(rule -> rule.stages().stream())
                .flatMap(stage -> stage.from().stream())
                .max(Comparator.comparingDouble(Boundary::celsius))
                .map(at -> new Level(at, Comparison.AT_LEAST));
        Optional<Level> ends = cooling.stream()
                .limit(1)
                .flatMap(rule -> rule.stages().stream())
                .flatMap(stage -> stage.to().stream())
                .min(Comparator.comparingDouble(Boundary::celsius))
                .map(at -> new Level(at, Comparison.AT_MOST));
        Optional<Level> hot = hotRule.map(rule -> new Level(rule.limit().orElseThrow(), rule.comparison()))
                .or(() -> begins);
        Optional<Level> leavesHot = hot.isPresent()
                        && begins.isPresent()
                        && begins.get().at().celsius() > hot.get().at().celsius()
                ? begins
                : hot;
        Optional<HoldingRule> coldRule =
                authority.coldHold().filter(rule -> rule.limit().isPresent());
        Optional<Level> cold = coldRule.map(rule -> new Level(rule.limit().orElseThrow(), rule.comparison()))
                .or(() -> ends);
        return new Limits(hot, hotRule, leavesHot, cold, coldRule, lowestRowCelsius);
    }

    /** Whether a core this warm is hot: while it is being cooked, the lowest row's temperature is enough. */
    boolean isHot(double celsius, Meant meant) {
        return switch (meant) {
            case COOKING ->
                celsius >= lowestRowCelsius - TemperatureUnit.SLACK_CELSIUS
                        || hot.filter(level -> level.holds(celsius)).isPresent();
            case HELD -> hot.filter(level -> level.holds(celsius)).isPresent();
            case NOTHING -> leavesHot.filter(level -> level.holds(celsius)).isPresent();
        };
    }

    boolean isCold(double celsius) {
        return cold.filter(level -> level.holds(celsius)).isPresent();
    }

    /** The temperature hot begins at, in °C; infinite where nothing is hot. */
    double hotCelsius(Meant meant) {
        double level = (meant == Meant.NOTHING ? leavesHot : hot)
                .map(found -> found.at().celsius())
                .orElse(Double.POSITIVE_INFINITY);
        return meant == Meant.COOKING ? Math.min(level, lowestRowCelsius) : level;
    }

    /** The temperature cold begins at, in °C; minus infinity where nothing is cold. */
    double coldCelsius() {
        return cold.map(level -> level.at().celsius()).orElse(Double.NEGATIVE_INFINITY);
    }

    /** What the record says was meant at a moment. */
    enum Meant {
        COOKING,
        HELD,
        NOTHING
    }
}
