package org.holdproof.cli.terminal;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.heat.smoke.Arrival;
import org.holdproof.core.heat.smoke.SmokerSurface;
import org.holdproof.core.log.Trace;
import org.holdproof.core.plan.BathPlan;
import org.holdproof.core.plan.ChillMedium;
import org.holdproof.core.plan.ChillPlan;
import org.holdproof.core.plan.NoPlan;
import org.holdproof.core.plan.Pasteurization.RowTime;
import org.holdproof.core.plan.Plan;
import org.holdproof.core.plan.PlanWording;
import org.holdproof.core.plan.PlannedCook;
import org.holdproof.core.plan.SmokedCore;
import org.holdproof.core.plan.TimeInRange;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.Source;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Verdict;

/**
 * A plan on one screen of 80 columns, or why there is none; on request with every figure and its source.
 *
 * @param serving when it is to be served, if said
 * @param quality what it is likely to do to the piece, where there is a plan
 * @param smokedToCelsius the core whose time in the smoker is asked for
 */
public record PlanAnswer(Plan plan, Optional<Serving> serving, Optional<QualityLines> quality, double smokedToCelsius) {
    private static final int FEWEST_CURVE_ROWS = 3;
    private static final int MOST_CURVE_ROWS = 5;
    private static final int LABEL = 10;
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("EEE yyyy-MM-dd HH:mm", Locale.ENGLISH);

    /** When it is to be served, on the kitchen's clock. */
    public record Serving(Instant at, ZoneId zone) {
        String clock(Instant instant) {
            return CLOCK.format(instant.atZone(zone));
        }
    }

    /** The answer's lines; a plan's are at most {@value Terminal#HEIGHT}. */
    public List<String> lines(boolean unicode) {
        return plan instanceof BathPlan bath ? of(bath, unicode) : of((NoPlan) plan);
    }

    /** Every row, every change, every figure with its source. */
    public List<String> explanation() {
        List<String> lines = new ArrayList<>();
        if (plan instanceof BathPlan bath) {
            explain(bath, lines);
        }
        return lines;
    }

    private List<String> of(NoPlan none) {
        List<String> lines = new ArrayList<>(Wrapped.at(headline()));
        lines.addAll(refusal(none));
        return lines;
    }

    /** Why there is no plan and what to do instead, whatever the thickness and the bath were. */
    public static List<String> refusal(NoPlan none) {
        List<String> lines = new ArrayList<>();
        lines.add("NO SAFE PLAN");
        lines.addAll(Wrapped.at(none.reason()));
        lines.addAll(Wrapped.at("Instead: " + none.remedy()));
        lines.addAll(Answer.SAFETY);
        return lines;
    }

    private List<String> of(BathPlan bath, boolean unicode) {
        List<String> figures = new ArrayList<>();
        rows(bath, figures);
        bath.smoked().ifPresent(smoked -> smoke(smoked, figures));
        labelled(figures, "Otherwise", otherwise(bath), 1);
        bath.ranges().forEach(range -> labelled(figures, "Heating", heating(range), 2));
        labelled(figures, "Chill", chill(bath.chill()), 3);
        quality.ifPresent(said -> {
            labelled(figures, "Weight", said.weight(), 3);
            said.cost().ifPresent(text -> labelled(figures, "Cost", text, 1));
        });
        List<String> head = new ArrayList<>(Wrapped.at(headline()));
        head.addAll(Wrapped.at(decision(bath)));
        List<String> tender = new ArrayList<>();
        quality.flatMap(QualityLines::tender).ifPresent(text -> labelled(tender, "Tender", text, 3));
        int fixed = head.size() + FEWEST_CURVE_ROWS + CurvePlot.EXTRA_LINES + 1 + Answer.SAFETY.size();
        if (fixed + figures.size() + tender.size() <= Terminal.HEIGHT) {
            figures.addAll(tender);
        }
        int room = Terminal.HEIGHT - head.size() - figures.size() - CurvePlot.EXTRA_LINES - Answer.SAFETY.size();
        List<String> mind = minded(bath, room - FEWEST_CURVE_ROWS);
        int rows = Math.max(FEWEST_CURVE_ROWS, Math.min(MOST_CURVE_ROWS, room - mind.size()));

        List<String> lines = new ArrayList<>(head);
        lines.addAll(curve(bath, rows, unicode));
        lines.addAll(figures);
        lines.addAll(mind);
        lines.addAll(Answer.SAFETY);
        return lines;
    }

