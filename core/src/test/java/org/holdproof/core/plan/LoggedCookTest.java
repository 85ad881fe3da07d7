package org.holdproof.core.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.ColumnRoles;
import org.holdproof.core.batch.Instrument;
import org.holdproof.core.batch.Kitchen;
import org.holdproof.core.batch.Product;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Shape;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.batch.Roles;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.heat.Conduction;
import org.holdproof.core.heat.MediumSchedule;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.PieceTemperatures;
import org.holdproof.core.heat.ThermalFit;
import org.holdproof.core.heat.ThermalProperties;
import org.holdproof.core.heat.UnfitLogException;
import org.holdproof.core.heat.smoke.Smoke;
import org.holdproof.core.heat.smoke.SmokerSurface;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.reading.LogReader;
import org.holdproof.core.plan.LoggedCook.Learned;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Caution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Logs made up by conduction with noise of 0.1 °C, seed 5; one reading a minute, in at minute 10. */
class LoggedCookTest {
    private static final Instant ZERO = Instant.parse("2031-05-17T08:00:00Z");
    private static final int BEFORE = 10;
    private static final double TRUTH = 1.35e-7;

    @TempDir
    private Path folder = Path.of("");

    private ProbeLog log() throws Exception {
        int count = 240;
        double[] minutes = new double[count];
        for (int i = 0; i < count; i++) {
            minutes[i] = i;
        }
        double[] core = Conduction.of(Piece.of(50, 0.28), ThermalProperties.constant(0.48, TRUTH))
                .runAt(0, 4, MediumSchedule.held(61, 150), minutes);
        SplittableRandom random = new SplittableRandom(5);
        StringBuilder csv = new StringBuilder("time,core °C,bath °C\n");
        for (int i = 0; i < BEFORE + count; i++) {
            double celsius = i < BEFORE ? 4 : core[i - BEFORE] + 0.1 * random.nextGaussian();
            csv.append(ZERO.plusSeconds(60L * i)).append(String.format(Locale.ROOT, ",%.2f,61.0%n", celsius));
        }
        Path file = Files.writeString(folder.resolve("cook.csv"), csv);
        return LogReader.read(file, LogSettings.NONE);
    }

    private static Stage stage(Stage.Kind kind, int fromMinute, int toMinute) {
        return new Stage(
                kind,
                ZERO.plusSeconds(60L * fromMinute),
                Optional.of(ZERO.plusSeconds(60L * toMinute)),
                OptionalDouble.empty());
    }

    private static BatchRecord batch(OptionalDouble thickness, List<String> bath, Stage... stages) {
        return batch(thickness, bath, List.of("core"), stages);
    }

    private static BatchRecord batch(OptionalDouble thickness, List<String> bath, List<String> cores, Stage... stages) {
        return new BatchRecord(
                "T-1",
                new Kitchen("Test kitchen", "", ZoneOffset.UTC),
                "us-food-code-2022",
                new Product(
                        "test piece",
                        Species.BEEF,
                        "",
                        Form.INTACT,
                        OptionalDouble.empty(),
                        Shape.ROAST,
                        thickness,
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty()),
                new Instrument("T", 0.5, Optional.empty(), OptionalDouble.empty()),
                new ColumnRoles(cores, bath, List.of()),
                LogSettings.NONE,
                List.of(stages),
                new Roles("cook", ""));
    }

    @Test
    void theNextBatchIsPlannedAsTheLoggedOneHeated() throws Exception {
        BatchRecord batch = batch(OptionalDouble.of(50), List.of("bath"), stage(Stage.Kind.BATH, BEFORE, 240));

        ThermalFit fit = LoggedCook.learn(log(), batch).fit().orElseThrow();

        assertThat(fit.diffusivity().covers(TRUTH)).isTrue();
        PlannedCook next = PlannedCooks.roast(65, 61);
        HeatFigures published = PlannedCooks.heat(next);
        HeatFigures fitted = published.fittedBy(fit);
        BathPlan plan = (BathPlan) Plan.of(next, fitted, RuleLibrary.builtIn());
        BathPlan byTheBook = (BathPlan) Plan.of(next, published, RuleLibrary.builtIn());
        assertThat(plan.safeMinute()).isLessThan(byTheBook.safeMinute());
        assertThat(plan.cautions()).extracting(Caution::id).contains("fit");
        assertThat(byTheBook.cautions()).extracting(Caution::id).doesNotContain("fit");
        // a fit never excuses a shorter cook
        assertThat(plan.coveringMinute()).isEqualTo(byTheBook.coveringMinute());
    }

