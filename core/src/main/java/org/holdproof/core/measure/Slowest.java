package org.holdproof.core.measure;

import java.util.Comparator;
import org.holdproof.core.quantity.Bounded;

/** Which of several probes' times governs where a short time is asked: the longest, at worst, then nominally, then at best. */
public final class Slowest {
    public static final Comparator<Bounded> GOVERNS = Comparator.comparingDouble(Bounded::worst)
            .thenComparingDouble(Bounded::nominal)
            .thenComparingDouble(Bounded::best);

    private Slowest() {}
}
