package org.holdproof.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.rules.ExposureRule;
import org.holdproof.core.rules.GrowthFact;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.HotAllowance;
import org.holdproof.core.rules.HumidityOption;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.LethalityTable;
import org.holdproof.core.rules.OvenCondition;
import org.holdproof.core.rules.ParasiteRule;
import org.holdproof.core.rules.ReheatingRule;
import org.holdproof.core.rules.Rule;
import org.holdproof.core.rules.ShelfLifeRule;
import org.holdproof.core.rules.SupportGap;
import org.holdproof.core.rules.SurfaceRule;
import org.holdproof.core.rules.ThermalDeath;
import org.holdproof.core.rules.TimeLimit;
import org.holdproof.core.rules.WrittenRule;

/** One rule in full: what it asks, of what, and where it stands. */
final class RulePage {
    private static final int ROWS_ON_ONE_SCREEN = 14;

    private final List<String> lines = new ArrayList<>();
    private final boolean all;

    private RulePage(boolean all) {
        this.all = all;
    }

    /**
     * The rule's lines. A kind that only informs has its title and source.
     *
     * @param all whether every row of a long table is wanted
     */
    static List<String> of(Rule rule, boolean all) {
        RulePage page = new RulePage(all);
        page.lines.add(rule.id() + ": " + rule.title());
        page.body(rule);
        page.cite(rule.citation());
        return page.lines;
    }

    private void body(Rule rule) {
        if (rule instanceof LethalityTable table) {
            lethality(table);
        } else if (rule instanceof ThermalDeath death) {
            kinetics(death);
        } else if (rule instanceof CoolingRule cooling) {
            cooling(cooling);
        } else if (rule instanceof HoldingRule holding) {
            holding(holding);
        } else if (rule instanceof ReheatingRule reheating) {
            reheating(reheating);
        } else if (rule instanceof HumidityOption option) {
            humidity(option);
        } else if (rule instanceof HotAllowance allowance) {
            allowance(allowance);
        } else if (rule instanceof OvenCondition oven) {
            oven(oven);
        } else if (rule instanceof SupportGap gap) {
            gap(gap);
        } else if (rule instanceof ParasiteRule parasites) {
            parasites(parasites);
        } else if (rule instanceof SurfaceRule surface) {
            surface(surface);
        } else if (rule instanceof TimeLimit limit) {
            time(limit);
        } else if (rule instanceof ExposureRule exposure) {
            exposure(exposure);
        } else if (rule instanceof ShelfLifeRule life) {
            shelfLife(life);
        } else if (rule instanceof WrittenRule written) {
            scope(written.jurisdiction(), written.applies());
            put("Asks", written.requirement());
        } else if (rule instanceof GrowthFact fact) {
            put("Found", fact.statement());
        }
    }

    private void lethality(LethalityTable table) {
        scope(table.jurisdiction(), table.applies());
        put("Counts", table.counting() == LethalityTable.Counting.TOTAL ? "total time" : "one unbroken spell");
        List<LethalityRow> rows = all || table.rows().size() <= ROWS_ON_ONE_SCREEN
                ? table.rows()
                : table.rows().subList(0, ROWS_ON_ONE_SCREEN);
        for (LethalityRow row : rows) {
            lines.add("  " + row.at().text()
                    + (row.fatPercent().isPresent()
                            ? ", fat " + row.fatPercent().getAsInt() + " %"
                            : "") + ": "
                    + row.printedTime()
                    + (row.citation().how() == table.citation().how()
                            ? ""
                            : " (" + row.citation().how().title() + ")"));
        }
        if (rows.size() < table.rows().size()) {
            lines.add("  and " + (table.rows().size() - rows.size()) + " more: holdproof tables " + table.id()
                    + " --all");
        }
    }

    private void kinetics(ThermalDeath death) {
        put("Organism", death.organism());
        put("D", death.dMinutes() + " min at " + death.referenceCelsius() + " °C");
        put("z", death.zCelsius() + " °C");
        put("Good for", death.floorCelsius() + " °C to " + death.capCelsius() + " °C");
        death.targetLog10().ifPresent(target -> put("Target", target + " log10"));
    }

    private void cooling(CoolingRule rule) {
        scope(rule.jurisdiction(), rule.applies());
        for (CoolingRule.Stage stage : rule.stages()) {
            put(
                    "Stage " + stage.number(),
                    stage.from().map(from -> "from " + from.text() + " ").orElse("")
                            + stage.to().map(to -> "to " + to.text() + " ").orElse("")
                            + (stage.maxMinutes().isPresent()
                                    ? stage.comparison().words() + " "
                                            + plain(stage.maxMinutes().getAsDouble()) + " min"
                                    : "no figure")
                            + " (" + words(stage.start()) + "; " + words(stage.clock()) + ")");
        }
        missed(rule.correctiveAction());
    }

    private void holding(HoldingRule rule) {
        scope(rule.jurisdiction(), rule.applies());
        put(
                "Limits",
                words(rule.kind())
                        + rule.from().map(from -> ", from " + from.text()).orElse("")
                        + rule.limit()
                                .map(limit -> ", " + rule.comparison().words() + " " + limit.text())
                                .orElse("")
                        + (rule.maxMinutes().isPresent()
                                ? ", " + rule.timeComparison().words() + " "
                                        + plain(rule.maxMinutes().getAsDouble()) + " min"
                                : ""));
        missed(rule.correctiveAction());
    }

