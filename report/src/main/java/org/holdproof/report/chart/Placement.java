package org.holdproof.report.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.holdproof.report.draw.Box;

/** Keeps labels off each other and, where there is a choice, off the curves. */
final class Placement {
    private final Box field;
    private final List<Box> labels = new ArrayList<>();
    private final List<Box> curves = new ArrayList<>();

    Placement(Box field) {
        this.field = field;
    }

    void addCurve(double[] xs, double[] ys) {
        for (int i = 0; i + 1 < xs.length; i++) {
            // A long slanting stretch is cut up, so that the corner it does not pass stays free.
            int pieces = (int) Math.max(1, Math.min(200, Math.abs(xs[i + 1] - xs[i]) / 4));
            for (int piece = 0; piece < pieces; piece++) {
                double x1 = xs[i] + (xs[i + 1] - xs[i]) * piece / pieces;
                double x2 = xs[i] + (xs[i + 1] - xs[i]) * (piece + 1) / pieces;
                double y1 = ys[i] + (ys[i + 1] - ys[i]) * piece / pieces;
                double y2 = ys[i] + (ys[i + 1] - ys[i]) * (piece + 1) / pieces;
                curves.add(new Box(
                        Math.min(x1, x2) - 0.5, Math.min(y1, y2) - 0.5, Math.abs(x2 - x1) + 1, Math.abs(y2 - y1) + 1));
            }
        }
    }

    void addLabel(Box box) {
        labels.add(box);
    }

    /** The first of these boxes that is free of labels and curves, or else of labels; taken from then on. */
    Optional<Box> place(List<Box> candidates) {
        Optional<Box> best = candidates.stream()
                .filter(this::isClearOfLabels)
                .filter(box -> curves.stream().noneMatch(box::overlaps))
                .findFirst()
                .or(() -> candidates.stream().filter(this::isClearOfLabels).findFirst());
        best.ifPresent(labels::add);
        return best;
    }

    private boolean isClearOfLabels(Box box) {
        return field.holds(box) && labels.stream().noneMatch(box::overlaps);
    }
}
