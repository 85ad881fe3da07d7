package org.holdproof.core.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.holdproof.core.assess.ProbePlaceCheckTest.Said;
import org.holdproof.core.heat.Conduction;
import org.holdproof.core.heat.MediumSchedule;
import org.holdproof.core.heat.MediumSchedule.Segment;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.ThermalProperties;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Less said never proves more, where the record says what a probe's readings are held against. Made-up cooks. */
class ProbePlaceLawsTest {
    private static final int COOKS = 12;

    /** A probe somewhere in a piece of some thickness, in a bath that may run below what is logged; some misplaced. */
    private static double[] readings(Random random) {
        double thickness = 15 + random.nextInt(90);
        double water = 62 - random.nextInt(4);
        MediumSchedule waters = MediumSchedule.of(
                Segment.hold(ProbePlaceCheckTest.BATH, water, 200),
                Segment.hold(ProbePlaceCheckTest.END - ProbePlaceCheckTest.BATH + 1, 0.5, 200));
        double[] minutes = new double[ProbePlaceCheckTest.END + 1];
        for (int i = 0; i < minutes.length; i++) {
            minutes[i] = i;
        }
        double[] core = Conduction.of(
                        Piece.of(thickness, random.nextDouble()), ThermalProperties.constant(0.48, 1.3e-7))
                .runAt(random.nextInt(3) / 2.0, 4 + random.nextInt(5), waters, minutes);
        int moved = random.nextInt(3) == 0 ? random.nextInt(core.length) : core.length;
        for (int i = moved; i < core.length; i++) {
            core[i] = i < ProbePlaceCheckTest.BATH ? water : 0.5;
        }
        for (int strays = random.nextInt(3); strays > 0; strays--) {
            core[random.nextInt(core.length)] += random.nextInt(40) - 20;
        }
        return core;
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4})
    void lessSaidNeverProvesMore(long seed) throws Exception {
        Random random = new Random(seed);
        for (int cook = 0; cook < COOKS; cook++) {
            double[] core = readings(random);
            Assessment whole = ProbePlaceCheckTest.assess(core, Said.ALL);
            for (Said less : new Said[] {
                new Said(false, true, true, true), new Said(true, false, true, true), new Said(true, false, false, true)
            }) {
                Assessment said = ProbePlaceCheckTest.assess(core, less);
                assertThat(said.verdict()).as("cook %d, %s", cook, less).isGreaterThanOrEqualTo(whole.verdict());
                if (!less.thickness() || !(less.setPoint() || less.bathColumn())) {
                    assertThat(said.check(ProbePlaceCheck.ID).orElseThrow().verdict())
                            .isEqualTo(Verdict.NOT_PROVEN);
                }
            }
            Assessment bySetPoint = ProbePlaceCheckTest.assess(core, new Said(true, true, false, true));
            if (bySetPoint.verdict().compareTo(whole.verdict()) < 0) {
                assertThat(bySetPoint.cautions()).extracting(Caution::id).contains("probe-place.set-point");
            }
        }
    }
}