    private void reheating(ReheatingRule rule) {
        scope(rule.jurisdiction(), rule.applies());
        put(
                "Target",
                rule.asksNoTemperature()
                        ? "none"
                        : Stream.concat(
                                        rule.targets().stream().map(RulePage::words),
                                        rule.table().stream().map(table -> "any row of " + table.id()))
                                .collect(Collectors.joining(", or ")));
        if (rule.maxMinutes().isPresent()) {
            put(
                    "Time",
                    rule.timeComparison().words() + " "
                            + plain(rule.maxMinutes().getAsDouble()) + " min"
                            + rule.from().map(from -> " from " + from.text()).orElse(""));
        }
        missed(rule.correctiveAction());
    }

    private void humidity(HumidityOption option) {
        put(
                "Surface",
                option.means().title()
                        + (option.sharePercent() > 0 ? ", " + plain(option.sharePercent()) + " % of the cook" : "")
                        + (option.atLeastMinutes() > 0 ? ", at least " + plain(option.atLeastMinutes()) + " min" : "")
                        + option.endPoint()
                                .map(at -> ", row at or above " + at.text())
                                .orElse(""));
    }

    private void time(TimeLimit limit) {
        scope(limit.jurisdiction(), limit.applies());
        put(
                "Time",
                limit.timeComparison().words() + " " + plain(limit.maxMinutes()) + " min, " + words(limit.count())
                        + limit.ceiling()
                                .map(ceiling ->
                                        ", food " + limit.ceilingComparison().words() + " " + ceiling.text())
                                .orElse(""));
        missed(limit.disposition());
    }

    private void exposure(ExposureRule rule) {
        scope(rule.jurisdiction(), rule.applies());
        for (int i = 0; i < rule.limbs().size(); i++) {
            for (ExposureRule.Band band : rule.limbs().get(i)) {
                put(
                        "Limb " + (i + 1),
                        "at most " + plain(band.maxMinutes()) + " min between "
                                + band.from().text() + " and " + band.to().text());
            }
        }
    }

    private void shelfLife(ShelfLifeRule rule) {
        scope(rule.jurisdiction(), rule.applies());
        put(
                "Keeps",
                rule.days() + " days from " + words(rule.from()) + " at or below "
                        + rule.storeAt().text());
        missed(rule.disposition());
    }

    private static String words(ReheatingRule.Target target) {
        return target.comparison().words() + " " + target.at().text()
                + (target.holdSeconds() > 0 ? " for " + plain(target.holdSeconds()) + " s" : "");
    }

    private void allowance(HotAllowance rule) {
        scope(rule.jurisdiction(), rule.applies());
        put("Counts", words(rule.count()));
        for (HotAllowance.Band band : rule.bands()) {
            put(
                    band.maxMinutes().isPresent()
                            ? band.comparison().words() + " "
                                    + plain(band.maxMinutes().getAsDouble())
                            : "longer",
                    words(band.outcome()) + " (" + band.citation().how().title() + ")");
        }
    }

    private void oven(OvenCondition oven) {
        put(
                "Oven",
                words(oven.oven()) + ", " + oven.comparison().words() + " "
                        + oven.temperature().text());
        if (oven.humidityAbovePercent().isPresent()) {
            put(
                    "Humidity",
                    "above " + plain(oven.humidityAbovePercent().getAsDouble()) + " % for "
                            + plain(oven.humidityMinutes().orElse(0)) + " min");
        }
    }

    private void gap(SupportGap gap) {
        put("Waives", words(gap.waives()));
        put("Vulnerable", gap.vulnerability());
    }

    private void parasites(ParasiteRule rule) {
        scope(rule.jurisdiction(), rule.applies());
        for (ParasiteRule.Way way : rule.ways()) {
            put("Way", way.comparison().words() + " " + way.at().text() + " for " + plain(way.minutes()) + " min");
        }
    }

    private void surface(SurfaceRule rule) {
        scope(rule.jurisdiction(), rule.applies());
        put(
                "Surface",
                "at least " + rule.at().text() + " for " + plain(rule.seconds()) + " s"
                        + (rule.depthMillimetres().isPresent()
                                ? ", " + plain(rule.depthMillimetres().getAsDouble()) + " mm below it"
                                : ""));
    }

    private void scope(String jurisdiction, String applies) {
        put("Where", jurisdiction);
        put("For", applies);
    }

    private void missed(String action) {
        if (!action.isEmpty()) {
            put("If missed", action);
        }
    }

    private void cite(Citation citation) {
        put("Source", citation.document() + ", " + citation.section());
        String edition = citation.source().edition();
        put(
                "",
                citation.source().issuer() + ", "
                        + (edition.isEmpty() ? citation.source().year() : edition));
        put("Figures", citation.how().title() + (citation.note().isEmpty() ? "" : ": " + citation.note()));
    }

    private void put(String name, String text) {
        lines.add(String.format(Locale.ROOT, "%-15s", name) + text);
    }

    private static String words(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }
}
