package org.holdproof.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.batch.Answers;
import org.holdproof.core.input.SourceFile;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The front door: one cook in one log, in two, on clocks that differ. Invented data. */
class VerificationTest {
    private static final RuleLibrary RULES = RuleLibrary.builtIn();
    private static final long START = Instant.parse("2031-05-06T08:00:00Z").toEpochMilli();
    private static final int MINUTES = 900;

    /** Heats in 100 minutes to 60 °C and stays until minute 800, then falls. */
    private static double core(int minute) {
        double heated = minute < 100 ? 4 + 0.56 * minute : 60;
        return minute <= 800 ? heated : Math.max(3, 60 - 0.57 * (minute - 800));
    }

    private static double bath(int minute) {
        return minute <= 800 ? 60.4 : 2;
    }

    private static SourceFile log(String name, String heading, int from, int to, long aheadMinutes, char separator) {
        StringBuilder text = new StringBuilder(heading).append('\n');
        for (int minute = from; minute <= to; minute++) {
            text.append(Instant.ofEpochMilli(START + (minute + aheadMinutes) * 60_000))
                    .append(separator)
                    .append("%.2f".formatted(core(minute)))
                    .append(separator)
                    .append("%.2f".formatted(bath(minute)))
                    .append('\n');
        }
        return SourceFile.of(name, text.toString().getBytes(StandardCharsets.UTF_8));
    }

    private static SourceFile whole() {
        return log("cook.csv", "time,Core °C,Bath °C", 0, MINUTES, 0, ',');
    }

    private static SourceFile record(String logs) {
        String text =
                """
                {"batch": "T-2", "authority": "us-food-code-2022",
                 "kitchen": {"name": "Test kitchen", "timeZone": "UTC"},
                 "product": {"name": "Beef", "species": "beef", "form": "intact", "shape": "slab", "thickness": "50 mm"},
                 %s,
                 "stages": [{"stage": "bath", "from": "2031-05-06T08:00", "to": "2031-05-06T21:20", "setPoint": "60 °C"},
                            {"stage": "chill", "from": "2031-05-06T21:20", "to": "2031-05-06T23:00"}],
                 "roles": {"operator": "cook"}}
                """
                        .formatted(logs);
        return SourceFile.of("cook.json", text.getBytes(StandardCharsets.UTF_8));
    }

    private static final String INSTRUMENT = "\"instrument\": {\"id\": \"A\", \"tolerance\": \"0.5 °C\"}";
    private static final String ONE = INSTRUMENT + ", \"columns\": {\"core\": [\"Core\"], \"bath\": [\"Bath\"]}";

    private static String two(String clock) {
        return "\"logs\": [{\"file\": \"first.csv\", " + INSTRUMENT
                + ", \"columns\": {\"core\": [\"Core\"], \"bath\": [\"Bath\"]}}, {\"file\": \"second.csv\", "
                + INSTRUMENT
                + clock
                + ", \"columns\": {\"core\": [{\"column\": \"T1\", \"probe\": \"Core\"}],"
                + " \"bath\": [{\"column\": \"T2\", \"probe\": \"Bath\"}]}}]";
    }

    @Test
    void fiveLinesLeadToAVerdict() throws Exception {
        Verification cook = Verification.of(List.of(whole()), record(ONE), RULES);
        assertThat(cook.assessment().check("lethality").orElseThrow().verdict()).isEqualTo(Verdict.MET);
        assertThat(cook.logFiles()).containsExactly(whole());
        assertThat(cook.recordFile()).isEqualTo(record(ONE));
        assertThat(cook.log()).isSameAs(cook.logs().logs().get(0));
        assertThat(Verification.zoneDataVersion()).matches("20\\d\\d[a-z].*");
    }

