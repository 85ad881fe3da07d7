package org.holdproof.cli.terminal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.quality.ServedCost;

/**
 * Two cooks side by side, in weight, tenderness and cost.
 *
 * @param time how long the other one takes, in words
 * @param safety what is to be said of the other one's safety
 */
public record AgainstAnswer(QualityLines planned, String name, String time, String safety, QualityLines other) {
    private static final int LABEL = 10;

    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.addAll(Wrapped.at("AGAINST: " + name + ", " + time));
        labelled(lines, "Weight", other.weight());
        other.tender().ifPresent(text -> labelled(lines, "Tender", text));
        other.cost().ifPresent(text -> labelled(lines, "Cost", text));
        cheaper().ifPresent(text -> labelled(lines, "So", text));
        lines.addAll(Wrapped.at(safety));
        return lines;
    }

    private Optional<String> cheaper() {
        Optional<ServedCost> first = planned.servedCost();
        Optional<ServedCost> second = other.servedCost();
        if (first.isEmpty() || second.isEmpty()) {
            return Optional.empty();
        }
        String sides = QualityLines.portion(first.get()) + " a portion as planned, "
                + QualityLines.portion(second.get()) + " the other way: ";
        return Optional.of(sides
                + switch (first.get().against(second.get())) {
                    case CHEAPER -> "the plan costs less even at its worst";
                    case DEARER -> "the plan costs more even at its best";
                    case OPEN -> "the two overlap, so that neither is surely cheaper";
                });
    }

    private static void labelled(List<String> lines, String label, String text) {
        String head = label;
        for (String line : Wrapped.at(text, Terminal.WIDTH - LABEL)) {
            lines.add(head + " ".repeat(LABEL - head.length()) + line);
            head = "";
        }
    }
}
