package org.holdproof.core.rules;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.quantity.Predicted;

/**
 * A published loss of weight in a cook, with what is known of the cook.
 *
 * @param celsius end or bath temperatures; several where the figure is a mean over them; empty: not printed
 * @param hours hours in a bath; several where the figure is a mean over them
 * @param heating how the piece was heated, where that is known well enough to reckon with
 * @param sizeMillimetres thickness
 * @param leanShare lean meat over raw weight, 0 to 1
 * @param renderedPercent fat melted out, in percent of the raw weight
 * @param evaporatedPercent water evaporated, in percent of the raw weight
 * @param lostPercent weight lost, in percent of the raw weight; the middle of a printed range
 * @param use what the case was used for
 */
public record WeightLossCase(
        String id,
        String species,
        String cut,
        String method,
        List<Double> celsius,
        List<Double> hours,
        Optional<Heating> heating,
        OptionalDouble sizeMillimetres,
        Predicted leanShare,
        Predicted renderedPercent,
        Predicted evaporatedPercent,
        Predicted lostPercent,
        Use use,
        Citation citation) {

    public WeightLossCase {
        celsius = List.copyOf(celsius);
        hours = List.copyOf(hours);
    }

    /** How a piece was heated. */
    public sealed interface Heating {
        /** In a water bath. */
        record Bath() implements Heating {}

        /**
         * Steadily, and stopped at the end temperature.
         *
         * @param slowest in °C a minute
         * @param fastest in °C a minute
         */
        record Ramp(double slowest, double fastest) implements Heating {}
    }

    /** What a case was used for. */
    public enum Use {
        /** The model was fitted to it. */
        FIT,
        /** The model was tested on it. */
        TEST,
        /** Outside what the model is for. */
        CONTEXT
    }
}
