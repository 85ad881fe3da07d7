package org.holdproof.core.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
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
import org.holdproof.core.heat.ThermalFit;
import org.holdproof.core.heat.ThermalProperties;
import org.holdproof.core.heat.UnfitLogException;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.reading.LogReader;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Caution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

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
                new ColumnRoles(List.of("core"), bath, List.of()),
                LogSettings.NONE,
                List.of(stages),
                new Roles("cook", ""));
    }

    @Test
    void theNextBatchIsPlannedAsTheLoggedOneHeated() throws Exception {
        BatchRecord batch = batch(OptionalDouble.of(50), List.of("bath"), stage(Stage.Kind.BATH, BEFORE, 240));

        ThermalFit fit = LoggedCook.fit(log(), batch);

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
        assertThatThrownBy(() -> LoggedCook.fit(log, batch(OptionalDouble.of(100), List.of("bath"), bath)))
                .isInstanceOf(UnfitLogException.class)
                .hasMessageContaining("cannot have been in the core");

        assertThatThrownBy(() -> LoggedCook.fit(log, batch(OptionalDouble.of(50), List.of("bath"))))
                .isInstanceOf(UnfitLogException.class)
                .hasMessageContaining("names no bath");
        assertThatThrownBy(() -> LoggedCook.fit(log, batch(OptionalDouble.empty(), List.of("bath"), bath)))
                .hasMessageContaining("no thickness");
        assertThatThrownBy(() -> LoggedCook.fit(log, batch(OptionalDouble.of(50), List.of(), bath)))
                .hasMessageContaining("no bath probe");
        assertThatThrownBy(() -> LoggedCook.fit(log, batch(OptionalDouble.of(50), List.of("tank"), bath)))
                .hasMessageContaining("no column 'tank'");
        assertThatThrownBy(() -> LoggedCook.fit(
                        log, batch(OptionalDouble.of(50), List.of("bath"), stage(Stage.Kind.SMOKE, 0, BEFORE), bath)))
                .hasMessageContaining("smoked before its bath");
    }
}
