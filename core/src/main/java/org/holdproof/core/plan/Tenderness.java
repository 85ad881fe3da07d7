package org.holdproof.core.plan;

import java.util.Comparator;
import java.util.List;
import org.holdproof.core.batch.Product.Species;

/** What has been published on how long a piece takes to become tender; nothing where nothing has. */
public final class Tenderness {
    /** A figure is shown for baths no further than this from where it was measured, in °C. */
    private static final double NEAR_CELSIUS = 4;

    private Tenderness() {}

    /** The published figures near a bath, the nearest first. */
    public static List<PublishedQuality> at(Species species, double bathCelsius) {
        return PublishedQuality.all().stream()
                .filter(row -> row.topic().startsWith("tenderness"))
                .filter(row -> row.material().contains(species.title()))
                .filter(row -> row.distanceCelsius(bathCelsius) <= NEAR_CELSIUS)
                .sorted(Comparator.comparingDouble((PublishedQuality row) -> row.distanceCelsius(bathCelsius))
                        .thenComparing(row -> row.topic().equals("tenderness kinetics") ? 0 : 1))
                .toList();
    }
}
