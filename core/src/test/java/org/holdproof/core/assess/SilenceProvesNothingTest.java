package org.holdproof.core.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Product;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Less said never proves more, on seeded invented cooks: blocks of seeds, each block one test. */
class SilenceProvesNothingTest {
    private static final int BLOCK = 125;

    static Stream<Integer> blocks() {
        return IntStream.range(0, 16).boxed();
    }

    static IntStream seeds(int block) {
        return IntStream.range(block * BLOCK, (block + 1) * BLOCK);
    }

    @ParameterizedTest(name = "seeds from 125 × {0}")
    @MethodSource("blocks")
    void leavingOutALineOfTheRecordNeverProvesMore(int block) {
        seeds(block).forEach(seed -> {
            WholeCook cook = WholeCook.random(seed);
            Assessment full = cook.assess();
            if (full.verdict() == Verdict.MET) {
                return;
            }
            for (WholeCook less : withoutALine(cook, new Random(seed), 3)) {
                assertNotMet(seed, full, less);
            }
        });
    }

    @ParameterizedTest(name = "seeds from 125 × {0}")
    @MethodSource("blocks")
    void cuttingTheLogNeverProvesMore(int block) {
        seeds(block).forEach(seed -> {
            WholeCook cook = WholeCook.random(seed);
            Assessment full = cook.assess();
            if (full.verdict() == Verdict.MET) {
                return;
            }
            if (isOnlyDoubted(full)) {
                return;
            }
            for (WholeCook less : cut(cook, new Random(seed))) {
                assertNotMet(seed, full, less);
            }
        });
    }

    /** Where the probe sat is judged from the whole rise: a shorter log can take away the reason to doubt it. */
    static boolean isOnlyDoubted(Assessment full) {
        return full.checks().stream()
                .allMatch(check -> check.verdict() == Verdict.MET || check.id().equals(ProbePlaceCheck.ID));
    }

    private static void assertNotMet(int seed, Assessment full, WholeCook less) {
        Assessment reduced = less.assess();
        if (reduced.verdict() == Verdict.MET) {
            assertThat(reduced.verdict())
                    .as("seed " + seed + " " + full.authority().id() + "\nfull: "
                            + full.batch().stages() + "\n" + said(full) + "\nreduced: "
                            + less.record().stages() + "\n" + said(reduced))
                    .isNotEqualTo(Verdict.MET);
        }
    }

    static String said(Assessment assessment) {
        return assessment.checks().stream()
                .map(check -> check.id() + " " + check.verdict().words() + " " + check.measured() + ": " + check.why())
                .reduce("", (one, other) -> one + "\n  " + other);
    }

    /** Some of the records that lack a stage, the end, or an optional member. */
    static List<WholeCook> withoutALine(WholeCook cook, Random random, int most) {
        BatchRecord record = cook.record();
        List<WholeCook> less = new ArrayList<>();
        for (int i = 0; i < record.stages().size(); i++) {
            List<Stage> stages = new ArrayList<>(record.stages());
            Stage gone = stages.remove(i);
            if (stages.stream().anyMatch(stage -> !stage.kind().isMoment())) {
                less.add(cook.with(record.withStages(stages)));
            }
            stages.add(
                    i,
                    new Stage(
                            gone.kind(),
                            gone.from(),
                            gone.to(),
                            OptionalDouble.empty(),
                            Optional.empty(),
                            gone.mark()));
            less.add(cook.with(record.withStages(stages)));
            stages.set(
                    i,
                    new Stage(
                            gone.kind(),
                            gone.from(),
                            i + 1 < stages.size()
                                            && stages.stream().skip(i + 1).anyMatch(stage -> !stage.kind()
                                                    .isMoment())
                                    ? gone.to()
                                    : Optional.empty(),
                            gone.setPointCelsius(),
                            gone.moisture(),
                            gone.mark()));
            less.add(cook.with(record.withStages(stages)));
        }
        less.add(cook.with(record.withEnd(Optional.empty())));
        Product product = record.product();
        less.add(cook.with(withProduct(
                record,
                new Product(
                        product.name(),
                        product.species(),
                        product.cut(),
                        product.form(),
                        OptionalDouble.empty(),
                        product.shape(),
                        product.thicknessMillimetres(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty()))));
        List<WholeCook> some = new ArrayList<>();
        while (some.size() < most && !less.isEmpty()) {
            some.add(less.remove(random.nextInt(less.size())));
        }
        return some;
    }

    private static BatchRecord withProduct(BatchRecord record, Product product) {
        return new BatchRecord(
                record.batch(),
                record.kitchen(),
                record.authority(),
                product,
                record.logs(),
                record.stages(),
                record.roles(),
                record.approval(),
                record.end());
    }

    /** The log without its front, without its back, and with a hole longer than any that is bridged. */
    static List<WholeCook> cut(WholeCook cook, Random random) {
        List<double[]> rows = cook.rows();
        int at = 1 + random.nextInt(rows.size() - 2);
        int end = at;
        while (end < rows.size() - 1 && rows.get(end)[0] - rows.get(at - 1)[0] <= 30 + random.nextInt(200)) {
            end++;
        }
        List<double[]> hole = new ArrayList<>(rows.subList(0, at));
        hole.addAll(rows.subList(end, rows.size()));
        return List.of(
                cook.withRows(rows.subList(at, rows.size())), cook.withRows(rows.subList(0, at)), cook.withRows(hole));
    }

    @Test
    void theCooksAreOfEveryKind() {
        Map<Verdict, Long> verdicts = IntStream.range(0, 400)
                .mapToObj(seed -> WholeCook.random(seed).assess().verdict())
                .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));

        assertThat(verdicts).containsOnlyKeys(Verdict.values());
        assertThat(verdicts.values()).allMatch(count -> count > 30);
    }

    static boolean has(Assessment assessment, String id) {
        return assessment.checks().stream().map(Check::id).anyMatch(id::equals);
    }
}
