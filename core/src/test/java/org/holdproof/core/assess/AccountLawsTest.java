package org.holdproof.core.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.ColumnUse;
import org.holdproof.core.batch.Instrument;
import org.holdproof.core.batch.LogSource;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What must hold for the account of any cook, on seeded invented ones: blocks of seeds, each block one test. */
class AccountLawsTest {
    private static final int BLOCK = 125;

    static Stream<Integer> blocks() {
        return IntStream.range(20, 24).boxed();
    }

    private static IntStream seeds(int block) {
        return IntStream.range(block * BLOCK, (block + 1) * BLOCK);
    }

    @ParameterizedTest(name = "seeds from 125 × {0}")
    @MethodSource("blocks")
    void splittingAStageChangesNoVerdict(int block) {
        seeds(block).forEach(seed -> {
            WholeCook cook = WholeCook.random(seed);
            List<Stage> stages = new ArrayList<>();
            for (Stage stage : cook.record().stages()) {
                boolean splits = stage.to().isPresent()
                        && stage.kind() != Stage.Kind.SMOKE
                        && stage.to().get().toEpochMilli() - stage.from().toEpochMilli() > 120_000;
                if (splits) {
                    Instant middle = Instant.ofEpochMilli(
                            (stage.from().toEpochMilli() + stage.to().get().toEpochMilli()) / 120_000 * 60_000);
                    stages.add(part(stage, stage.from(), middle));
                    stages.add(part(stage, middle, stage.to().get()));
                } else {
                    stages.add(stage);
                }
            }

            Assessment whole = cook.assess();
            Assessment split = cook.with(cook.record().withStages(stages)).assess();

            assertThat(split.verdict())
                    .as("seed " + seed + SilenceProvesNothingTest.said(whole) + "\nsplit:"
                            + SilenceProvesNothingTest.said(split))
                    .isEqualTo(whole.verdict());
        });
    }

    private static Stage part(Stage stage, Instant from, Instant to) {
        return new Stage(stage.kind(), from, Optional.of(to), stage.setPointCelsius(), stage.moisture(), stage.mark());
    }

    @ParameterizedTest(name = "seeds from 125 × {0}")
    @MethodSource("blocks")
    void aWiderToleranceProvesNothingMore(int block) {
        seeds(block).forEach(seed -> {
            WholeCook cook = WholeCook.random(seed);
            Assessment narrow = cook.assess();
            // a store that may be warm just before a reheat is judged as part of it: there the law does not hold yet
            boolean reheated = cook.record().stages().stream().anyMatch(stage -> stage.kind() == Stage.Kind.REHEAT);
            if (narrow.verdict() == Verdict.MET || reheated) {
                return;
            }
            Assessment wide = cook.with(withTolerance(cook.record(), 1.5)).assess();

            assertThat(wide.verdict())
                    .as("seed " + seed + SilenceProvesNothingTest.said(narrow) + "\nwide:"
                            + SilenceProvesNothingTest.said(wide))
                    .isNotEqualTo(Verdict.MET);
        });
    }

    @ParameterizedTest(name = "seeds from 125 × {0}")
    @MethodSource("blocks")
    void aToleranceOfNothingWorksAndIsDoubted(int block) {
        seeds(block).filter(seed -> seed % 5 == 0).forEach(seed -> {
            WholeCook cook = WholeCook.random(seed);
            Assessment exact = cook.with(withTolerance(cook.record(), 0)).assess();

            assertThat(exact.cautions()).anyMatch(caution -> caution.id().equals("instrument.tolerance"));
        });
    }

    private static BatchRecord withTolerance(BatchRecord record, double celsius) {
        LogSource log = record.logs().get(0);
        Instrument instrument = log.instrument();
        return withLog(
                record,
                new LogSource(
                        log.file(),
                        new Instrument(instrument.id(), celsius, instrument.lastCheck(), instrument.checkEveryDays()),
                        log.settings(),
                        log.clock(),
                        log.columns()));
    }

    private static BatchRecord withLog(BatchRecord record, LogSource log) {
        return new BatchRecord(
                record.batch(),
                record.kitchen(),
                record.authority(),
                record.product(),
                List.of(log),
                record.stages(),
                record.roles(),
                record.approval(),
                record.end());
    }

    @ParameterizedTest(name = "seeds from 125 × {0}")
    @MethodSource("blocks")
    void oneProbeFewerNeverWorsensAVerdict(int block) {
        seeds(block).forEach(seed -> {
            WholeCook cook = WholeCook.random(seed);
            LogSource log = cook.record().logs().get(0);
            List<ColumnUse> fewer = log.columns().stream()
                    .filter(use -> !use.heading().equals("P1"))
                    .toList();
            if (fewer.size() == log.columns().size()) {
                return;
            }
            Assessment more = cook.assess();
            Assessment less = cook.with(withLog(
                            cook.record(),
                            new LogSource(log.file(), log.instrument(), log.settings(), log.clock(), fewer)))
                    .assess();

            assertThat(more.verdict() == Verdict.MET && less.verdict() != Verdict.MET)
                    .as("seed " + seed + SilenceProvesNothingTest.said(less))
                    .isFalse();
        });
    }

    @ParameterizedTest(name = "seeds from 125 × {0}")
    @MethodSource("blocks")
    void readingsAfterTheEndChangeNoCheckOfTheAccount(int block) {
        seeds(block).forEach(seed -> {
            WholeCook cook = WholeCook.random(seed);
            if (cook.record().ending().isEmpty()) {
                return;
            }
            List<double[]> longer = new ArrayList<>(cook.rows());
            double last = longer.get(longer.size() - 1)[0];
            for (int i = 1; i < 40; i++) {
                double[] row = longer.get(0).clone();
                row[0] = last + i * (i % 3 == 0 ? 0.2 : 25);
                if (row[0] <= longer.get(longer.size() - 1)[0]) {
                    continue;
                }
                row[1] = 20 + i;
                longer.add(row);
            }

            assertThat(account(cook.withRows(longer).assess()))
                    .as("seed " + seed)
                    .isEqualTo(account(cook.assess()));
        });
    }

    private static List<String> account(Assessment assessment) {
        return assessment.checks().stream()
                .filter(check ->
                        !check.id().startsWith("record.") && !check.id().equals(ProbePlaceCheck.ID))
                .map((Check check) -> check.id() + " " + check.verdict() + " " + check.measured())
                .toList();
    }
}
