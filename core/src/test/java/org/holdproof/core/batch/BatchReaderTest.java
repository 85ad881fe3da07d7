package org.holdproof.core.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.LongStream;
import org.holdproof.core.batch.Instrument.InstrumentCheck;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.DateOrder;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.quantity.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class BatchReaderTest {

    @Test
    void readsEveryMember() throws Exception {
        assertThat(BatchReader.parse("batch.json", SampleBatch.bytes()))
                .isEqualTo(new BatchRecord(
                                "T-0001",
                                new Kitchen("Test kitchen", "Nowhere", ZoneId.of("America/Chicago")),
                                "us-food-code-2022",
                                new Product(
                                        "Brisket",
                                        Product.Species.BEEF,
                                        "brisket flat",
                                        Product.Form.INTACT,
                                        OptionalDouble.of(12),
                                        Product.Shape.SLAB,
                                        OptionalDouble.of(65),
                                        OptionalDouble.of(4.2),
                                        OptionalDouble.of(120),
                                        OptionalDouble.of(3.5)),
                                new Instrument(
                                        "P-7",
                                        0.5,
                                        Optional.of(new InstrumentCheck(
                                                LocalDate.of(2031, 4, 1),
                                                Instrument.Method.BOILING_POINT,
                                                99.4,
                                                OptionalDouble.empty(),
                                                OptionalDouble.of(250))),
                                        OptionalDouble.of(30)),
                                new ColumnRoles(List.of("Core 1", "Core 2"), List.of("Bath"), List.of("Smoker")),
                                new LogSettings(
                                        Optional.of(TemperatureUnit.CELSIUS),
                                        Optional.of(DateOrder.DAY_MONTH_YEAR),
                                        Optional.of(ZoneId.of("UTC")),
                                        Optional.of(Instant.parse("2031-04-12T19:00:00Z"))),
                                List.of(
                                        stage(Stage.Kind.SMOKE, "2031-04-12T19:00:00Z", "2031-04-13T01:00:00Z", 110),
                                        moment(Stage.Kind.BAG, "2031-04-13T01:10:00Z"),
                                        stage(Stage.Kind.BATH, "2031-04-13T01:15:00Z", "2031-04-13T15:00:00Z", 62),
                                        moment(Stage.Kind.SERVE, "2031-04-13T15:00:00Z"),
                                        new Stage(
                                                Stage.Kind.CHILL,
                                                Instant.parse("2031-04-13T15:05:30Z"),
                                                Optional.of(Instant.parse("2031-04-13T15:30:00Z")),
                                                OptionalDouble.empty()),
                                        new Stage(
                                                Stage.Kind.STORE,
                                                Instant.parse("2031-04-13T16:00:00Z"),
                                                Optional.empty(),
                                                OptionalDouble.of(3))),
                                new Roles("pit cook", "kitchen manager"))
                        .withOutcome(new Outcome(
                                Optional.of(new WeighIns(
                                        4.2, OptionalDouble.of(3.7), OptionalDouble.of(2.8), OptionalDouble.of(2.6))),
                                Optional.of(Bite.TENDER))));
    }

    private static Stage stage(Stage.Kind kind, String from, String to, double celsius) {
        return new Stage(kind, Instant.parse(from), Optional.of(Instant.parse(to)), OptionalDouble.of(celsius));
    }

    private static Stage moment(Stage.Kind kind, String at) {
        return new Stage(kind, Instant.parse(at), Optional.empty(), OptionalDouble.empty());
    }

    @Test
    void whatIsLeftOutIsEmptyAndNeverZero() throws Exception {
        BatchRecord record = SampleBatch.read(
                """
            {"batch": "1", "authority": "a", "kitchen": {"name": "k", "timeZone": "Europe/Dublin"},
             "product": {"name": "p", "species": "other poultry", "form": "non-intact", "shape": "roast"},
             "instrument": {"id": "i", "tolerance": "1 °F"}, "columns": {"core": ["T"]},
             "stages": [{"stage": "hot hold", "from": "2031-01-01T00:00"}], "roles": {"operator": "o"}}""");
        assertThat(record.product())
                .isEqualTo(new Product(
                        "p",
                        Product.Species.OTHER_POULTRY,
                        "",
                        Product.Form.NON_INTACT,
                        OptionalDouble.empty(),
                        Product.Shape.ROAST,
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty()));
        assertThat(record.kitchen().place()).isEmpty();
        assertThat(record.instrument().lastCheck()).isEmpty();
        assertThat(record.instrument().checkEveryDays()).isEmpty();
        assertThat(record.columns()).isEqualTo(new ColumnRoles(List.of("T"), List.of(), List.of()));
        assertThat(record.log())
                .isEqualTo(new LogSettings(
                        Optional.empty(), Optional.empty(), Optional.of(ZoneId.of("Europe/Dublin")), Optional.empty()));
        assertThat(record.stages())
                .containsExactly(new Stage(
                        Stage.Kind.HOT_HOLD,
                        Instant.parse("2031-01-01T00:00:00Z"),
                        Optional.empty(),
                        OptionalDouble.empty()));
        assertThat(record.roles().reviewer()).isEmpty();
    }

    @ParameterizedTest(name = "{0} = {1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
        /product/thickness           | "65"             | /product/thickness           | Add the unit: mm, cm, m, in or
        /product/thickness           | 65               | /product/thickness           | found the bare number 65; expected a length with its unit
        /product/thickness           | 1e400            | /product/thickness           | found the bare number 1e400
        /product/thickness           | null             | /product/thickness           | found null
        /product/thickness           | "NaN"            | /product/thickness           | found 'NaN'
        /product/thickness           | "65,5 mm"        | /product/thickness           | Write a decimal point, not a comma
        /product/thickness           | "0.5 mm"         | /product/thickness           | from 1 mm to 500 mm. Check the figure and its unit
        /product/thickness           | "65 cm"          | /product/thickness           | from 1 mm to 500 mm
        /product/thickness           | "20 in"          | /product/thickness           | from 1 mm to 500 mm
        /product/fat                 | "61 %"           | /product/fat                 | from 0 % to 60 %
        /product/fat                 | "-1 %"           | /product/fat                 | from 0 % to 60 %
        /product/brine               | "28 %"           | /product/brine               | from 0 % to 27 %
        /product/nitrite             | "2001 ppm"       | /product/nitrite             | from 0 ppm to 2000 ppm
        /product/weight              | "501 kg"         | /product/weight              | from 1 g to 500 kg
        /product/species             | "pig"            | /product/species             | 'pork'
        /product/species             | "chiken"         | /product/species             | Did you mean 'chicken'?
        /product/form                | "ground"         | /product/form                | 'intact', 'non-intact', 'comminuted'
        /product/shape               | "brick"          | /product/shape               | 'slab', 'cylinder', 'sphere', 'roast'
        /product/name                | ""               | /product/name                | Write something between the quotes
        /product/name                | "a\\nb"          | /product/name                | leave out line breaks
        /product/name                | "a\\u202Eb"      | /product/name                | one line of text
        /product/name                | "a\\uD800b"      | /product/name                | one line of text
        /product/name                | null             | /product/name                | Leave the member out
        /product/thicknes            | "65 mm"          | /product/thicknes            | Did you mean 'thickness'?
        /product/a~1b~0c             | "65 mm"          | /product/a~1b~0c             | unknown member 'a/b~c'
        /kitchen                     | "home"           | /kitchen                     | an object with name, place, timeZone
        /kitchen/timeZone            | "America/Chicgo" | /kitchen/timeZone            | Did you mean 'America/Chicago'?
        /kitchen/timeZone            | "here"           | /kitchen/timeZone            | IANA
        /batch                       | 412              | /batch                       | Write it between quotes
        /colums                      | {}               | /colums                      | Did you mean 'columns'?
        /instrument/tolerance        | "5.1 °C"         | /instrument/tolerance        | from 0 °C to 5 °C
        /instrument/tolerance        | "-0.5 °C"        | /instrument/tolerance        | from 0 °C to 5 °C
        /instrument/checkEvery       | "0 d"            | /instrument/checkEvery       | from 1 d to 3660 d
        /instrument/lastCheck/method | "steam"          | /instrument/lastCheck/method | 'ice point', 'boiling point', 'comparison'
        /instrument/lastCheck/method | "ice point"      | /instrument/lastCheck/reading | ice melts at 0 °C
        /instrument/lastCheck/method | "comparison"     | /instrument/lastCheck/reference | Add the member 'reference'
        /instrument/lastCheck/reference | "99 °C"       | /instrument/lastCheck/reference | 'reference' only with 'comparison'
        /instrument/lastCheck/reading | "99 °F"         | /instrument/lastCheck/reading | from 60 °C to 120 °C
        /instrument/lastCheck/altitude | "6001 m"       | /instrument/lastCheck/altitude | from -430 m to 6000 m
        /instrument/lastCheck/altitude | "−431 m"       | /instrument/lastCheck/altitude | from -430 m to 6000 m
        /instrument/lastCheck/date   | "2031-02-29"     | /instrument/lastCheck/date   | Write year-month-day
        /instrument/lastCheck/date   | "1/4/2031"       | /instrument/lastCheck/date   | Write year-month-day
        /columns/core                | []               | /columns/core                | at least one column with a probe in the food
        /columns/core                | "Core 1"         | /columns/core                | Put it between [ and ]
        /columns/core/1              | 2                | /columns/core/1              | Write it between quotes
        /columns/core/1              | " core 1 "       | /columns/core/1              | named at /columns/core/0 already
        /columns/bath/0              | "Core 2"         | /columns/bath/0              | named at /columns/core/1 already
        /columns/air/0               | "bath"           | /columns/air/0               | named at /columns/bath/0 already
        /log/unit                    | "K"              | /log/unit                    | one of 'C', 'F'
        /log/dates                   | "dym"            | /log/dates                   | 'dmy', 'mdy', 'ymd'
        /stages                      | []               | /stages                      | Add the stages the food went through
        /stages/0/stage              | "smoked"         | /stages/0/stage              | Did you mean 'smoke'?
        /stages/0/stage              | "hot-hold"       | /stages/0/stage              | Did you mean 'hot hold'?
        /stages/0/to                 | "2031-04-12T14:00" | /stages/0/to               | an end after the beginning, '2031-04-12T14:00'
        /stages/0/to                 | "2031-04-12T02:00" | /stages/0/to               | past midnight the date is the next day's
        /stages/0/to                 | "2031-04-12T20:16" | /stages/2/from             | expected one stage to end before the next begins
        /stages/0/setPoint           | "401 °C"         | /stages/0/setPoint           | from -40 °C to 400 °C
        /stages/0/setPoint           | "-41 °C"         | /stages/0/setPoint           | from -40 °C to 400 °C
        /stages/0/at                 | "2031-04-12T14:00" | /stages/0/at               | 'at' in the stage 'smoke'
        /stages/1/to                 | "2031-04-12T20:11" | /stages/1/to               | for it is a moment
        /stages/1/setPoint           | "20 °C"          | /stages/1/setPoint           | for it is a moment
        /stages/1/at                 | "2031-04-12T13:00" | /stages/1/at               | after a 'smoke' that ran from 2031-04-12T14:00-05:00 to 2031-04-12T20:00-05:00
        /stages/1/at                 | "2031-04-12T20:20" | /stages/2/from             | after a 'bag' that was at 2031-04-12T20:20-05:00
        /stages/1/at                 | "12/04/2031 20:10" | /stages/1/at               | Write year-month-dayThour:minute
        /stages/1/at                 | "2031-04-12T24:10" | /stages/1/at               | Write year-month-dayThour:minute
        /stages/1/at                 | "0031-04-12T20:10" | /stages/1/at               | of the years 1970 to 2199
        /stages/1/at                 | "2031-04-12T20:10+19:00" | /stages/1/at         | with the offset
        /roles/operator              | "   "            | /roles/operator              | Write something
        """)
    void aWrongMemberIsNamedWithItsRemedy(String change, String value, String pointer, String words) {
        String written = SampleBatch.with(change, "\"@\"").toPrettyString().replace("\"@\"", value);
        UnreadableInputException fault = fault(written);
        assertThat(fault.place().pointer().orElse("")).isEqualTo(pointer);
        assertThat(fault).hasMessageContaining("batch.json, line ").hasMessageContaining(words);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/batch",
                "/authority",
                "/kitchen",
                "/kitchen/name",
                "/kitchen/timeZone",
                "/product",
                "/product/name",
                "/product/species",
                "/product/form",
                "/product/shape",
                "/instrument",
                "/instrument/id",
                "/instrument/tolerance",
                "/instrument/lastCheck/date",
                "/instrument/lastCheck/method",
                "/instrument/lastCheck/reading",
                "/instrument/lastCheck/altitude",
                "/columns",
                "/stages",
                "/stages/0/stage",
                "/stages/0/from",
                "/stages/1/at",
                "/roles",
                "/roles/operator"
            })
    void aMissingMemberIsNamed(String pointer) {
        UnreadableInputException fault = fault(SampleBatch.without(pointer).toString());
        assertThat(fault.place().pointer().orElse("")).isEqualTo(pointer);
        assertThat(fault.found()).isEqualTo("nothing");
        assertThat(fault.remedy())
                .isEqualTo("Add the member '" + pointer.substring(pointer.lastIndexOf('/') + 1) + "'.");
    }

    @Test
    void onlyTheLastSpellMayBeOpen() {
        UnreadableInputException fault =
                fault(SampleBatch.without("/stages/0/to").toString());
        assertThat(fault.place().pointer().orElse("")).isEqualTo("/stages/2/from");
        assertThat(fault)
                .hasMessageContaining("after a 'smoke' that ran from 2031-04-12T14:00-05:00 without an end")
                .hasMessageContaining("expected a stage without an end to be the last");
    }

    /**
     * The clocks of the United States go forward on the second Sunday of March at 2:00 and back on the first Sunday of
     * November at 2:00: 15 U.S.C. 260a (from memory, unconfirmed). 2031-03-09 and 2031-11-02 are such Sundays.
     */
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
        2031-11-02T01:30 | show twice | Add the offset: '2031-11-02T01:30-05:00' or '2031-11-02T01:30-06:00'.
        2031-03-09T02:30 | skip       | Add the offset the clock ran on: '2031-03-09T02:30-06:00' or '2031-03-09T02:30-05:00'.
        """)
    void aLocalTimeTheClockShowsTwiceOrSkipsNeedsItsOffset(String time, String words, String remedy)
            throws UnreadableInputException {
        String stages = "[{\"stage\": \"bath\", \"from\": \"%s\"}]";
        UnreadableInputException fault =
                fault(SampleBatch.with("/stages", stages.formatted(time)).toString());
        assertThat(fault.place().pointer().orElse("")).isEqualTo("/stages/0/from");
        assertThat(fault.found()).contains(words);
        assertThat(fault.remedy()).isEqualTo(remedy);
        assertThat(SampleBatch.read(SampleBatch.with("/stages", stages.formatted(time + "-06:00")))
                        .stages()
                        .get(0)
                        .from())
                .isEqualTo(Instant.parse(time + ":00Z").plusSeconds(6 * 3600));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "2031-04-12T14:00, 2031-04-12T19:00:00Z",
        "2031-04-12T14:00:05, 2031-04-12T19:00:05Z",
        "2031-04-12T14:00:05.5, 2031-04-12T19:00:05.500Z",
        "2031-04-12T14:00:05.250, 2031-04-12T19:00:05.250Z",
        "2031-04-12T14:00Z, 2031-04-12T14:00:00Z",
        "2031-04-12T14:00+05:30, 2031-04-12T08:30:00Z"
    })
    void readsAnInstant(String text, Instant instant) throws Exception {
        assertThat(SampleBatch.read(SampleBatch.with(
                                "/stages", "[{\"stage\": \"bath\", \"from\": \"%s\"}]".formatted(text)))
                        .stages()
                        .get(0)
                        .from())
                .isEqualTo(instant);
    }

    @ParameterizedTest(name = "{1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
        {"batch": "1", "batch": "2"}          | 1 | 16 | /batch | 'batch' a second time
        {"batch": "1"} {}                     | 1 | 16 |        | more after the end of the batch record
        {"batch": "1"} x                      | 1 | 16 |        | a slip in the JSON
        {"batch": NaN}                        | 1 | 14 |        | a slip in the JSON
        {"batch": "1",}                       | 1 | 15 |        | a slip in the JSON
        {"batch": "1" // the id               | 1 | 15 |        | a slip in the JSON
        {'batch': "1"}                        | 1 | 2  |        | a slip in the JSON
        {"batch": 01}                         | 1 | 12 |        | a slip in the JSON
        {"batch": "1                          | 1 | 13 |        | the end of the file inside the batch record
        {"batch":                             | 1 | 10 |        | the end of the file inside the batch record
        time,core                             | 1 | 1  |        | text that is not JSON
        [1]                                   | 1 | 1  |        | a list
        `"batch"`                             | 1 | 1  |        | 'batch'
        ``                                    | 0 | 0  |        | nothing in it
        [[[[[[[[[[[[[[[[[[                    | 0 | 0  |        | deeper or longer than any batch record
        """)
    void brokenJsonIsPlaced(String text, int line, int column, String pointer, String found) {
        UnreadableInputException fault = fault(text);
        assertThat(fault.found()).contains(found);
        assertThat(fault.place().pointer().orElse("")).isEqualTo(pointer == null ? "" : pointer);
        assertThat(fault.place().line().orElse(0)).isEqualTo(line);
        assertThat(fault.place().character().orElse(0)).isEqualTo(column);
    }

    @Test
    void columnsAreCountedInCharacters() {
        UnreadableInputException fault = fault("{\n  \"batch\": \"Räucher°\", \"batch\": 1}");
        assertThat(fault.place().line().orElse(0)).isEqualTo(2);
        assertThat(fault.place().character().orElse(0)).isEqualTo(24);
    }

    @Test
    void aByteOrderMarkIsTolerated() throws Exception {
        assertThat(SampleBatch.read("\uFEFF" + SampleBatch.text())).isEqualTo(SampleBatch.read(SampleBatch.text()));
    }

    @ParameterizedTest
    @CsvSource({"UTF-16, UTF-16 text", "ISO-8859-1, bytes that are not UTF-8 text"})
    void anotherEncodingIsRefused(String charset, String found) {
        byte[] bytes = SampleBatch.text().getBytes(Charset.forName(charset));
        UnreadableInputException fault =
                catchThrowableOfType(UnreadableInputException.class, () -> BatchReader.parse("batch.json", bytes));
        assertThat(fault.found()).isEqualTo(found);
        assertThat(fault.remedy()).contains("UTF-8");
    }

    @Test
    void aFileIsNamedAsGiven(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("my batch.json");
        Files.write(file, SampleBatch.bytes());
        assertThat(BatchReader.read(file)).isEqualTo(SampleBatch.read(SampleBatch.text()));
        Files.write(file, new byte[(1 << 20) + 1]);
        UnreadableInputException fault =
                catchThrowableOfType(UnreadableInputException.class, () -> BatchReader.read(file));
        assertThat(fault.place().file()).isEqualTo(file.toString());
        assertThat(fault.found()).isEqualTo("more than 1 MiB");
        assertThat(catchThrowableOfType(IOException.class, () -> BatchReader.read(folder.resolve("none.json"))))
                .isNotNull();
    }

    @Test
    void aMessageHoldsNoControlCharacters() {
        UnreadableInputException fault = fault("{\"\\u001b[2J\": 1}");
        assertThat(fault.getMessage()).doesNotContain("\u001b").contains("[2J");
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aDamagedFileGivesARecordOrAFaultAndNothingElse(long seed) {
        Random random = new Random(seed);
        byte[] bytes = SampleBatch.bytes();
        int changes = 1 + random.nextInt(3);
        for (int i = 0; i < changes; i++) {
            bytes[random.nextInt(bytes.length)] =
                    (byte) (random.nextBoolean() ? random.nextInt(256) : ' ' + random.nextInt(95));
        }
        try {
            assertThat(BatchReader.parse("batch.json", bytes).stages()).isNotEmpty();
        } catch (UnreadableInputException fault) {
            assertThat(fault.getMessage()).startsWith("batch.json").contains("found ", "; expected ", ". ");
        }
    }

    static LongStream seeds() {
        return LongStream.range(0, 2000);
    }

    private static UnreadableInputException fault(String text) {
        return catchThrowableOfType(
                UnreadableInputException.class,
                () -> BatchReader.parse("batch.json", text.getBytes(StandardCharsets.UTF_8)));
    }
}