    /** As many cautions as fit, each whole; how many more there are. */
    private static List<String> minded(BathPlan bath, int room) {
        List<String> lines = new ArrayList<>();
        int left = bath.cautions().size();
        for (Caution caution : bath.cautions()) {
            List<String> whole = Wrapped.at("Mind: " + caution.text());
            if (lines.size() + whole.size() + (left > 1 ? 1 : 0) <= room) {
                lines.addAll(whole);
                left--;
            }
        }
        if (left > 0) {
            lines.add("Mind: " + left + (lines.isEmpty() ? "" : " more") + (left == 1 ? " caution" : " cautions")
                    + " with --explain");
        }
        return lines;
    }

    private String headline() {
        PlannedCook cook = plan.cook();
        String species = cook.species().title();
        return species.substring(0, 1).toUpperCase(Locale.ROOT) + species.substring(1) + ", "
                + (cook.form() == Form.INTACT ? "" : cook.form().title() + ", ") + PlanWording.shape(cook) + " "
                + millimetres(cook.thicknessMillimetres()) + ", from "
                + wording().leading(cook.startCelsius())
                + ", bath " + wording().temperature(cook.bathCelsius()) + ", by "
                + cook.authority().id();
    }

    private String decision(BathPlan bath) {
        String smoke = bath.cook()
                .smoke()
                .map(step -> PlanWording.time(step.minutes()) + " smoke, then ")
                .orElse("");
        String what = (isSound(bath) ? "PLAN: " : "NOT KEPT AS PLANNED: ") + smoke
                + PlanWording.time(bath.bathMinutes()) + " in the bath";
        return serving.map(serve -> what + "; start by " + serve.clock(bath.startBy(serve.at())))
                .orElse(what + (bath.cook().bathMinutes().isPresent() ? "" : ": that covers the worst"));
    }

    /** Served hot, the chill is another matter. */
    private boolean isSound(BathPlan bath) {
        return serving.isPresent() ? bath.isSoundToServing() : bath.isSound();
    }

    /** Whether there is a plan that keeps what it is judged by. */
    public boolean isSound() {
        return plan instanceof BathPlan bath && isSound(bath);
    }

    private List<String> curve(BathPlan bath, int rows, boolean unicode) {
        Instant start = serving.map(serve -> bath.startBy(serve.at())).orElse(Instant.EPOCH);
        Trace trace = serving.isPresent() ? bath.traceToServing(start) : bath.trace(start);
        CurvePlot plot = new CurvePlot(
                trace,
                new Span(trace.firstMillis(), trace.lastMillis()),
                wording().leading(),
                lowest(bath),
                serving.isPresent() ? bath.stagesToServing(start) : bath.stages(start),
                serving.map(Serving::zone).orElse(ZoneId.of("UTC")),
                Double.POSITIVE_INFINITY);
        return serving.isPresent() ? plot.lines(rows, unicode) : plot.linesFromStart(rows, unicode);
    }

    private static Optional<Boundary> lowest(BathPlan bath) {
        return bath.rule().rows().stream().findFirst().map(LethalityRow::at);
    }

    private static void rows(BathPlan bath, List<String> lines) {
        String first = bath.firstRow()
                .map(PlanAnswer::row)
                .orElseGet(() -> PlanWording.time(bath.safeMinute()) + " from its start");
        labelled(lines, "Safe", first, 1);
        String from = bath.cook().smoke().isPresent() ? " (wet, bare, alone, unsprayed)" : "";
        labelled(lines, "", PlanWording.time(bath.coveringMinute()) + " at worst" + from + ": plan by this", 1);
    }

