package org.holdproof.core.quality;

import java.util.ArrayList;
import java.util.List;

/**
 * What may be said of colour: words, no figure. The published rates of myoglobin's denaturing leave none of it after a
 * day at 57 °C, yet such meat is pink; the two were never reconciled.
 */
final class ColourWords {
    private static final double PINK_BELOW_CELSIUS = 60;

    private ColourWords() {}

    static List<String> of(double hottestCoreCelsius, Smoking smoking) {
        List<String> words = new ArrayList<>();
        words.add(
                hottestCoreCelsius < PINK_BELOW_CELSIUS
                        ? "Pink is likely to remain below 60 °C, the less the longer. Colour proves neither temperature nor"
                                + " safety."
                        : "Little pink is likely to remain from 60 °C up. Colour proves neither temperature nor safety.");
        if (!(smoking instanceof Smoking.None)) {
            words.add(
                    "A smoke ring grows only while the surface is below about 70 °C: it comes from the cold, wet start"
                            + " of the smoke, not from its length (" + CommonPractice.MARK + ").");
        }
        return List.copyOf(words);
    }
}
