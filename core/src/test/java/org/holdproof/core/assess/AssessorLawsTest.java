package org.holdproof.core.assess;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.LongStream;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.ColumnRoles;
import org.holdproof.core.batch.Instrument;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.reading.LogReader;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What must hold for every cook, on seeded invented logs read from text as a user's would be. */
class AssessorLawsTest {
    private static final String[] AUTHORITIES = {
        "us-food-code-2022", "us-fsis-2021", "canada-cfia", "uk-england-wales-ni"
    };

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 40);
    }

    /** A smoke, a bath, a hot hold, a chill and a store, with probes that lag each other, noise and gaps. */
    private record Cook(List<double[]> rows, int probes, String authority, double tolerance, List<Stage> stages) {

        static Cook random(long seed) {
            Random random = new Random(seed);
            int probes = 1 + random.nextInt(4);
            double bath = 50 + random.nextInt(22);
            double smoke = 60 + random.nextInt(240);
            double inBath = smoke + 60 + random.nextInt(600);
            double hold = inBath + random.nextInt(120);
            double chilled = hold + 240 + random.nextInt(400);
            double end = chilled + 600;
            double[] temperature = new double[probes];
            double[] tau = new double[probes];
            for (int p = 0; p < probes; p++) {
                temperature[p] = 4 + random.nextDouble() * 4;
                tau[p] = 30 + random.nextInt(60);
            }
            List<double[]> rows = new ArrayList<>();
            for (double minute = 0; minute <= end; minute += 1) {
                double medium = minute < smoke ? 70 : minute < inBath ? bath : minute < hold ? 64 : 1;
                double[] row = new double[probes + 1];
                row[0] = minute;
                for (int p = 0; p < probes; p++) {
                    temperature[p] += (medium - temperature[p]) / tau[p];
                    row[p + 1] = Math.round((temperature[p] + random.nextGaussian() * 0.1) * 10) / 10.0;
                }
                rows.add(row);
            }
            int gaps = random.nextInt(3);
            for (int g = 0; g < gaps; g++) {
                int from = random.nextInt(rows.size() - 100);
                rows.subList(from, from + 6 + random.nextInt(60)).clear();
            }
            return new Cook(
                    rows,
                    probes,
                    AUTHORITIES[random.nextInt(AUTHORITIES.length)],
                    random.nextInt(10) / 10.0,
                    List.of(
                            Cooks.stage(Stage.Kind.SMOKE, 0, smoke),
                            Cooks.stage(Stage.Kind.BATH, smoke, inBath),
                            Cooks.stage(Stage.Kind.HOT_HOLD, inBath, hold),
                            Cooks.stage(Stage.Kind.CHILL, hold, chilled),
                            Cooks.stage(Stage.Kind.STORE, chilled, end)));
        }

        Assessment assess(TemperatureUnit unit, List<Integer> order, double addCelsius) throws Exception {
            StringBuilder csv = new StringBuilder("time");
            for (int p : order) {
                csv.append(",P").append(p).append(' ').append(unit.symbol());
            }
            for (double[] row : rows) {
                csv.append('\n').append(Instant.ofEpochMilli(Math.round(row[0] * 60_000)));
                for (int p : order) {
                    csv.append(String.format(Locale.ROOT, ",%.9f", unit.fromCelsius(row[p + 1] + addCelsius)));
                }
            }
            ProbeLog log = LogReader.read(
                    "invented.csv",
                    new ByteArrayInputStream(csv.toString().getBytes(StandardCharsets.UTF_8)),
                    LogSettings.NONE);
            BatchRecord batch = Cooks.batch(authority, Cooks.BRISKET, stages.toArray(Stage[]::new));
            Instrument instrument = new Instrument(
                    "T",
                    tolerance,
                    batch.instrument().lastCheck(),
                    batch.instrument().checkEveryDays());
            BatchRecord named = new BatchRecord(
                    batch.batch(),
                    batch.kitchen(),
                    authority,
                    batch.product(),
                    instrument,
                    new ColumnRoles(order.stream().map(p -> "P" + p).toList(), List.of(), List.of()),
                    batch.log(),
                    batch.stages(),
                    batch.roles());
            RuleLibrary library = RuleLibrary.builtIn();
            return Assessor.assess(log, named, library.profile(authority).orElseThrow(), library);
        }

        List<Integer> order() {
            List<Integer> order = new ArrayList<>();
            for (int p = 0; p < probes; p++) {
                order.add(p);
            }
            return order;
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theOrderOfTheProbesIsIrrelevant(long seed) throws Exception {
        Cook cook = Cook.random(seed);
        List<Integer> shuffled = cook.order();
        Collections.shuffle(shuffled, new Random(seed));

        assertSame(
                cook.assess(TemperatureUnit.CELSIUS, cook.order(), 0),
                cook.assess(TemperatureUnit.CELSIUS, shuffled, 0));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theScaleOfTheLogIsIrrelevant(long seed) throws Exception {
        Cook cook = Cook.random(seed);

        assertSame(
                cook.assess(TemperatureUnit.CELSIUS, cook.order(), 0),
                cook.assess(TemperatureUnit.FAHRENHEIT, cook.order(), 0));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aHotterLogNeverWorsensLethalityNorBettersCooling(long seed) throws Exception {
        Cook cook = Cook.random(seed);
        Assessment cool = cook.assess(TemperatureUnit.CELSIUS, cook.order(), 0);
        Assessment hot = cook.assess(TemperatureUnit.CELSIUS, cook.order(), 0.7);

        assertThat(verdict(hot, "lethality")).isLessThanOrEqualTo(verdict(cool, "lethality"));
        if (verdict(cool, "cold-store") == Verdict.NOT_MET) {
            assertThat(verdict(hot, "cold-store")).isNotEqualTo(Verdict.MET);
        }
        assertThat(hot.integrated().get(0).log10().worst())
                .isGreaterThanOrEqualTo(cool.integrated().get(0).log10().worst());
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theBatchIsAsGoodAsItsWorstCheck(long seed) throws Exception {
        Cook cook = Cook.random(seed);
        Assessment assessment = cook.assess(TemperatureUnit.CELSIUS, cook.order(), 0);

        assertThat(assessment.verdict())
                .isEqualTo(assessment.checks().stream()
                        .map(Check::verdict)
                        .max(Verdict::compareTo)
                        .orElseThrow());
        assertThat(assessment.checks()).allSatisfy(check -> {
            assertThat(check.why()).isNotBlank();
            assertThat(check.next().isEmpty()).isEqualTo(check.verdict() == Verdict.MET);
        });
    }

    private static Verdict verdict(Assessment assessment, String id) {
        return assessment.check(id).map(Check::verdict).orElse(Verdict.MET);
    }

    private static void assertSame(Assessment one, Assessment other) {
        assertThat(other.verdict()).isEqualTo(one.verdict());
        assertThat(other.checks()).hasSameSizeAs(one.checks());
        for (int i = 0; i < one.checks().size(); i++) {
            Check a = one.checks().get(i);
            Check b = other.checks().get(i);
            assertThat(b.id()).isEqualTo(a.id());
            assertThat(b.verdict()).as(a.id()).isEqualTo(a.verdict());
            assertThat(b.measured().isPresent()).isEqualTo(a.measured().isPresent());
            a.measured().ifPresent(figure -> {
                assertClose(b.measured().orElseThrow().worst(), figure.worst());
                assertClose(b.measured().orElseThrow().nominal(), figure.nominal());
                assertClose(b.measured().orElseThrow().best(), figure.best());
            });
        }
    }

    private static void assertClose(double actual, double expected) {
        if (Double.isInfinite(expected)) {
            assertThat(actual).isEqualTo(expected);
        } else {
            assertThat(actual).isCloseTo(expected, within(1e-4));
        }
    }
}
