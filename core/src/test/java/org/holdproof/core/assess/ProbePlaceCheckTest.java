package org.holdproof.core.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.ColumnRoles;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.heat.Conduction;
import org.holdproof.core.heat.MediumSchedule;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.PieceTemperatures;
import org.holdproof.core.heat.ThermalProperties;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.reading.LogReader;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.api.Test;

/** A probe in the water passes nothing. Invented logs of a 60 mm piece in a bath. */
class ProbePlaceCheckTest {

    private static final double[] MINUTES =
            IntStream.rangeClosed(0, 420).asDoubleStream().toArray();

    /** The core of a piece of this thickness, by conduction, noise added. */
    private static Assessment assess(double thicknessMillimetres) throws Exception {
        Random random = new Random(11);
        StringBuilder csv = new StringBuilder("time,core °C,bath °C\n");
        PieceTemperatures piece = Conduction.of(
                        Piece.of(thicknessMillimetres, 0), ThermalProperties.constant(0.48, 1.3e-7))
                .run(4, MediumSchedule.held(62, 200), MINUTES);
        for (int minute = 0; minute <= 420; minute++) {
            double probe = piece.coreCelsius(minute);
            csv.append(Instant.ofEpochSecond(minute * 60L))
                    .append(',')
                    .append(Math.round((probe + random.nextGaussian() * 0.05) * 10) / 10.0)
                    .append(",62.0\n");
        }
        ProbeLog log = LogReader.read(
                "invented.csv",
                new ByteArrayInputStream(csv.toString().getBytes(StandardCharsets.UTF_8)),
                LogSettings.NONE);
        BatchRecord plain = Cooks.batch("us-fsis-2021", Cooks.BRISKET, Cooks.stage(Stage.Kind.BATH, 0, 420));
        BatchRecord batch = new BatchRecord(
                plain.batch(),
                plain.kitchen(),
                plain.authority(),
                plain.product(),
                plain.instrument(),
                new ColumnRoles(List.of("core"), List.of("bath"), List.of()),
                plain.log(),
                plain.stages(),
                plain.roles());
        RuleLibrary library = RuleLibrary.builtIn();
        return Assessor.assess(log, batch, library.profile("us-fsis-2021").orElseThrow(), library);
    }

    @Test
    void aProbeNearTheWaterProvesNothing() throws Exception {
        Assessment assessment = assess(12);

        assertThat(assessment.check(ProbePlaceCheck.ID).orElseThrow().verdict()).isEqualTo(Verdict.NOT_PROVEN);
        assertThat(assessment.check(LethalityCheck.ID).orElseThrow().verdict()).isEqualTo(Verdict.NOT_PROVEN);
        assertThat(assessment.verdict()).isEqualTo(Verdict.NOT_PROVEN);
        assertThat(assessment.fastestCore()).isPresent();
    }

    @Test
    void aCoreOfTheDeclaredThicknessIsNotDoubted() throws Exception {
        Assessment assessment = assess(60);

        assertThat(assessment.check(ProbePlaceCheck.ID)).isEmpty();
        assertThat(assessment.check(LethalityCheck.ID).orElseThrow().verdict()).isEqualTo(Verdict.MET);
        assertThat(assessment.fastestCore()).isEmpty();
    }
}
