package org.holdproof.cli.terminal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.holdproof.core.plan.PlanTable;
import org.holdproof.core.plan.PlanWording;
import org.holdproof.core.plan.PlannedCook;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.TemperatureUnit;

/** Thickness by set point on one screen of 80 columns. */
public record PlanTableAnswer(PlanTable table, List<String> files) {
    private static final int LABEL = 7;
    private static final int CELL = 8;

    public PlanTableAnswer {
        files = List.copyOf(files);
    }

    public List<String> lines() {
        PlannedCook like = table.like();
        PlanWording wording = new PlanWording(like.authority().units());
        List<String> lines = new ArrayList<>();
        lines.addAll(Wrapped.at("Time in the bath, " + like.form().title() + " "
                + like.species().title() + ", " + PlanWording.shape(like) + ", from "
                + wording.temperature(like.startCelsius()) + ", by "
                + like.authority().id()));
        lines.add(row("", table.baths().stream().map(Boundary::text).toList()));
        if (like.authority().units().size() > 1) {
            lines.add(row("", table.baths().stream().map(PlanTableAnswer::other).toList()));
        }
        for (int row = 0; row < table.thicknessesMillimetres().size(); row++) {
            List<String> cells = new ArrayList<>();
            for (int column = 0; column < table.baths().size(); column++) {
                cells.add(table.text(row, column));
            }
            lines.add(row(
                    String.format(
                            Locale.ROOT,
                            "%.0f mm",
                            table.thicknessesMillimetres().get(row)),
                    cells));
        }
        lines.addAll(Wrapped.at("Each time covers at once: 5 mm thicker, " + PlanWording.unsaid(like)
                + "the slowest diffusivity held, the bath "
                + wording.difference(0.5) + " low. – no safe plan. "
                + (table.hasComeUpUnproven() ? PlanTable.UNPROVEN_WORDS + " " : "")
                + "Bag without air, moving water, alone."));
        lines.addAll(Answer.SAFETY);
        lines.addAll(files);
        return lines;
    }

    private static String other(Boundary bath) {
        TemperatureUnit unit =
                bath.unit() == TemperatureUnit.CELSIUS ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS;
        return String.format(Locale.ROOT, "%.1f %s", unit.fromCelsius(bath.celsius()), unit.symbol());
    }

    private static String row(String label, List<String> cells) {
        StringBuilder line = new StringBuilder(label);
        for (int i = 0; i < cells.size(); i++) {
            int right = LABEL + CELL * (i + 1);
            String cell = cells.get(i);
            line.append(" ".repeat(Math.max(1, right - line.length() - cell.length())))
                    .append(cell);
        }
        return line.toString();
    }
}