    @ParameterizedTest(name = "cut at minute {0}, clock {1} min ahead")
    @CsvSource({"40,0", "300,0", "300,7", "500,-95", "799,7", "850,1440"})
    void aLogCutInTwoIsTheSameCook(int cut, int ahead) throws Exception {
        String clock = ahead >= 0
                ? ", \"clock\": {\"ahead\": \"" + ahead + " min\"}"
                : ", \"clock\": {\"behind\": \"" + -ahead + " min\"}";
        List<SourceFile> halves = List.of(
                log("second.csv", "when;T1 (C);T2 (C)", cut + 1, MINUTES, ahead, ';'),
                log("first.csv", "time,Core °C,Bath °C", 0, cut, 0, ','));
        Assessment inTwo = Verification.of(halves, record(two(clock)), RULES).assessment();
        Assessment inOne = Verification.of(List.of(whole()), record(ONE), RULES).assessment();

        assertThat(inTwo.verdict()).isEqualTo(inOne.verdict());
        assertThat(inTwo.checks())
                .extracting(Check::id)
                .containsExactlyElementsOf(
                        inOne.checks().stream().map(Check::id).toList());
        for (Check check : inOne.checks()) {
            Check other = inTwo.check(check.id()).orElseThrow();
            assertThat(other.verdict()).as(check.id()).isEqualTo(check.verdict());
            assertThat(other.measured()).as(check.id()).isEqualTo(check.measured());
        }
    }

    @Test
    void anUncertainClockWidensAndNeverNarrows() throws Exception {
        List<SourceFile> halves = List.of(
                log("first.csv", "time,Core °C,Bath °C", 0, 400, 0, ','),
                log("second.csv", "when;T1 (C);T2 (C)", 405, MINUTES, 7, ';'));
        String exact = ", \"clock\": {\"ahead\": \"7 min\"}";
        String uncertain = ", \"clock\": {\"ahead\": \"7 min\", \"within\": \"3 min\"}";
        Assessment sure = Verification.of(halves, record(two(exact)), RULES).assessment();
        Assessment unsure =
                Verification.of(halves, record(two(uncertain)), RULES).assessment();
        assertThat(unsure.verdict().compareTo(sure.verdict())).isGreaterThanOrEqualTo(0);
        boolean wider = false;
        for (Check check : sure.checks()) {
            Optional<Bounded> narrow = check.measured();
            Optional<Bounded> wide = unsure.check(check.id()).orElseThrow().measured();
            if (narrow.isPresent() && wide.isPresent()) {
                double slack = 1e-9;
                assertThat(Math.min(wide.get().worst(), wide.get().best()))
                        .as(check.id())
                        .isLessThanOrEqualTo(
                                Math.min(narrow.get().worst(), narrow.get().best()) + slack);
                assertThat(Math.max(wide.get().worst(), wide.get().best()))
                        .as(check.id())
                        .isGreaterThanOrEqualTo(
                                Math.max(narrow.get().worst(), narrow.get().best()) - slack);
                wider |= Math.abs(wide.get().worst() - narrow.get().worst()) > 0.5;
            }
        }
        assertThat(wider).as("three minutes of clock error reach some figure").isTrue();
    }

    @Test
    void aProbeThatWasMovedIsNotReadAsTheBathWhileItHungInTheAir() throws Exception {
        String moved = INSTRUMENT
                + ", \"columns\": {\"core\": [\"Core\"], \"air\": [{\"column\": \"Bath\", \"to\": \"2031-05-06T12:00\"}],"
                + " \"bath\": [{\"column\": \"Bath\", \"from\": \"2031-05-06T12:10\"}]}";
        Verification cook = Verification.of(List.of(whole()), record(moved), RULES);
        int air = cook.log().channelNamed("Bath (air)").orElseThrow();
        int bath = cook.log().channelNamed("Bath (bath)").orElseThrow();
        assertThat(cook.log().trace(air).lastMillis()).isEqualTo(START + 240 * 60_000);
        assertThat(cook.log().trace(bath).firstMillis()).isEqualTo(START + 250 * 60_000);
        assertThat(cook.log().celsius(bath, 200)).isNaN();
    }

    @Test
    void instrumentsOnOneCoreAreHeldAgainstOneAnother() throws Exception {
        String text = new String(whole().bytes(), StandardCharsets.UTF_8).replace("60.00,", "57.50,");
        SourceFile low = SourceFile.of("second.csv", text.getBytes(StandardCharsets.UTF_8));
        SourceFile first = SourceFile.of("first.csv", whole().bytes());
        String both = two("").replace("T1", "Core").replace("T2", "Bath");
        Assessment assessment =
                Verification.of(List.of(first, low), record(both), RULES).assessment();
        assertThat(assessment.cautions()).anySatisfy(caution -> {
            assertThat(caution.id()).isEqualTo("instruments-disagree");
            assertThat(caution.text()).contains("4.5 °F");
        });
    }

