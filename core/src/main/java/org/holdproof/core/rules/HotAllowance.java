package org.holdproof.core.rules;

import java.util.List;
import java.util.OptionalDouble;
import org.holdproof.core.quantity.Comparison;

/**
 * What follows when cooked food is under its hot-holding temperature for a while, after the cook and before it is
 * cooled: while it rests, is carved, is moved or is served.
 *
 * @param count how its time is counted
 * @param bands by rising time; the last one is open
 */
public record HotAllowance(
        String id,
        String title,
        String jurisdiction,
        String applies,
        TimeLimit.Count count,
        List<Band> bands,
        Citation citation)
        implements Rule {

    /** @throws IllegalArgumentException if there is no band, times do not rise, or the last band is not the open one */
    public HotAllowance {
        bands = List.copyOf(bands);
        double before = 0;
        for (int i = 0; i < bands.size(); i++) {
            boolean last = i == bands.size() - 1;
            double until = bands.get(i).maxMinutes().orElse(Double.POSITIVE_INFINITY);
            if (!(until > before) || last != bands.get(i).maxMinutes().isEmpty()) {
                throw new IllegalArgumentException(id + ": times must rise, and only the last band is open");
            }
            before = until;
        }
        if (bands.isEmpty()) {
            throw new IllegalArgumentException(id + ": no band");
        }
    }

    /**
     * The band that many minutes fall into.
     *
     * @param minutes under the temperature, 0 or more
     * @param slackMinutes figures closer than this to a band's end count as equal to it
     */
    public Band band(double minutes, double slackMinutes) {
        return bands.stream()
                .filter(band -> band.maxMinutes().isEmpty()
                        || band.comparison().holds(minutes, band.maxMinutes().getAsDouble(), slackMinutes))
                .findFirst()
                .orElseThrow();
    }

    /**
     * One stretch of time and what follows from it.
     *
     * @param maxMinutes the longest time that falls into it; empty: any longer one
     * @param comparison how the time is compared with that: at most, or below
     * @param outcome what follows
     * @param citation where the band's own figure stands; a convention of this program where no document prints one
     */
    public record Band(OptionalDouble maxMinutes, Comparison comparison, Outcome outcome, Citation citation) {}

    /** What follows from a time under the hot-holding temperature. */
    public enum Outcome {
        /** The food may be used in any way: served, held hot again, or cooled. */
        ALLOWED,
        /** The food may only be served within that time. */
        SERVED_NOW,
        /** Kept where the record marks time control; otherwise the record does not prove it. */
        MARKED,
        /** The limit was missed. */
        MISSED,
        /** Judged as a cooling that began: over the cooling rule's first limit missed, under it not proven. */
        AS_COOLING
    }
}
