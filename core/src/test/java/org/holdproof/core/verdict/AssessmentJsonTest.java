package org.holdproof.core.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.LongStream;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.ColumnRoles;
import org.holdproof.core.batch.Instrument;
import org.holdproof.core.batch.Kitchen;
import org.holdproof.core.batch.Product;
import org.holdproof.core.batch.Roles;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.Source;
import org.holdproof.core.rules.ThermalDeath;
import org.holdproof.core.verdict.AssessmentJson.Figures;
import org.holdproof.core.verdict.AssessmentJson.PrintedCheck;
import org.holdproof.core.verdict.AssessmentJson.PrintedInterval;
import org.holdproof.core.verdict.AssessmentJson.UnreadableAssessmentException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every batch here is invented for the tests. */
class AssessmentJsonTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final JsonSchema SCHEMA = schema();
    private static final long START = Instant.parse("2031-04-12T19:00:00Z").toEpochMilli();

    private static JsonSchema schema() {
        try (InputStream in = Objects.requireNonNull(
                AssessmentJson.class.getResourceAsStream("/org/holdproof/schema/assessment.schema.json"))) {
            return JsonSchemaFactory.getInstance(VersionFlag.V202012).getSchema(JSON.readTree(in));
        } catch (IOException e) {
            throw new ExceptionInInitializerError(e);
        }
    }

    private static JsonNode tree(byte[] json) throws IOException {
        return JSON.readTree(json);
    }

    private static Assessment sample() {
        return assessment(
                List.of(
                        cooling(new Bounded(Double.POSITIVE_INFINITY, 118.25, 117.123456789), Verdict.NOT_PROVEN),
                        Check.of("coverage", "Stages covered")
                                .required("every stage logged from end to end")
                                .verdict(Verdict.MET)
                                .comparison(Comparison.AT_LEAST)
                                .why("Every stage is covered.")
                                .build()),
                List.of(new Caution("low-end", "Low end of a table."), new Caution("low-end", "The other probe too.")));
    }

    private static Check cooling(Bounded measured, Verdict verdict) {
        return Check.of("cooling.1", "Cooled through the first stage")
                .required("from 135 °F to 70 °F within 2 h")
                .citation(new Citation(
                        new Source("food-code", "Food Code", "FDA", "2022", "2022", "", "", Source.How.READ),
                        "Food Code 2022",
                        "3-501.14",
                        Source.How.MEMORY,
                        ""))
                .verdict(verdict)
                .measured(measured)
                .limit(120)
                .comparison(Comparison.AT_MOST)
                .unit("min")
                .why("The log begins below 135 °F.")
                .next("Log from the end of the cook.")
                .channel("Core 1")
                .window(new Span(START, START + 7_095_250))
                .build();
    }

    private static Assessment assessment(List<Check> checks, List<Caution> cautions) {
        return new Assessment(
                Verdict.NOT_PROVEN,
                new BatchRecord(
                        "T-0001",
                        new Kitchen("Test kitchen", "", ZoneId.of("America/Chicago")),
                        "us-food-code-2022",
                        new Product(
                                "Räucherstück",
                                Product.Species.OTHER_POULTRY,
                                "",
                                Product.Form.NON_INTACT,
                                OptionalDouble.empty(),
                                Product.Shape.ROAST,
                                OptionalDouble.empty(),
                                OptionalDouble.empty(),
                                OptionalDouble.empty(),
                                OptionalDouble.empty()),
                        new Instrument("P-7", 0.5, Optional.empty(), OptionalDouble.empty()),
                        new ColumnRoles(List.of("Core 1"), List.of(), List.of()),
                        LogSettings.NONE,
                        List.of(new Stage(
                                Stage.Kind.CHILL,
                                Instant.ofEpochMilli(START),
                                Optional.empty(),
                                OptionalDouble.empty())),
                        new Roles("cook", "")),
                AuthorityProfile.of(
                                "us-food-code-2022",
                                "US Food Code 2022",
                                List.of(TemperatureUnit.FAHRENHEIT),
                                AuthorityProfile.Paper.LETTER)
                        .build(),
                "edition-1",
                new Span(START, START + 36_000_000),
                checks,
                cautions,
                Optional.empty(),
                List.of(new LethalityMargin(
                        new ThermalDeath(
                                "test-kinetics",
                                "Invented kinetics",
                                "an organism",
                                2.5,
                                60,
                                6,
                                50,
                                75,
                                OptionalDouble.empty(),
                                new Citation(
                                        new Source("t", "t", "t", "", "", "", "", Source.How.DERIVED),
                                        "A test",
                                        "",
                                        Source.How.DERIVED,
                                        "")),
                        "Core 1",
                        new Bounded(6.25, 7.5, 9))),
                Optional.empty(),
                new RecordFacts(
                        601,
                        1,
                        5,
                        List.of(new RecordFacts.Gap("Core 1", new Span(START + 60_000, START + 660_000))),
                        -1.0 / 3,
                        0.5));
    }

    @Test
    void hasTheMembersOfItsSchemaInAFixedOrder() {
        assertThat(new String(AssessmentJson.write(sample()), StandardCharsets.UTF_8))
                .isEqualTo(
                        """
                {
                  "verdict": "NOT PROVEN",
                  "batch": {
                    "id": "T-0001",
                    "kitchen": "Test kitchen",
                    "place": "",
                    "timeZone": "America/Chicago",
                    "product": "Räucherstück",
                    "species": "other poultry",
                    "cut": "",
                    "form": "non-intact"
                  },
                  "authority": {
                    "id": "us-food-code-2022",
                    "title": "US Food Code 2022"
                  },
                  "tables": "edition-1",
                  "from": "2031-04-12T14:00:00-05:00",
                  "to": "2031-04-13T00:00:00-05:00",
                  "checks": [
                    {
                      "id": "cooling.1",
                      "title": "Cooled through the first stage",
                      "rule": "from 135 °F to 70 °F within 2 h",
                      "source": "Food Code 2022, 3-501.14 (from memory, unconfirmed)",
                      "how": "memory",
                      "verdict": "NOT PROVEN",
                      "worst": null,
                      "nominal": 118.25,
                      "best": 117.123457,
                      "limit": 120,
                      "comparison": "at most",
                      "unit": "min",
                      "why": "The log begins below 135 °F.",
                      "next": "Log from the end of the cook.",
                      "channel": "Core 1",
                      "from": "2031-04-12T14:00:00-05:00",
                      "to": "2031-04-12T15:58:15.25-05:00"
                    },
                    {
                      "id": "coverage",
                      "title": "Stages covered",
                      "rule": "every stage logged from end to end",
                      "source": "",
                      "how": "",
                      "verdict": "MET",
                      "comparison": "at least",
                      "unit": "",
                      "why": "Every stage is covered.",
                      "next": "",
                      "channel": ""
                    }
                  ],
                  "integrated": [
                    {
                      "id": "test-kinetics",
                      "title": "Invented kinetics",
                      "organism": "an organism",
                      "dMinutes": 2.5,
                      "referenceCelsius": 60,
                      "zCelsius": 6,
                      "source": "A test",
                      "how": "derived",
                      "worst": 6.25,
                      "nominal": 7.5,
                      "best": 9,
                      "unit": "log10",
                      "channel": "Core 1"
                    }
                  ],
                  "cautions": [
                    {
                      "id": "low-end",
                      "text": "Low end of a table."
                    },
                    {
                      "id": "low-end",
                      "text": "The other probe too."
                    }
                  ],
                  "notJudged": [],
                  "record": {
                    "rows": 601,
                    "medianMinutes": 1,
                    "gapLimitMinutes": 5,
                    "offsetCelsius": -0.333333,
                    "toleranceCelsius": 0.5,
                    "gaps": [
                      {
                        "channel": "Core 1",
                        "from": "2031-04-12T14:01:00-05:00",
                        "to": "2031-04-12T14:11:00-05:00",
                        "minutes": 10
                      }
                    ]
                  },
                  "safety": "This is decision support. The local authority's code and the approved HACCP plan govern. \
                Food judged NOT PROVEN or NOT MET is not served on the word of this program."
                }
                """);
    }

    @Test
    void readsItsFiguresBack() throws Exception {
        Figures figures = AssessmentJson.read(AssessmentJson.write(sample()));
        assertThat(figures.verdict()).isEqualTo("NOT PROVEN");
        assertThat(figures.checks())
                .containsExactly(
                        Map.entry(
                                "cooling.1",
                                new PrintedCheck(
                                        "NOT PROVEN",
                                        Optional.of(new PrintedInterval(
                                                OptionalDouble.empty(),
                                                OptionalDouble.of(118.25),
                                                OptionalDouble.of(117.123457))),
                                        OptionalDouble.of(120))),
                        Map.entry("coverage", new PrintedCheck("MET", Optional.empty(), OptionalDouble.empty())));
    }

    @Test
    void aCheckMadeTwiceIsReadTwice() throws Exception {
        Check cooling = cooling(new Bounded(130, 125, 121), Verdict.NOT_MET);
        Assessment twice = assessment(List.of(cooling, cooling), List.of());
        assertThat(AssessmentJson.read(AssessmentJson.write(twice)).checks())
                .containsOnlyKeys("cooling.1", "cooling.1 (2)");
        assertThat(AssessmentJson.differences(AssessmentJson.write(assessment(List.of(cooling), List.of())), twice))
                .contains("check cooling.1 (2) verdict: printed nothing, computed again 'NOT MET'");
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void everyAssessmentKeepsItsSchemaAndAgreesWithItself(long seed) throws Exception {
        Assessment assessment = random(new Random(seed));
        byte[] json = AssessmentJson.write(assessment);
        assertThat(SCHEMA.validate(tree(json))).isEmpty();
        assertThat(AssessmentJson.write(assessment)).isEqualTo(json);
        assertThat(AssessmentJson.differences(json, assessment)).isEmpty();
        Figures figures = AssessmentJson.read(json);
        for (Check check : assessment.checks()) {
            PrintedCheck printed = Objects.requireNonNull(figures.checks().get(check.id()));
            assertThat(printed.verdict()).isEqualTo(check.verdict().words());
            assertThat(printed.measured().isPresent())
                    .isEqualTo(check.measured().isPresent());
            if (check.measured().isPresent()) {
                assertRounded(
                        printed.measured().get().worst(), check.measured().get().worst());
                assertRounded(
                        printed.measured().get().nominal(),
                        check.measured().get().nominal());
                assertRounded(
                        printed.measured().get().best(), check.measured().get().best());
            }
            assertThat(printed.limit().isPresent()).isEqualTo(check.limit().isPresent());
        }
    }

    private static void assertRounded(OptionalDouble printed, double figure) {
        if (Double.isInfinite(figure)) {
            assertThat(printed).isEmpty();
        } else {
            assertThat(printed.orElseThrow()).isCloseTo(figure, within(5e-7 + 1e-15 * Math.abs(figure)));
        }
    }

    static LongStream seeds() {
        return LongStream.range(0, 300);
    }

    private static <T> T pick(Random random, T[] values) {
        return values[random.nextInt(values.length)];
    }

    private static Assessment random(Random random) {
        List<Check> checks = new ArrayList<>();
        int count = random.nextInt(6);
        for (int i = 0; i < count; i++) {
            double scale = Math.pow(10, random.nextInt(16) - 6);
            double nominal = random.nextGaussian() * scale;
            double worst = random.nextInt(4) == 0 ? Double.NEGATIVE_INFINITY : nominal - random.nextDouble() * scale;
            double best = random.nextInt(4) == 0 ? Double.POSITIVE_INFINITY : nominal + random.nextDouble() * scale;
            Bounded measured = new Bounded(worst, nominal, best);
            checks.add(Check.of("check." + i, "Title \"quoted\" \\ \n \u0000")
                    .required("rule")
                    .verdict(pick(random, Verdict.values()))
                    .measured(random.nextBoolean() ? Optional.of(measured) : Optional.empty())
                    .limit(random.nextBoolean() ? OptionalDouble.of(nominal) : OptionalDouble.empty())
                    .comparison(pick(random, Comparison.values()))
                    .unit("log10")
                    .why("why")
                    .next("next")
                    .channel("half a character \uD83D")
                    .window(
                            random.nextBoolean()
                                    ? Optional.of(new Span(START, START + random.nextInt(1_000_000)))
                                    : Optional.empty())
                    .build());
        }
        return assessment(checks, List.of());
    }

    @ParameterizedTest(name = "{0} printed as {1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
        /verdict               | "MET"                       | verdict: printed 'MET', computed again 'NOT PROVEN'
        /batch/id              | "T-0002"                    | batch id: printed 'T-0002', computed again 'T-0001'
        /authority/id          | "uk"                        | authority id: printed 'uk', computed again 'us-food-code-2022'
        /tables                | "edition-2"                 | tables: printed 'edition-2', computed again 'edition-1'
        /checks/0/verdict      | "MET"                       | check cooling.1 verdict: printed 'MET', computed again 'NOT PROVEN'
        /checks/0/worst        | 119                         | check cooling.1 worst: printed 119, computed again no bound
        /checks/0/nominal      | 118.249                     | check cooling.1 nominal: printed 118.249, computed again 118.25
        /checks/0/best         | null                        | check cooling.1 best: printed no bound, computed again 117.123457
        /checks/0/best         | 1e400                       | check cooling.1 best: printed 1e400, computed again 117.123457
        /checks/0/limit        | 240                         | check cooling.1 limit: printed 240, computed again 120
        /checks/0/comparison   | "below"                     | check cooling.1 comparison: printed 'below', computed again 'at most'
        /checks/0/unit         | "h"                         | check cooling.1 unit: printed 'h', computed again 'min'
        /checks/0/margin       | 1                           | check cooling.1 margin: printed 1, computed again nothing
        /checks/0/from         | "2031-04-12T15:00:00-05:00" | check cooling.1 from: printed '2031-04-12T15:00:00-05:00', computed again '2031-04-12T14:00:00-05:00'
        /checks/1/verdict      | "NOT MET"                   | check coverage verdict: printed 'NOT MET', computed again 'MET'
        /integrated/0/worst    | 6.5                         | integrated test-kinetics worst: printed 6.5, computed again 6.25
        /integrated/0/zCelsius | 6.1                         | integrated test-kinetics zCelsius: printed 6.1, computed again 6
        /record/rows           | 600                         | record rows: printed 600, computed again 601
        /record/gaps/0/channel | "Core 2"                    | record gaps 0 channel: printed 'Core 2', computed again 'Core 1'
        """)
    void aChangedFigureIsNamed(String pointer, String value, String difference) throws Exception {
        String written = new String(AssessmentJson.write(sample()), StandardCharsets.UTF_8);
        ObjectNode tree = (ObjectNode) JSON.readTree(written);
        JsonPointer place = JsonPointer.compile(pointer);
        ((ObjectNode) tree.at(place.head())).put(place.last().getMatchingProperty(), "@");
        byte[] changed = tree.toString().replace("\"@\"", value).getBytes(StandardCharsets.UTF_8);
        assertThat(AssessmentJson.differences(changed, sample())).containsExactly(difference);
    }

    @Test
    void aDroppedCheckAndADroppedCautionAreNamed() throws Exception {
        ObjectNode tree = (ObjectNode) tree(AssessmentJson.write(sample()));
        ((ArrayNode) tree.get("checks")).remove(1);
        ((ArrayNode) tree.get("cautions")).remove(1);
        assertThat(AssessmentJson.differences(tree.toString().getBytes(StandardCharsets.UTF_8), sample()))
                .contains(
                        "check coverage verdict: printed nothing, computed again 'MET'",
                        "caution low-end (2) id: printed nothing, computed again 'low-end'");
    }

    @Test
    void wordingAndTheLastDecimalMayDiffer() {
        String written = new String(AssessmentJson.write(sample()), StandardCharsets.UTF_8);
        String other =
                written.replace("Log from the end", "Please log from the end").replace("117.123457", "117.123456");
        assertThat(other).isNotEqualTo(written);
        assertThat(AssessmentJson.differences(other.getBytes(StandardCharsets.UTF_8), sample()))
                .isEmpty();
        assertThat(AssessmentJson.differences(
                        written.replace("117.123457", "117.123454").getBytes(StandardCharsets.UTF_8), sample()))
                .hasSize(1);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "[]",
                "{",
                "{}",
                "{\"verdict\": \"MET\"} {}",
                "{\"verdict\": \"MET\", \"verdict\": \"MET\"}",
                "{\"verdict\": 1}",
                "{\"verdict\": true}",
                "{\"verdict\": \"MET\", \"checks\": [{\"id\": \"a\"}]}",
                "{\"verdict\": \"MET\", \"checks\": [{\"id\": \"a\", \"verdict\": \"MET\", \"worst\": 1}]}",
                "{\"verdict\": \"MET\", \"checks\": [{\"id\": \"a\", \"verdict\": \"MET\", \"limit\": 1e400}]}",
                "{\"verdict\": \"MET\", \"checks\": [{\"id\": \"a\", \"verdict\": \"MET\", \"limit\": \"1\"}]}",
                "{\"verdict\": \"MET\", \"checks\": [{\"id\": \"a\", \"verdict\": \"MET\", \"limit\": NaN}]}"
            })
    void whatIsNoAssessmentIsRefusedInWords(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        assertThat(catchThrowableOfType(UnreadableAssessmentException.class, () -> AssessmentJson.read(bytes)))
                .hasMessageStartingWith("the assessment ");
        assertThat(AssessmentJson.differences(bytes, sample())).isNotEmpty();
    }

    @ParameterizedTest(name = "{0} = {1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
        /verdict            | "PASSED"
        /checks/0/verdict   | "not met"
        /checks/0/worst     | "118"
        /checks/0/how       | "guessed"
        /checks/0/margin    | "1"
        /checks/0/colour    | "red"
        /checks/1/worst     | 1
        /checks/1/margin    | 1
        /checks/1/from      | "2031-04-12T14:00:00-05:00"
        /from               | "2031-04-12T14:00:00"
        /record/rows        | 1.5
        /safety             | ""
        """)
    void theSchemaRefusesWhatIsNeverWritten(String pointer, String value) throws Exception {
        JsonNode tree = tree(AssessmentJson.write(sample()));
        JsonPointer place = JsonPointer.compile(pointer);
        ((ObjectNode) tree.at(place.head())).set(place.last().getMatchingProperty(), JSON.readTree(value));
        assertThat(SCHEMA.validate(tree)).isNotEmpty();
    }
}
