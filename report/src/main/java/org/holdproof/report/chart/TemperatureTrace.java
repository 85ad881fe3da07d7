package org.holdproof.report.chart;

import java.util.List;
import org.holdproof.report.draw.Stroke;

/**
 * One channel's line.
 *
 * @param name as the legend prints it; empty: not in the legend
 * @param toleranceCelsius half width of the band drawn around it; 0 for none
 */
public record TemperatureTrace(String name, List<Thinning.Run> runs, Stroke stroke, double toleranceCelsius) {
    public TemperatureTrace {
        runs = List.copyOf(runs);
    }
}
