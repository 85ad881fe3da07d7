package org.holdproof.core.quality;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.holdproof.core.quantity.Predicted;

/** How far a cook has come at any of its points: reckoned once, however many stays are asked about. */
final class CookProgress {
    private final List<Course> courses = new ArrayList<>();

    CookProgress(QualityModels models, CookHistories cook, double thicknessMillimetres) {
        courses.add(new Course(models, models.low(), cook.cold(), thicknessMillimetres));
        courses.add(new Course(models, models.central(), cook.likely(), thicknessMillimetres));
        courses.add(new Course(models, models.high(), cook.hot(), thicknessMillimetres));
    }

    /** One history with the set that goes with it; the values at its points. */
    private static final class Course {
        private final CookHistory history;
        private final double[] lean;
        private final double[] actin;
        private final List<double[]> softening = new ArrayList<>();

        Course(QualityModels models, LeanLoss set, CookHistory history, double thicknessMillimetres) {
            this.history = history;
            lean = set.percentAlong(history, thicknessMillimetres);
            actin = set.actinAlong(history);
            models.tenderTime().lines().forEach(line -> softening.add(line.softeningAlong(history)));
        }

        /** Between two points straight; the asked minutes are points. */
        double at(double[] values, double minute) {
            int next = 0;
            while (next < history.size() - 1 && history.minute(next) < minute) {
                next++;
            }
            if (next == 0 || history.minute(next) <= minute) {
                return values[next];
            }
            double share = (minute - history.minute(next - 1)) / (history.minute(next) - history.minute(next - 1));
            return values[next - 1] + share * (values[next] - values[next - 1]);
        }
    }

    /** Juice out of the lean at a minute, in percent of the raw lean weight: of the three sets on their histories. */
    Predicted lean(double minute) {
        return ordered(course -> course.at(course.lean, minute));
    }

    /** How much of the core's actin is denatured at a minute, 0 to 1. */
    Predicted actin(double minute) {
        return ordered(course -> course.at(course.actin, minute));
    }

    /** The softening at a minute: the likeliest line on the likely history, the least and the most of all lines on all. */
    Predicted softening(double minute) {
        double likely = courses.get(1).at(courses.get(1).softening.get(1), minute);
        double least = likely;
        double most = likely;
        for (Course course : courses) {
            for (double[] line : course.softening) {
                least = Math.min(least, course.at(line, minute));
                most = Math.max(most, course.at(line, minute));
            }
        }
        return new Predicted(least, likely, most);
    }

    /** The high set's actin is the slower one above 80 °C, so that a rush through that heat may turn the ends round. */
    private Predicted ordered(ToDoubleFunction<Course> value) {
        double low = value.applyAsDouble(courses.get(0));
        double central = value.applyAsDouble(courses.get(1));
        double high = value.applyAsDouble(courses.get(2));
        return new Predicted(Math.min(low, Math.min(central, high)), central, Math.max(low, Math.max(central, high)));
    }
}
