package org.holdproof.core.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.log.Trace;
import org.junit.jupiter.api.Test;

/** Stages proposed from the curves of simulated cooks: a core that follows its medium with a lag. Invented data. */
class StageProposalsTest {
    private static final int COOKS = 200;

    /** A cook smoked, bagged, bathed and chilled, read once a minute or slower, with noise and a lid opened. */
    private static final class SimulatedCook {
        private final long step;
        private final int smokeFrom;
        private final int smokeTo;
        private final int bathFrom;
        private final int bathTo;
        private final double bathSet;
        private final Trace core;
        private final Trace bath;
        private final Trace air;

        SimulatedCook(Random random) {
            step = (1 + random.nextInt(3)) * 60_000L;
            smokeFrom = 3 + random.nextInt(20);
            smokeTo = smokeFrom + 100 + random.nextInt(200);
            bathFrom = smokeTo + 4 + random.nextInt(12);
            bathTo = bathFrom + 250 + random.nextInt(400);
            int end = bathTo + 300;
            double smokerSet = 95 + random.nextInt(40);
            bathSet = 56 + random.nextInt(20);
            double lag = 60 + random.nextInt(60);
            double temperature = 4 + random.nextInt(5);
            long[] millis = new long[end];
            double[] cores = new double[end];
            double[] baths = new double[end];
            double[] airs = new double[end];
            int lid = smokeFrom + 20 + random.nextInt(60);
            for (int i = 0; i < end; i++) {
                double medium =
                        i < smokeFrom ? 5 : i <= smokeTo ? smokerSet : i < bathFrom ? 20 : i <= bathTo ? bathSet : 1;
                temperature += (medium - temperature) * (1 - Math.exp(-1 / lag));
                millis[i] = i * step;
                cores[i] = temperature + random.nextGaussian() * 0.05;
                boolean open = i == lid || i == lid + 1;
                airs[i] = i >= smokeFrom && i <= smokeTo && !open
                        ? smokerSet + random.nextGaussian() * 4
                        : 22 + random.nextGaussian();
                baths[i] = i >= bathFrom && i <= bathTo
                        ? bathSet + random.nextGaussian() * 0.1
                        : i > bathTo ? 1 + random.nextGaussian() * 0.2 : 20;
            }
            core = new Trace("Core", millis, cores);
            bath = new Trace("Bath", millis, baths);
            air = new Trace("Air", millis, airs);
        }
    }

    @Test
    void edgesLieWithinTwoReadingsInNinetyFiveOfAHundred() {
        int edges = 0;
        int near = 0;
        for (long seed = 0; seed < COOKS; seed++) {
            SimulatedCook cook = new SimulatedCook(new Random(seed));
            List<StageProposal> stages = StageProposals.of(cook.core, Optional.of(cook.bath), Optional.of(cook.air));
            assertThat(stages)
                    .extracting(StageProposal::kind)
                    .as("seed %d", seed)
                    .startsWith(Stage.Kind.SMOKE, Stage.Kind.BAG, Stage.Kind.BATH, Stage.Kind.CHILL);
            List<long[]> pairs = new ArrayList<>();
            pairs.add(new long[] {stages.get(0).fromMillis(), cook.smokeFrom});
            pairs.add(new long[] {stages.get(0).toMillis(), cook.smokeTo});
            pairs.add(new long[] {stages.get(2).fromMillis(), cook.bathFrom});
            pairs.add(new long[] {stages.get(2).toMillis(), cook.bathTo});
            pairs.add(new long[] {stages.get(3).fromMillis(), cook.bathTo});
            for (long[] pair : pairs) {
                edges++;
                near += Math.abs(pair[0] - pair[1] * cook.step) <= 2 * cook.step ? 1 : 0;
            }
            assertThat(stages.get(2).setPointCelsius().orElseThrow())
                    .as("seed %d", seed)
                    .isCloseTo(cook.bathSet, within(0.5));
        }
        assertThat(near).isGreaterThanOrEqualTo(edges * 95 / 100);
    }

    @Test
    void withoutAMediumTheProposalIsDoubtful() {
        SimulatedCook cook = new SimulatedCook(new Random(1));
        List<StageProposal> stages = StageProposals.of(cook.core, Optional.empty(), Optional.empty());
        assertThat(stages.get(0).sureness()).isEqualTo(StageProposal.Sureness.DOUBTFUL);
        assertThat(stages.get(0).setPointCelsius()).isEmpty();
    }

    @Test
    void aCoreThatWasNeverHotIsNoCook() {
        Trace cold = new Trace("Core", new long[] {0, 60_000, 120_000}, new double[] {4, 4, 4});
        assertThat(StageProposals.of(cold, Optional.empty(), Optional.empty())).isEmpty();
    }
}