    @Test
    void recordsThatCannotTellAreRefusedWithTheReason() throws IOException, Exception {
        ProbeLog log = log();
        Stage bath = stage(Stage.Kind.BATH, BEFORE, 240);

        // 50 mm of meat said to be 100: no core of that thickness rises so fast
        assertThatThrownBy(() -> LoggedCook.learn(log, batch(OptionalDouble.of(100), List.of("bath"), bath)))
                .isInstanceOf(UnfitLogException.class)
                .hasMessageContaining("cannot have been in the core");

        assertThatThrownBy(() -> LoggedCook.learn(log, batch(OptionalDouble.of(50), List.of("bath"))))
                .isInstanceOf(UnfitLogException.class)
                .hasMessageContaining("names no bath");
        assertThatThrownBy(() -> LoggedCook.learn(log, batch(OptionalDouble.empty(), List.of("bath"), bath)))
                .hasMessageContaining("no thickness");
        assertThatThrownBy(() -> LoggedCook.learn(log, batch(OptionalDouble.of(50), List.of(), bath)))
                .hasMessageContaining("no bath probe");
        assertThatThrownBy(() -> LoggedCook.learn(log, batch(OptionalDouble.of(50), List.of("tank"), bath)))
                .hasMessageContaining("no column 'tank'");
        assertThatThrownBy(() -> LoggedCook.learn(
                        log, batch(OptionalDouble.of(50), List.of("bath"), stage(Stage.Kind.SMOKE, 0, BEFORE), bath)))
                .hasMessageContaining("names no probe in the smoker's air");
    }

    /** The record says ten minutes too early or too late; the log knows better. */
    @ParameterizedTest
    @ValueSource(ints = {-9, -5, 5, 9})
    void aRecordSomeMinutesOffStillGivesTheTruth(int off) throws Exception {
        BatchRecord batch = batch(OptionalDouble.of(50), List.of("bath"), stage(Stage.Kind.BATH, BEFORE + off, 240));

        ThermalFit fit = LoggedCook.learn(log(), batch).fit().orElseThrow();

        assertThat(fit.diffusivity().estimate()).isCloseTo(TRUTH, within(0.12e-7));
    }

    /** A slab said to be half as thick would ask for a quarter of the diffusivity. */
    @Test
    void aLogThatAsksForAFoodThereIsNoneOfIsRefused() throws Exception {
        BatchRecord batch = batch(OptionalDouble.of(28), List.of("bath"), stage(Stage.Kind.BATH, BEFORE, 240));

        assertThatThrownBy(() -> LoggedCook.learn(log(), batch))
                .isInstanceOf(UnfitLogException.class)
                .hasMessageContaining("not as they were");
    }

    @Test
    void ofSeveralProbesTheColdestWhileHeatingGoverns() throws Exception {
        Path file = Files.writeString(folder.resolve("two.csv"), twoProbes());
        ProbeLog log = LogReader.read(file, LogSettings.NONE);
        BatchRecord batch = batch(
                OptionalDouble.of(50), List.of("bath"), List.of("quick", "slow"), stage(Stage.Kind.BATH, BEFORE, 240));

        ThermalFit fit = LoggedCook.learn(log, batch).fit().orElseThrow();

        assertThat(fit.diffusivity().estimate()).isLessThan(1.3e-7);
    }