    @Test
    void answersAreWrittenIntoTheRecord() throws Exception {
        Answers answers = new Answers(Optional.of("us-fsis-2021"), Optional.of("C"), Optional.empty());
        SourceFile open = SourceFile.of(
                "cook.csv",
                new String(whole().bytes(), StandardCharsets.UTF_8)
                        .replace(" °C", "")
                        .getBytes(StandardCharsets.UTF_8));
        Verification cook = Verification.of(List.of(open), record(ONE), answers, RULES);
        assertThat(cook.assessment().authority().id()).isEqualTo("us-fsis-2021");
        Verification again = Verification.of(cook.logFiles(), cook.recordFile(), RULES);
        assertThat(again.assessment().verdict()).isEqualTo(cook.assessment().verdict());
    }

    @Test
    void whatDoesNotGoTogetherIsRefusedWithARemedy() {
        refused(
                List.of(whole()),
                record(ONE.replace("[\"Core\"]", "[\"Cor\"]")),
                "Did you mean 'Core'?",
                "/columns/core");
        refused(
                List.of(whole()),
                record(ONE.replace("[\"Bath\"]", "[\"Bth\"]")),
                "Did you mean 'Bath'?",
                "/columns/bath");
        refused(List.of(whole(), whole()), record(ONE), "under \"logs\"", "2 logs");
        refused(List.of(), record(ONE), "Hand the log in", "0 logs");
        refused(List.of(whole()), record(two("")), "Hand it in", "/logs/0/file");
    }

    private static void refused(List<SourceFile> logs, SourceFile record, String... says) {
        assertThatThrownBy(() -> Verification.of(logs, record, RULES))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContainingAll(says);
    }

    @Test
    void theToleranceIsTheInstrumentsOwn() throws Exception {
        String mixed =
                two("").replaceFirst("0.5 °C", "1.0 °C").replace("T1", "Core").replace("T2", "Bath");
        Verification cook = Verification.of(
                List.of(
                        log("first.csv", "time,Core °C,Bath °C", 0, 300, 0, ','),
                        log("second.csv", "time,Core °C,Bath °C", 301, MINUTES, 0, ',')),
                record(mixed),
                RULES);
        var core = cook.logs().core().get(0);
        assertThat(core.toleranceCelsius(0)).isCloseTo(1.0, within(1e-12));
        assertThat(core.toleranceCelsius(core.size() - 1)).isCloseTo(0.5, within(1e-12));
        assertThat(core.between(START + 400 * 60_000, START + 500 * 60_000).toleranceCelsius())
                .isEqualTo(0.5);
    }

    @Test
    void aUnitThatOnlyTheOtherScaleExplainsIsRefused() {
        StringBuilder fahrenheit = new StringBuilder("time,Core,Bath\n");
        StringBuilder tenths = new StringBuilder("time,Core,Bath\n");
        for (int minute = 0; minute <= MINUTES; minute++) {
            Instant time = Instant.ofEpochMilli(START + minute * 60_000L);
            fahrenheit.append("%s,%.1f,%.1f%n".formatted(time, core(minute) * 1.8 + 32, bath(minute) * 1.8 + 32));
            tenths.append("%s,%.0f,%.0f%n".formatted(time, core(minute) * 10, bath(minute) * 10));
        }
        String celsius = ONE + ", \"log\": {\"unit\": \"C\"}";
        refused(List.of(file(fahrenheit)), record(celsius), "if they are °F", "Correct the unit");
        refused(List.of(file(tenths)), record(celsius), "if they are tenths", "Correct the unit");
        refused(
                List.of(file(
                        new StringBuilder(new String(whole().bytes(), StandardCharsets.UTF_8).replace(" °C", "")))),
                record(ONE + ", \"log\": {\"unit\": \"F\"}"),
                "if they are °C");
    }

    private static SourceFile file(StringBuilder text) {
        return SourceFile.of("cook.csv", text.toString().getBytes(StandardCharsets.UTF_8));
    }
}
