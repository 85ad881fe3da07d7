package org.holdproof.core.lesson;

import java.util.ArrayList;
import java.util.List;
import org.holdproof.core.kinetics.SlowestDeath;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.ThermalDeath;

/**
 * How long a line of death takes for one reduction, by set point.
 *
 * @param points by rising temperature, from the lowest one the line stands for
 */
public record DeathLine(String name, List<Point> points, List<Citation> citations) {
    private static final double STEP_CELSIUS = 0.5;

    /**
     * One set point's time.
     *
     * @param minutes hold once the core is there
     */
    public record Point(double celsius, double minutes) {}

    public DeathLine {
        points = List.copyOf(points);
        citations = List.copyOf(citations);
    }

    static DeathLine of(String name, SlowestDeath death, double targetLog10, double toCelsius) {
        List<Point> points = new ArrayList<>();
        for (double celsius = death.floorCelsius(); celsius <= toCelsius; celsius += STEP_CELSIUS) {
            points.add(new Point(celsius, targetLog10 / death.log10PerMinute(celsius)));
        }
        return new DeathLine(
                name, points, death.lines().stream().map(ThermalDeath::citation).toList());
    }
}