    private static String twoProbes() {
        double[] minutes = new double[240];
        Arrays.setAll(minutes, i -> i);
        StringBuilder csv = new StringBuilder("time,quick °C,slow °C,bath °C\n");
        double[] quick = Conduction.of(Piece.of(50, 0.28), ThermalProperties.constant(0.48, 1.4e-7))
                .runAt(0, 4, MediumSchedule.held(61, 150), minutes);
        double[] slow = Conduction.of(Piece.of(50, 0.28), ThermalProperties.constant(0.48, 1.2e-7))
                .runAt(0, 4, MediumSchedule.held(61, 150), minutes);
        for (int i = 0; i < BEFORE + 240; i++) {
            csv.append(ZERO.plusSeconds(60L * i))
                    .append(String.format(
                            Locale.ROOT,
                            ",%.2f,%.2f,61.0%n",
                            i < BEFORE ? 4 : quick[i - BEFORE],
                            i < BEFORE ? 4 : slow[i - BEFORE]));
        }
        return csv.toString();
    }

    /** Three hours bare at 110 °C, then a bath: made up by the product's own smoke at pace 0.4. */
    @Test
    void aSmokedLogIsReplayedAndItsBathFitted() throws Exception {
        PieceTemperatures smoked = Conduction.of(Piece.of(50, 0.28).likely(), SmokerSurface.food())
                .run(4, Smoke.held(110, 60).at(0.4), new double[] {0, 20, 40, 60});
        Learned learned = LoggedCook.learn(smokedLog(smoked, 60, 75), smokedBatch(60));

        assertThat(learned.notes()).hasSize(1);
        assertThat(learned.notes().get(0)).contains("replayed", "published spread");
        assertThat(learned.fit().orElseThrow().diffusivity().estimate()).isBetween(1.0e-7, 1.6e-7);
    }

    @Test
    void aBathTooNearTheSmokedCoreIsNotFittedAndSaysSo() throws Exception {
        PieceTemperatures smoked = Conduction.of(Piece.of(50, 0.28), SmokerSurface.food())
                .run(4, Smoke.held(110, 240).at(0.4), new double[] {0, 60, 120, 180, 240});
        Learned learned = LoggedCook.learn(smokedLog(smoked, 240, 62), smokedBatch(240));

        assertThat(learned.fit()).isEmpty();
        assertThat(learned.notes().get(1)).contains("not fitted", "published figures stay");
    }

    private ProbeLog smokedLog(PieceTemperatures smoked, int smokeMinutes, double bath) throws Exception {
        double[] minutes = new double[200];
        Arrays.setAll(minutes, i -> i);
        Piece piece = Piece.of(50, 0.28);
        double[] core = Conduction.of(piece, ThermalProperties.constant(0.48, TRUTH))
                .runAt(0, smoked.end(), MediumSchedule.held(bath, 150), minutes);
        double[] every = new double[smokeMinutes];
        Arrays.setAll(every, i -> i);
        double[] before = Conduction.of(smokeMinutes == 60 ? piece.likely() : piece, SmokerSurface.food())
                .run(4, Smoke.held(110, smokeMinutes).at(0.4), every)
                .coreCelsius();
        StringBuilder csv = new StringBuilder("time,core °C,bath °C,air °C\n");
        for (int i = 0; i <= smokeMinutes + 190; i++) {
            double celsius = i < smokeMinutes ? before[i] : core[i - smokeMinutes];
            csv.append(ZERO.plusSeconds(60L * i))
                    .append(String.format(Locale.ROOT, ",%.2f,%.1f,110.0%n", celsius, bath));
        }
        Path file = Files.writeString(folder.resolve("smoked.csv"), csv);
        return LogReader.read(file, LogSettings.NONE);
    }

    private static BatchRecord smokedBatch(int smokeMinutes) {
        BatchRecord plain = batch(
                OptionalDouble.of(50),
                List.of("bath"),
                stage(Stage.Kind.SMOKE, 0, smokeMinutes),
                stage(Stage.Kind.BATH, smokeMinutes, smokeMinutes + 190));
        return new BatchRecord(
                plain.batch(),
                plain.kitchen(),
                plain.authority(),
                plain.product(),
                plain.instrument(),
                new ColumnRoles(List.of("core"), List.of("bath"), List.of("air")),
                plain.log(),
                plain.stages(),
                plain.roles());
    }
}
