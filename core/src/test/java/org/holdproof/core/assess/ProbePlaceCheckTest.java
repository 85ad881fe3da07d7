package org.holdproof.core.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.ColumnRoles;
import org.holdproof.core.batch.Product;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.heat.Conduction;
import org.holdproof.core.heat.MediumSchedule;
import org.holdproof.core.heat.MediumSchedule.Segment;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.ThermalProperties;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.reading.LogReader;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.api.Test;

/** A probe in the water passes nothing. Invented logs of a 60 mm piece in a bath at 62 °C, then in ice water. */
class ProbePlaceCheckTest {
    static final int BATH = 420;
    static final int END = 780;
    private static final MediumSchedule WATERS =
            MediumSchedule.of(Segment.hold(BATH, 62, 200), Segment.hold(END - BATH + 1, 0.5, 200));

    /** The core of a piece of this thickness, by conduction. */
    private static double[] core(double thicknessMillimetres) {
        double[] minutes = IntStream.rangeClosed(0, END).asDoubleStream().toArray();
        return Conduction.of(Piece.of(thicknessMillimetres, 0), ThermalProperties.constant(0.48, 1.3e-7))
                .runAt(0, 4, WATERS, minutes);
    }

    /** What a record may leave out. */
    record Said(boolean thickness, boolean setPoint, boolean bathColumn, boolean chill) {
        static final Said ALL = new Said(true, true, true, true);
    }

    static Assessment assess(double[] core, Said said) throws Exception {
        Random random = new Random(11);
        StringBuilder csv = new StringBuilder("time,core °C,bath °C\n");
        for (int minute = 0; minute <= (said.chill ? END : BATH); minute++) {
            csv.append(Instant.ofEpochSecond(minute * 60L))
                    .append(',')
                    .append(Math.round((core[minute] + random.nextGaussian() * 0.05) * 10) / 10.0)
                    .append(minute <= BATH ? ",62.0\n" : ",\n");
        }
        ProbeLog log = LogReader.read(
                "invented.csv",
                new ByteArrayInputStream(csv.toString().getBytes(StandardCharsets.UTF_8)),
                LogSettings.NONE);
        List<Stage> stages = new ArrayList<>();
        stages.add(new Stage(
                Stage.Kind.BATH,
                Instant.EPOCH,
                Optional.of(Instant.ofEpochSecond(BATH * 60L)),
                said.setPoint ? OptionalDouble.of(62) : OptionalDouble.empty()));
        if (said.chill) {
            stages.add(Cooks.stage(Stage.Kind.CHILL, BATH, END));
        }
        Product whole = Cooks.BRISKET;
        Product product = new Product(
                whole.name(),
                whole.species(),
                whole.cut(),
                whole.form(),
                whole.fatPercent(),
                whole.shape(),
                said.thickness ? whole.thicknessMillimetres() : OptionalDouble.empty(),
                whole.weightKilograms(),
                whole.nitritePpm(),
                whole.brinePercent());
        BatchRecord plain = Cooks.batch("us-fsis-2021", product, stages.toArray(Stage[]::new));
        BatchRecord batch = new BatchRecord(
                plain.batch(),
                plain.kitchen(),
                plain.authority(),
                plain.product(),
                plain.instrument(),
                new ColumnRoles(List.of("core"), said.bathColumn ? List.of("bath") : List.of(), List.of()),
                plain.log(),
                plain.stages(),
                plain.roles());
        RuleLibrary library = RuleLibrary.builtIn();
        return Assessor.assess(log, batch, library.profile("us-fsis-2021").orElseThrow(), library);
    }

    private static Verdict verdict(Assessment assessment, String id) {
        return assessment.check(id).orElseThrow().verdict();
    }

    @Test
    void aProbeNearTheWaterProvesNothing() throws Exception {
        Assessment assessment = assess(core(12), Said.ALL);

        assertThat(verdict(assessment, ProbePlaceCheck.ID)).isEqualTo(Verdict.NOT_PROVEN);
        assertThat(verdict(assessment, LethalityCheck.ID)).isEqualTo(Verdict.NOT_PROVEN);
        assertThat(assessment.fastestCore()).isPresent();
    }