    private static String row(RowTime time) {
        String met = time.metMinute().isPresent()
                ? "met " + PlanWording.time(time.metMinute().getAsDouble())
                : "never met";
        String there = time.reachedMinute().isPresent()
                ? ", core there " + PlanWording.time(time.reachedMinute().getAsDouble())
                : "";
        return time.row().at().text() + " for " + time.row().printedTime() + there + ", " + met;
    }

    /** What moves the safe time most, as much of it as fits the line. */
    private static String otherwise(BathPlan bath) {
        List<BathPlan.Variation> strongest = bath.variations().stream()
                .sorted(Comparator.comparingDouble(variation ->
                        -Math.abs(variation.safeMinute().orElse(Double.POSITIVE_INFINITY) - bath.safeMinute())))
                .toList();
        String text = "";
        for (BathPlan.Variation variation : strongest) {
            String longer = text + (text.isEmpty() ? "" : "; ") + varied(variation);
            if (Wrapped.at(longer, Terminal.WIDTH - LABEL).size() > 1) {
                return text;
            }
            text = longer;
        }
        return text;
    }

    private static String varied(BathPlan.Variation variation) {
        return variation.change().title() + " "
                + (variation.safeMinute().isPresent()
                        ? PlanWording.time(variation.safeMinute().getAsDouble())
                        : "never");
    }

    private void smoke(SmokedCore smoked, List<String> lines) {
        Bounded core = smoked.coreCelsius();
        labelled(
                lines,
                "Smoke",
                String.format(
                        Locale.ROOT,
                        "leaves the core near %s (%s to %s; at worst %s)",
                        wording().whole(core.nominal()),
                        wording().whole(smoked.slowCelsius()),
                        wording().whole(core.best()),
                        wording().whole(core.worst())),
                1);
        Arrival arrival = smoked.coreReaches(smokedToCelsius);
        labelled(
                lines,
                "",
                wording().whole(smokedToCelsius) + " inside "
                        + (arrival.likely().isPresent() ? "about " + late(arrival.likely()) : "not within 48 h")
                        + " (" + late(arrival.earliest()) + " to " + late(arrival.latest()) + "), predicted",
                1);
    }

    private static String late(OptionalDouble minutes) {
        return minutes.isPresent() ? PlanWording.time(minutes.getAsDouble()) : "over 48 h";
    }

    private String heating(TimeInRange range) {
        String band = range.rule()
                .from()
                .map(from -> from.text() + " to "
                        + range.rule().limit().orElseThrow().text())
                .orElseGet(() -> "below " + range.rule().limit().orElseThrow().text());
        return band + ": " + PlanWording.time(range.minutes().nominal()) + ", worst "
                + PlanWording.time(range.minutes().worst()) + "; "
                + range.rule().timeComparison().words() + " "
                + PlanWording.time(range.rule().maxMinutes().orElseThrow()) + ": " + kept(range);
    }

    /** Which end of the interval keeps it. */
    private static String kept(TimeInRange range) {
        if (range.verdict() == Verdict.NOT_PROVEN) {
            return range.isKeptAsPlanned() ? "kept as reckoned, not at worst" : "kept only by a fast smoke";
        }
        return kept(range.verdict());
    }

    private static String kept(Verdict verdict) {
        return switch (verdict) {
            case MET -> "kept";
            case NOT_PROVEN -> "kept, not at worst";
            case NOT_MET -> "NOT KEPT";
        };
    }

