package org.holdproof.cli.terminal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.plan.BathChoices;
import org.holdproof.core.plan.PlanWording;
import org.holdproof.core.plan.PlannedCook;
import org.holdproof.core.quality.QualityOutlook;
import org.holdproof.core.quality.Tenderness;
import org.holdproof.core.quality.WeightLoss;

/** Set points by hours on one screen of 80 columns, for a cook who has not chosen yet. */
public record BathChoicesAnswer(BathChoices choices, Plates plates) {
    private static final int LABEL = 8;
    private static final int SAFE = 10;
    private static final int CELL = 10;
    private static final String TOO_SHORT = "–";

    public List<String> lines() {
        PlannedCook like = choices.like();
        PlanWording wording = new PlanWording(like.authority().units());
        List<String> lines = new ArrayList<>();
        lines.addAll(Wrapped.at("Choose a bath: " + like.form().title() + " "
                + like.species().title() + ", " + PlanWording.shape(like) + " "
                + QualityLines.short1(like.thicknessMillimetres()) + " mm, from " + wording.leading(like.startCelsius())
                + like.smoke()
                        .map(step -> ", after " + PlanWording.time(step.minutes()) + " of smoke at "
                                + wording.leading(step.airCelsius()))
                        .orElse("")
                + ", by " + like.authority().id()));
        lines.add(row(
                "bath",
                "safe from",
                choices.hours().stream()
                        .map(hours -> QualityLines.short1(hours) + " h")
                        .toList()));
        for (BathChoices.Row row : choices.rows()) {
            List<String> cells = new ArrayList<>();
            for (int i = 0; i < choices.hours().size(); i++) {
                cells.add(
                        row.isSafe(choices.hours().get(i)) ? cell(row.outlooks().get(i), wording) : TOO_SHORT);
            }
            String safe = row.safeMinutes().isPresent()
                    ? PlanWording.time(row.safeMinutes().getAsDouble()).replace(" min", "")
                    : "no plan";
            lines.add(row(row.bath().text(), safe, cells));
        }
        lines.addAll(Wrapped.at(legend(wording)));
        lines.addAll(Wrapped.at("Then plan one: add --bath, and --for to stay longer than is safe."));
        lines.addAll(Answer.SAFETY);
        return lines;
    }

    private String cell(QualityOutlook outlook, PlanWording wording) {
        String mark =
                outlook.tenderness().map(tender -> mark(tender.word()) + " ").orElse("");
        Optional<WeightLoss> loss = outlook.weight();
        return mark + loss.map(found -> left(found, wording)).orElse("?");
    }

    private String left(WeightLoss loss, PlanWording wording) {
        if (plates.boughtKilograms().isEmpty()) {
            return Math.round(100 * loss.leastLeft()) + "-" + Math.round(100 * loss.mostLeft());
        }
        double raw = plates.boughtKilograms().getAsDouble() * (1 - plates.trimmedOff());
        return amount(wording.weight(raw * loss.leastLeft())) + "-" + amount(wording.weight(raw * loss.mostLeft()));
    }

    /** The figure of a weight without its unit. */
    private static String amount(String weight) {
        return weight.substring(0, weight.indexOf(' '));
    }

    private static String mark(Tenderness.Word word) {
        return switch (word) {
            case NOT_YET -> "n";
            case ABOUT_THERE -> "a";
            case LIKELY_LONG_ENOUGH -> "l";
            case LONG_ENOUGH -> "L";
        };
    }

    private String legend(PlanWording wording) {
        String unit = plates.boughtKilograms().isEmpty()
                ? "% of the raw weight"
                : wording.weight(plates.boughtKilograms().getAsDouble()).replaceFirst(".* ", "");
        String tender =
                choices.rows().stream().flatMap(row -> row.outlooks().stream()).anyMatch(outlook -> outlook.tenderness()
                                .isPresent())
                        ? "Tender: n not yet, a about there, l likely long enough, L long enough, within a factor of two. "
                        : "";
        boolean modelled = choices.rows().stream()
                .flatMap(row -> row.outlooks().stream())
                .allMatch(outlook ->
                        outlook.weight().isPresent() && !(outlook.weight().get() instanceof WeightLoss.Published));
        String ranges = modelled ? "" : " Published ranges, whatever the hours; ? where nothing is published.";
        return "Safe from: hours in the bath that cover the worst; " + TOO_SHORT + " shorter than that. " + tender
                + "Figures: weight at the table in " + unit + ", least and most; a prediction, never a part of safety."
                + ranges;
    }

    private static String row(String label, String safe, List<String> cells) {
        StringBuilder line = new StringBuilder(label)
                .append(" ".repeat(Math.max(1, LABEL - label.length())))
                .append(safe)
                .append(" ".repeat(Math.max(0, SAFE - safe.length())));
        cells.forEach(cell ->
                line.append(" ".repeat(Math.max(1, CELL - cell.length()))).append(cell));
        return line.toString();
    }
}