    @Test
    void aCoreOfTheDeclaredThicknessIsNotDoubted() throws Exception {
        Assessment assessment = assess(core(60), Said.ALL);

        assertThat(assessment.check(ProbePlaceCheck.ID)).isEmpty();
        assertThat(verdict(assessment, LethalityCheck.ID)).isEqualTo(Verdict.MET);
        assertThat(verdict(assessment, "cooling.1")).isEqualTo(Verdict.MET);
        assertThat(assessment.fastestCore()).isEmpty();
        assertThat(assessment.cautions()).extracting(Caution::id).doesNotContain("probe-place.set-point");
    }

    @Test
    void withoutAThicknessOrAnyMediumNobodyCanSay() throws Exception {
        double[] core = core(60);
        Check noThickness = assess(core, new Said(false, true, true, true))
                .check(ProbePlaceCheck.ID)
                .orElseThrow();
        assertThat(noThickness.verdict()).isEqualTo(Verdict.NOT_PROVEN);
        assertThat(noThickness.next().orElseThrow()).contains("thickness");
        Check noMedium = assess(core, new Said(true, false, false, true))
                .check(ProbePlaceCheck.ID)
                .orElseThrow();
        assertThat(noMedium.verdict()).isEqualTo(Verdict.NOT_PROVEN);
        assertThat(noMedium.next().orElseThrow()).contains("the bath's set point, or the column it was logged in");
    }

    @Test
    void aSetPointAloneBoundsTheRiseAndThatIsSaid() throws Exception {
        Said said = new Said(true, true, false, true);
        Assessment core = assess(core(60), said);
        assertThat(core.check(ProbePlaceCheck.ID)).isEmpty();
        assertThat(core.cautions()).extracting(Caution::id).contains("probe-place.set-point");
        assertThat(verdict(assess(core(12), said), ProbePlaceCheck.ID)).isEqualTo(Verdict.NOT_PROVEN);
    }

    @Test
    void aProbeMovedIntoTheIceProvesNoChill() throws Exception {
        double[] core = core(60);
        for (int minute = BATH; minute <= END; minute++) {
            core[minute] = 0.5 + 61 * Math.exp(-(minute - BATH) / 0.7);
        }
        Assessment assessment = assess(core, Said.ALL);
        Check place = assessment.check(ProbePlaceCheck.ID).orElseThrow();
        assertThat(place.why()).contains("as if the probe was moved", "07:0", "even in ice water");
        assertThat(verdict(assessment, LethalityCheck.ID)).isEqualTo(Verdict.MET);
        assertThat(verdict(assessment, "cooling.1")).isEqualTo(Verdict.NOT_PROVEN);
    }

    @Test
    void aProbeOutForAFewMinutesBetweenBathAndIceIsNotDoubted() throws Exception {
        double[] core = core(60);
        for (int minute = BATH + 1; minute < BATH + 9; minute++) {
            core[minute] = 24;
        }
        assertThat(assess(core, Said.ALL).check(ProbePlaceCheck.ID)).isEmpty();
    }

    /** From a place that lags to one at the surface, late in the bath. */
    @Test
    void aProbeThatJumpsUpIsDoubted() throws Exception {
        double[] core = core(90);
        for (int minute = 60; minute <= BATH; minute++) {
            core[minute] = 61.5;
        }
        assertThat(verdict(assess(core, Said.ALL), ProbePlaceCheck.ID)).isEqualTo(Verdict.NOT_PROVEN);
        double[] late = core(90);
        for (int minute = 150; minute <= BATH; minute++) {
            late[minute] = 61.5;
        }
        Check place = assess(late, Said.ALL).check(ProbePlaceCheck.ID).orElseThrow();
        assertThat(place.why()).contains("as if the probe was moved", "02:30", "rise further");
    }

    @Test
    void twoStrayReadingsCondemnNothing() throws Exception {
        double[] core = core(60);
        core[100] = 76;
        core[101] = 76;
        core[500] = -3;
        core[501] = 80;
        assertThat(assess(core, Said.ALL).check(ProbePlaceCheck.ID)).isEmpty();
    }

    @Test
    void aLogThatBeginsHotShowsNoRise() throws Exception {
        double[] core = core(60);
        for (int minute = 0; minute < BATH; minute++) {
            core[minute] = Math.max(core[minute], 58);
        }
        Check place = assess(core, Said.ALL).check(ProbePlaceCheck.ID).orElseThrow();
        assertThat(place.verdict()).isEqualTo(Verdict.NOT_PROVEN);
        assertThat(place.why()).contains("how they rose was not logged");
    }
}
