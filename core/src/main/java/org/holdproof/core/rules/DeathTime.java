package org.holdproof.core.rules;

import java.util.OptionalDouble;

/**
 * A measured time for one decimal reduction. Where a paper gives one figure, low and high are the same.
 *
 * @param strain strain or mixture, as printed; may be empty
 * @param method how it was measured, with fat and pH where given; may be empty
 * @param celsius the temperature, in °C
 * @param lowMinutes lowest D-value given, in minutes
 * @param highMinutes highest D-value given, in minutes
 * @param lowZCelsius lowest z-value the paper gives with it, a difference in °C
 * @param highZCelsius highest z-value the paper gives with it
 */
public record DeathTime(
        String id,
        String organism,
        String strain,
        String food,
        String method,
        double celsius,
        double lowMinutes,
        double highMinutes,
        OptionalDouble lowZCelsius,
        OptionalDouble highZCelsius,
        Citation citation)
        implements Rule {
    @Override
    public String title() {
        return organism + " in " + food;
    }
}
