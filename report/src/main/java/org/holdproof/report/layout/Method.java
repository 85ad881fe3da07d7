package org.holdproof.report.layout;

import org.holdproof.core.verdict.RecordFacts;
import org.holdproof.report.draw.Lettering;

/** How the record was judged, in plain words. */
final class Method {
    private static final Lettering TEXT = PageLettering.TEXT;

    private Method() {}

    static void lay(WordedReport matter, Flow flow) {
        RecordFacts record = matter.assessment().record();
        flow.section("How it was judged", 60);
        flow.paragraph(
                TEXT,
                "Every figure is an interval. A reading may be off by the thermometer's tolerance, and between two "
                        + "readings nobody looked. So each figure is worked out at worst, at best, and once with straight "
                        + "lines between the readings (nominal). Worst for lethality takes every reading lower by the "
                        + "tolerance and, between two readings, the lower of the two; best is the mirror of that. For "
                        + "cooling and come-up the ends change places: worst is the longest time the readings allow.");
        flow.paragraph(
                TEXT,
                "MET: even the worst case keeps the limit. NOT MET: even the best case misses it. NOT PROVEN: the limit "
                        + "lies between the two, or the record lacks what the rule needs. The batch's verdict is its worst "
                        + "check.");
        flow.paragraph(
                TEXT,
                "An interval longer than " + KitchenClock.length(record.gapLimitMinutes())
                        + " between two readings is a gap in this record. At worst nothing is credited across a gap; at "
                        + "best the food is taken to have been at the better of its two ends.");
        flow.paragraph(
                TEXT,
                "Of several core probes the lowest governs lethality and hot holding, the highest governs cooling and cold "
                        + "holding. They are never averaged.");
        flow.paragraph(
                TEXT,
                "A published row is judged as printed, in the unit it is printed in: 130 °F is not 54.4 °C, which is "
                        + "129.92 °F. It is met when one uninterrupted spell at or above its temperature lasts its time. "
                        + "Nothing is interpolated between rows: between two rows the lower one governs. Nothing is "
                        + "credited below a table's lowest temperature.");
        flow.paragraph(
                TEXT,
                "Cumulative lethality adds up the lethal rate over time (the general method) with the D- and z-values "
                        + "named beside the curve. It shows the margin, and decides only where the rule itself is stated "
                        + "as D, z and a target.");
    }
}