    private String chill(ChillPlan chill) {
        String stages = chill.stages().stream()
                .filter(stage -> stage.stage().maxMinutes().isPresent())
                .map(stage -> "to " + stage.stage().to().map(Boundary::text).orElse("the chill") + " "
                        + worst(stage.minutes().worst()) + " of "
                        + PlanWording.time(stage.stage().maxMinutes().getAsDouble()))
                .collect(Collectors.joining(", "));
        String rule = chill.rule()
                .map(found -> stages + " at worst: " + kept(chill.verdict().orElseThrow()) + " (" + found.id() + ")")
                .orElseGet(() -> "to 5 °C "
                        + (chill.toFridge().isPresent() ? worst(chill.toFridge().getAsDouble()) + " at worst" : "never")
                        + "; " + plan.cook().authority().id() + " gives no schedule to judge it by");
        String ice = chill.medium() == ChillMedium.ICE_SLUSH
                ? ". As much ice as food"
                : ". The water warms as the food cools: worse still";
        return chill.medium().title() + " " + rule + ice;
    }

    private static String worst(double minutes) {
        return Double.isInfinite(minutes) ? "never" : PlanWording.time(minutes);
    }

    private void explain(BathPlan bath, List<String> lines) {
        lines.add("");
        lines.add("Every row of the table that this bath meets, as reckoned:");
        bath.rowsAsMet().forEach(row -> lines.add("  " + row(row)));
        bath.rule().rows().stream()
                .findFirst()
                .ifPresent(
                        row -> lines.addAll(Wrapped.at("Rows: " + row.citation().text())));
        bath.rule()
                .death()
                .ifPresent(death ->
                        lines.addAll(Wrapped.at("Rule: " + death.citation().text())));
        bath.ranges()
                .forEach(range -> lines.addAll(Wrapped.at(
                        range.rule().title() + ": " + range.rule().citation().text())));
        bath.chill()
                .rule()
                .ifPresent(rule -> lines.addAll(
                        Wrapped.at(rule.title() + ": " + rule.citation().text())));
        lines.addAll(Wrapped.at("Heat: " + bath.heat().origin()));
        bath.smoked().ifPresent(smoked -> lines.addAll(Wrapped.at(smokeOrigin(smoked))));
        bath.variations().forEach(variation -> lines.add("Otherwise: " + varied(variation)));
        lines.addAll(Wrapped.at(String.format(
                Locale.ROOT,
                "Chill: %s at %s, %.0f W/(m² K) (%s, %s).",
                bath.chill().medium().title(),
                wording().temperature(bath.chill().medium().celsius()),
                bath.chill().medium().coefficient().typical(),
                bath.chill().medium().coefficient().medium(),
                bath.chill().medium().coefficient().how().title())));
        quality.ifPresent(said -> lines.addAll(said.explanation()));
        bath.cautions().forEach(caution -> lines.addAll(Wrapped.at("Mind: " + caution.text())));
    }

    private static String smokeOrigin(SmokedCore smoked) {
        return String.format(
                Locale.ROOT,
                "Smoke: bare meat that dries, slow to fast (%s; the weakest %s). Evaporated: %.0f %% of the raw weight (%.0f"
                        + " to %.0f). The three surfaces cover sixteen reported cooks and three logs, not every kitchen;"
                        + " size and air unlike the stated come on top.",
                SmokerSurface.sources().stream().map(Source::id).collect(Collectors.joining(", ")),
                SmokerSurface.how().title(),
                smoked.evaporatedPercent().nominal(),
                smoked.evaporatedPercent().best(),
                smoked.evaporatedPercent().worst());
    }

    private PlanWording wording() {
        return new PlanWording(plan.cook().authority().units());
    }

    private static String millimetres(double thickness) {
        return figure(thickness) + " mm";
    }

    private static String figure(double value) {
        String text = String.format(Locale.ROOT, "%.1f", value);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    private static void labelled(List<String> lines, String label, String text, int most) {
        List<String> wrapped = Wrapped.at(text, Terminal.WIDTH - LABEL);
        for (int i = 0; i < Math.min(most, wrapped.size()); i++) {
            String line = i == most - 1 && wrapped.size() > most ? wrapped.get(i) + " …" : wrapped.get(i);
            String head = i == 0 ? label : "";
            lines.add(Wrapped.cut(head + " ".repeat(LABEL - head.length()) + line));
        }
    }
}
