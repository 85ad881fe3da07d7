package org.holdproof.core.lesson;

import java.util.ArrayList;
import java.util.List;

/**
 * What a trainer chooses.
 *
 * @param thicknessMillimetres of the cut, {@value #LEAST_MILLIMETRES} to {@value #MOST_MILLIMETRES}
 * @param bathsCelsius set points, rising, from {@value #COLDEST_CELSIUS} to {@value #HOTTEST_CELSIUS} °C
 */
public record LessonSetup(Cut cut, double thicknessMillimetres, List<Double> bathsCelsius) {
    public static final double LEAST_MILLIMETRES = 10;
    public static final double MOST_MILLIMETRES = 150;
    public static final double COLDEST_CELSIUS = 40;
    /** The line by which C. perfringens cells die ends here. */
    public static final double HOTTEST_CELSIUS = 65;

    public static final int FEWEST_BATHS = 3;
    /** As many as fit side by side on a page. */
    public static final int MOST_BATHS = 9;

    /** @throws IllegalArgumentException if a figure is out of range; says which and what is allowed */
    public LessonSetup {
        bathsCelsius = List.copyOf(bathsCelsius);
        if (!(thicknessMillimetres >= LEAST_MILLIMETRES) || !(thicknessMillimetres <= MOST_MILLIMETRES)) {
            throw new IllegalArgumentException("the lesson takes a thickness of 10 to 150 mm");
        }
        if (bathsCelsius.size() < FEWEST_BATHS || bathsCelsius.size() > MOST_BATHS) {
            throw new IllegalArgumentException("the lesson takes 3 to 9 baths");
        }
        for (int i = 0; i < bathsCelsius.size(); i++) {
            double bath = bathsCelsius.get(i);
            if (!(bath >= COLDEST_CELSIUS) || !(bath <= HOTTEST_CELSIUS)) {
                throw new IllegalArgumentException("the lesson takes baths of 40 to 65 °C (104 to 149 °F)");
            }
            if (i > 0 && !(bath > bathsCelsius.get(i - 1))) {
                throw new IllegalArgumentException("the baths must rise, the coldest first");
            }
        }
    }

    /** Baths from one temperature to another, both included, in the smallest whole steps that keep to the most baths. */
    public static List<Double> bathsBetween(double lowCelsius, double highCelsius) {
        if (!(highCelsius > lowCelsius)) {
            return List.of(lowCelsius);
        }
        double step = Math.max(1, Math.ceil((highCelsius - lowCelsius) / (MOST_BATHS - 1)));
        List<Double> baths = new ArrayList<>();
        for (double bath = lowCelsius; bath < highCelsius; bath += step) {
            baths.add(bath);
        }
        if (baths.size() == MOST_BATHS) {
            baths.remove(MOST_BATHS - 1);
        }
        baths.add(highCelsius);
        return baths;
    }
}
