package org.holdproof.core.standing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.LongStream;
import org.holdproof.core.assess.Cooks;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.standing.StandingQuestion.State;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What must hold however a cook goes on, on seeded invented logs cut again and again. */
class StandingLawsTest {
    /** What is asked of a stretch of readings, which the readings to come may still make part of another one. */
    private static final Pattern FOLLOWS_READINGS = Pattern.compile("^(cooling|cold-store|hot-hold|under-hot|reheat)");

    private static final String[] AUTHORITIES = {
        "us-food-code-2022",
        "us-fsis-2021",
        "canada-cfia",
        "uk-england-wales-ni",
        "uk-scotland",
        "australia",
        "ireland-fsai",
        "us-new-york"
    };

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 16);
    }

    /** A smoke, a bath, a hot hold, a chill, a store and a reheat, with probes that lag each other, noise and gaps. */
    private static GrowingCook random(long seed) {
        Random random = new Random(seed);
        int probes = 1 + random.nextInt(3);
        double bath = 52 + random.nextInt(22);
        double smoke = 60 + random.nextInt(180);
        double inBath = smoke + 60 + random.nextInt(500);
        double hold = inBath + 20 + random.nextInt(120);
        double chilled = hold + 240 + random.nextInt(300);
        double stored = chilled + 200;
        double end = stored + 40 + random.nextInt(200);
        double holding = 54 + random.nextInt(14);
        boolean mediumLogged = random.nextBoolean();
        double[] temperature = new double[probes];
        double[] outer = new double[probes];
        double[] tau = new double[probes];
        for (int p = 0; p < probes; p++) {
            temperature[p] = 4 + random.nextDouble() * 4;
            outer[p] = temperature[p];
            tau[p] = 10 + random.nextInt(30);
        }
        List<double[]> rows = new ArrayList<>();
        for (double minute = 0; minute <= end; minute += 1) {
            double medium =
                    minute < smoke ? 70 : minute < inBath ? bath : minute < hold ? holding : minute < stored ? 1 : 88;
            double[] row = new double[probes + (mediumLogged ? 2 : 1)];
            row[0] = minute;
            for (int p = 0; p < probes; p++) {
                outer[p] += (medium - outer[p]) / tau[p];
                temperature[p] += (outer[p] - temperature[p]) / tau[p];
                row[p + 1] = Math.round((temperature[p] + random.nextGaussian() * 0.1) * 10) / 10.0;
            }
            if (mediumLogged) {
                row[probes + 1] = medium;
            }
            rows.add(row);
        }
        for (int gaps = random.nextInt(3); gaps > 0; gaps--) {
            int from = random.nextInt(rows.size() - 100);
            rows.subList(from, from + 6 + random.nextInt(60)).clear();
        }
        return new GrowingCook(
                rows,
                mediumLogged,
                AUTHORITIES[random.nextInt(AUTHORITIES.length)],
                random.nextInt(10) / 10.0,
                List.of(
                        Cooks.stage(Stage.Kind.SMOKE, 0, smoke),
                        Cooks.stage(Stage.Kind.BATH, smoke, inBath),
                        Cooks.stage(Stage.Kind.HOT_HOLD, inBath, hold),
                        Cooks.stage(Stage.Kind.CHILL, hold, chilled),
                        Cooks.stage(Stage.Kind.STORE, chilled, stored),
                        Cooks.stage(Stage.Kind.REHEAT, stored, end)));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void whatIsProvenStaysProvenAndWhatIsLostIsNeverMet(long seed) throws Exception {
        GrowingCook cook = random(seed);
        Random random = new Random(-seed);
        Set<String> proven = new HashSet<>();
        Set<String> lost = new HashSet<>();
        for (int count = 2 + random.nextInt(60); count < cook.rows().size(); count += 40 + random.nextInt(80)) {
            Standing standing = cook.after(count);
            assertStays(standing, proven, lost, count);
        }
        Standing end = cook.now();
        assertStays(end, proven, lost, cook.rows().size());

        Map<String, Verdict> whole = new HashMap<>();
        Map<String, Integer> times = new HashMap<>();
        for (Check check : cook.whole().checks()) {
            int time = times.merge(check.id(), 1, Integer::sum);
            whole.put(check.id() + (time > 1 ? "#" + time : ""), check.verdict());
        }
        assertThat(proven)
                .isNotEmpty()
                .allSatisfy(key -> assertThat(whole.get(key)).as(key).isEqualTo(Verdict.MET));
        assertThat(lost).allSatisfy(key -> assertThat(whole.get(key)).as(key).isNotEqualTo(Verdict.MET));
    }

    private static void assertStays(Standing standing, Set<String> proven, Set<String> lost, int count) {
        assertThat(standing.questions()).extracting(StandingQuestion::key).doesNotHaveDuplicates();
        assertSaysNoMoreThanItsJudgement(standing, count);
        for (StandingQuestion question : standing.questions()) {
            String at = question.key() + " after " + count + " rows";
            if (FOLLOWS_READINGS.matcher(question.key()).find()) {
                continue;
            }
            if (proven.contains(question.key())) {
                assertThat(question.state()).as(at).isEqualTo(State.PROVEN);
            }
            if (lost.contains(question.key())) {
                assertThat(question.state()).as(at).isEqualTo(State.LOST);
            }
        }
        standing.questions(State.PROVEN).stream()
                .map(StandingQuestion::key)
                .filter(key -> !FOLLOWS_READINGS.matcher(key).find())
                .forEach(proven::add);
        standing.questions(State.LOST).stream()
                .map(StandingQuestion::key)
                .filter(key -> !FOLLOWS_READINGS.matcher(key).find())
                .forEach(lost::add);
        assertThat(standing.questions()).extracting(StandingQuestion::key).containsAll(proven);
    }

    /** Only the end of a cook answers this one. */
    private static final String END = "record.end";

    /** A status says no more than a judgement of the same cut does: what it calls kept or proven is met there. */
    private static void assertSaysNoMoreThanItsJudgement(Standing standing, int count) {
        for (StandingQuestion question : standing.questions()) {
            boolean good = question.state() == State.PROVEN || question.state() == State.KEPT;
            if (good && question.check().isPresent() && !question.key().equals(END)) {
                assertThat(question.check().get().verdict())
                        .as(question.key() + " after " + count + " rows")
                        .isEqualTo(Verdict.MET);
            }
        }
        if (standing.verdict() == Verdict.MET) {
            assertThat(standing.assessment().checks())
                    .as("after %d rows", count)
                    .filteredOn(check -> !check.id().equals(END))
                    .allMatch(check -> check.verdict() == Verdict.MET);
        }
        if (standing.assessment().verdict() == Verdict.NOT_MET && standing.isOver()) {
            assertThat(standing.verdict()).as("after %d rows", count).isEqualTo(Verdict.NOT_MET);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aCookThatIsOverStandsAsItIsVerified(long seed) throws Exception {
        GrowingCook cook = random(seed);
        Standing end = cook.now();
        Assessment whole = cook.whole();

        assertThat(end.isOver()).isTrue();
        assertThat(end.clocks()).isEmpty();
        assertThat(end.outlook()).isEmpty();
        assertThat(end.assessment().checks()).isEqualTo(whole.checks());
        assertThat(end.questions()).allSatisfy(question -> assertThat(question.state() == State.PROVEN)
                .as(question.key())
                .isEqualTo(question.check().orElseThrow().verdict() == Verdict.MET));
        assertThat(end.verdict() == Verdict.MET).isEqualTo(whole.verdict() == Verdict.MET);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void everyClockHasItsLimitBetweenProvableAndLost(long seed) throws Exception {
        GrowingCook cook = random(seed);
        int clocks = 0;
        for (int count = 20; count < cook.rows().size(); count += 20) {
            Standing standing = cook.after(count);
            for (RunningClock clock : standing.clocks()) {
                clocks++;
                assertThat(clock.provableUntilMillis()).isLessThanOrEqualTo(clock.lostFromMillis());
                assertThat(clock.usedMinutes().best()).isNotNegative();
                assertThat(clock.words()).isNotBlank();
            }
            assertThat(standing.clocks())
                    .isSortedAccordingTo((a, b) -> Long.compare(a.provableUntilMillis(), b.provableUntilMillis()));
            assertThat(Remedies.of(standing, GrowingCook.LIBRARY))
                    .allSatisfy(remedy -> assertThat(remedy.text()).isNotBlank());
        }
        assertThat(clocks).isPositive();
    }
}
