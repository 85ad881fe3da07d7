package org.holdproof.core.kinetics;

import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.GrowthModel;
import org.holdproof.core.rules.Source;

/** Growth models for tests; invented data. */
final class GrowthModels {
    private static final Source MADE_UP =
            new Source("test", "Invented for this test", "", "", "", "", "", Source.How.DERIVED);
    static final Citation CITATION = new Citation(MADE_UP, "Invented for this test", "", Source.How.DERIVED, "");

    private GrowthModels() {}

    static GrowthModel of(double min, double optimum, double max, double perHour) {
        return new GrowthModel(
                "m",
                "invented",
                "invented",
                "invented",
                List.of(GrowthModel.ANY),
                min,
                optimum,
                max,
                perHour,
                1,
                9,
                Optional.empty(),
                "Invented.",
                CITATION);
    }

    static GrowthModel random(RandomGenerator random) {
        double min = 2 + 10 * random.nextDouble();
        double max = 42 + 12 * random.nextDouble();
        double share = random.nextInt(8) == 0 ? 2.0 / 3 : 0.55 + 0.42 * random.nextDouble();
        return of(min, min + share * (max - min), max, 0.3 + 6 * random.nextDouble());
    }
}
