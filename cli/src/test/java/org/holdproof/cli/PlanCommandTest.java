package org.holdproof.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.holdproof.cli.terminal.Answer;
import org.holdproof.cli.terminal.Terminal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Planning from the command line; the cooks are invented. */
class PlanCommandTest {
    private static final List<String> BEEF = List.of(
            "--species", "beef", "--thickness", "65 mm", "--authority", "us-food-code-2022", "--bath", "144 °F");

    @TempDir
    private Path folder = Path.of("");

    private static Desk plan(List<String> common, String... more) {
        List<String> words = new ArrayList<>(List.of("plan"));
        words.addAll(common);
        words.addAll(List.of(more));
        return Desk.run(words.toArray(String[]::new));
    }

    private static void fitsOneScreenAndCautions(Desk desk) {
        assertThat(desk.err()).isEmpty();
        assertThat(desk.outLines())
                .hasSizeLessThanOrEqualTo(Terminal.HEIGHT)
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(Terminal.WIDTH))
                .containsSubsequence(Answer.SAFETY);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "--start=4 °C",
                "--smoke=110 °C for 6 h",
                "--smoke=110 °C for 6 h --wet-bulb=50 °C --core=60 °C --fat=12 % --shape=roast",
                "--shape=roast --fat=20 % --serve=2031-05-01T18:00 --zone=Europe/Oslo --smoke=237 °F for 8 h",
                "--smoke=225 °F for 1 h 30 min --for=24 h",
                "--serve=2031-05-01T18:00 --zone=Europe/Oslo --weight=12 lb --portion=6 oz",
                "--species=chicken --bath=66 °C --authority=us-fsis-2021 --fat=8 %",
                "--species=fish --bath=65 °C --shape=slab --thickness=1 in",
                "--species=chicken --authority=australia --bath=78 °C --weight=4 kg --portion=180 g --smoke=90 °C for 30 min",
                "--authority=uk-scotland --bath=80 °C --form=comminuted --shape=cylinder --start=6 °C",
                "--species=other-poultry --authority=us-fsis-2021 --bath=70 °C --shape=sphere"
            })
    void aPlanFitsOneScreenAndEndsWithZero(String options) {
        List<String> words = new ArrayList<>();
        for (int i = 0; i < BEEF.size(); i += 2) {
            if (!options.contains(BEEF.get(i) + "=")) {
                words.addAll(BEEF.subList(i, i + 2));
            }
        }
        Desk desk = plan(words, options.split(" (?=--)", -1));

        assertThat(desk.exitCode()).as(desk.err()).isZero();
        fitsOneScreenAndCautions(desk);
        assertThat(desk.outLines()).anySatisfy(line -> assertThat(line).startsWith("PLAN: "));
        assertThat(desk.out()).doesNotContain("…");
        assertThat(desk.out()).contains("at worst", "plan by this", "Otherwise", "Heating", "Chill", "Weight");
    }

    /** A schedule missed even as planned, or a come-up that cannot be bounded, is no plan to cook by. */
    @ParameterizedTest
    @ValueSource(strings = {"--chill=water", "--start=12 °C"})
    void aPlanThatKeepsNotWhatItIsJudgedByEndsWithOne(String option) {
        Desk desk = plan(BEEF, option);

        assertThat(desk.exitCode()).isEqualTo(1);
        fitsOneScreenAndCautions(desk);
        assertThat(desk.out()).contains("NOT KEPT AS PLANNED: ");
    }

    /** Served hot it is not chilled: the chill is shown, and nothing ends by it. */
    @Test
    void whatIsServedHotIsNotJudgedByItsChill() {
        Desk desk = plan(BEEF, "--chill=water", "--serve", "2031-05-01T18:00", "--zone", "Europe/Oslo");

        assertThat(desk.exitCode()).as(desk.out()).isZero();
        assertThat(desk.out()).contains("NOT KEPT").doesNotContain("├chill", "NOT KEPT AS PLANNED");
    }

    /** Common practice, no source: about 8 h to 160 °F for a whole brisket at 225 to 250 °F. */
    @Test
    void aSmokeStepSaysWhenTheCoreIsThereAndWhatItLeaves() {
        Desk desk = plan(
                List.of("--species", "beef", "--shape", "roast", "--fat", "12 %", "--authority", "us-food-code-2022"),
                "--thickness=100 mm",
                "--smoke=237 °F for 8 h",
                "--bath=155 °F");

        assertThat(desk.out())
                .contains("160 °F inside about 8 h 18 min (5 h 31 min to 13 h 20 min), predicted")
                .contains("leaves the core near 159 °F (143 °F to 176 °F; at worst")
                .contains("at worst (wet, bare, alone, unsprayed): plan by this");
    }

    @Test
    void theStartIsCountedBackFromServingOnTheKitchensClock() {
        Desk day = plan(BEEF, "--for", "24 h", "--serve", "2031-05-01T18:00", "--zone", "Europe/Oslo");
        assertThat(day.outLines()).contains("PLAN: 24 h in the bath; start by Wed 2031-04-30 18:00");
        // the clocks go forward on 2031-03-30: 24 h before 18:00 it was 17:00
        Desk spring = plan(BEEF, "--for", "24 h", "--serve", "2031-03-30T18:00", "--zone", "Europe/Oslo");
        assertThat(spring.out()).contains("start by Sat 2031-03-29 17:00");
    }

    @Test
    void aLowBathIsNoPlanAndEndsWithOne() {
        Desk desk = plan(BEEF.subList(0, 6), "--bath", "50 °C");

        assertThat(desk.exitCode()).isEqualTo(1);
        fitsOneScreenAndCautions(desk);
        assertThat(desk.out())
                .contains("NO SAFE PLAN", "never reaches 130 °F", "Instead: Set the bath to at least 132 °F");
        assertThat(plan(BEEF, "--for", "1 h").exitCode()).isEqualTo(1);
        Desk unruled = plan(List.of("--species", "beef", "--authority", "canada-bc", "--table"));
        assertThat(unruled.exitCode()).isEqualTo(1);
        assertThat(unruled.out().replaceAll("\\s+", " "))
                .startsWith("NO SAFE PLAN")
                .contains("names no time and temperature");
    }

    /** Common practice, no source: 12 lb not held lose 2.16 lb near 160 °F; at 0.2366 L a cup that is 4.1 cups. */
    @Test
    void theTradesLossIsShownInCupsAsWhatItIs() {
        Desk desk = plan(BEEF.subList(0, 6), "--bath", "175 °F", "--weight", "12 lb", "--explain");

        assertThat(desk.out().replaceAll("\\s+", " "))
                .contains(
                        "about 18 % brought near 160 °F and not held, of 12 lb, is 2.2 lb of water, about 4.1 US cups (common"
                                + " practice, no source)");
        Desk held = plan(BEEF.subList(0, 6), "--bath", "160 °F", "--for", "24 h", "--weight", "12 lb", "--explain");
        assertThat(held.out()).doesNotContain("18 %");
    }

    @Test
    void everyFigureIsExplainedWithItsSourceAndItsHonesty() {
        Desk desk = plan(BEEF, "--explain", "--smoke", "110 °C for 3 h");

        assertThat(desk.exitCode()).isZero();
        assertThat(desk.out())
                .contains("Every row of the table")
                .contains("common practice, no source")
                .contains("from memory")
                .contains("USDA")
                .contains("derived")
                .contains("bare meat that dries");
        assertThat(desk.outLines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(Terminal.WIDTH));
        Desk lamb = plan(
                List.of("--species", "lamb"),
                "--bath=57 °C",
                "--thickness=50 mm",
                "--authority=us-fsis-2021",
                "--explain");
        assertThat(lamb.out().replaceAll("\\s+", " "))
                .contains("5 to 20 % lost (published ranges, whatever the hours)")
                .contains("Experimental cookery")
                .contains(", read;");
    }

    @ParameterizedTest(name = "{0} {1}")
    @CsvSource({
        "--start, -18 °C, frozen or nearly so",
        "--start, 5, Add the unit",
        "--species, goat, expected one of beef",
        "--form, diced, 'expected one of intact, non-intact, comminuted'",
        "--shape, cube, expected one of slab",
        "--thickness, 65, Add the unit",
        "--thickness, 900 mm, expected 3 to 300 mm",
        "--bath, 120 °C, expected 20 to 100 °C",
        "--fat, 80 %, expected 0 to 60 %",
        "--smoke, 110 °C, such as '110 °C for 6 h'",
        "--smoke, 110 for 6 h, Add the unit",
        "--smoke, 110 °C for ever, expected a time with its units",
        "--for, 8 d, at most 7 d",
        "--authority, nowhere, there are",
        "--serve, tomorrow, expected date and time",
        "--zone, Nowhere/Land, expected a zone",
        "--weight, 0 kg, more than nothing",
        "--cut, brisket, expected one of brisket-flat-trimmed",
        "--trim, 100 %, from 0 % to below 100 %",
        "--price, 4.99, such as '4.99 / lb'",
        "--against, sooner, expected some of",
        "--against, bath 120 °F, no safe plan for the other cook",
        "--against, smoker 200 °F to 203 °F, expected hotter air",
        "--chill, snow, snow"
    })
    void badOptionsAreUsageErrorsThatSayWhatToDo(String option, String value, String message) {
        List<String> words = new ArrayList<>();
        for (int i = 0; i < BEEF.size(); i += 2) {
            if (!BEEF.get(i).equals(option)) {
                words.addAll(BEEF.subList(i, i + 2));
            }
        }
        if (option.equals("--price")) {
            words.addAll(List.of("--portion", "6 oz"));
        }
        if (option.equals("--zone")) {
            words.addAll(List.of("--serve", "2031-05-01T18:00"));
        }
        Desk desk = plan(words, option + "=" + value);

        assertThat(desk.exitCode()).as(desk.toString()).isEqualTo(64);
        assertThat(desk.out()).isEmpty();
        assertThat(desk.err()).startsWith("holdproof: ").contains(message);
    }

    @Test
    void whatIsMissingOrDoesNotGoTogetherIsSaid() {
        assertThat(plan(BEEF.subList(0, 6), "--for", "24 h").err()).contains("--bath");
        assertThat(plan(BEEF.subList(0, 6), "--against", "trim 10 %").err()).contains("--bath");
        assertThat(plan(BEEF, "--price", "4.99/lb").err()).contains("--portion");
        assertThat(plan(BEEF.subList(0, 2), "--bath", "60 °C").err()).contains("--thickness");
        assertThat(plan(List.of(), "--bath", "60 °C", "--thickness", "30 mm").err())
                .contains("--species");
        assertThat(plan(BEEF.subList(0, 4), "--bath", "60 °C").err()).contains("--authority");
        assertThat(plan(BEEF, "--portion", "6 oz").err()).contains("--weight");
        assertThat(plan(BEEF, "--pdf", "x.pdf").err()).contains("--table");
        assertThat(plan(BEEF, "--wet-bulb", "50 °C").err()).contains("add --smoke");
        assertThat(plan(BEEF, "--smoke=110 °C for 6 h", "--wet-bulb=20 °C").err())
                .contains("--wet-bulb: the wet bulb is 20 °C; expected");
        assertThat(plan(BEEF, "--table").err()).contains("leave out");
        assertThat(plan(BEEF, "--like", "x.csv").err()).contains("--batch");
        // the clocks of Oslo skip 02:30 on 2031-03-30
        assertThat(plan(BEEF, "--serve", "2031-03-30T02:30", "--zone", "Europe/Oslo")
                        .err())
                .contains("skip");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "--species=beef --thickness=65 mm --authority=us-food-code-2022",
                "--species=beef --thickness=100 mm --authority=us-food-code-2022 --smoke=110 °C for 8 h --weight=12 lb",
                "--species=chicken --thickness=40 mm --authority=uk-scotland --weight=4.5 kg",
                "--species=beef --thickness=75 mm --authority=uk-england-wales-ni --cut=brisket-whole-trimmed"
            })
    void withoutABathTheCookChoosesFromATableOnOneScreen(String options) {
        Desk desk = plan(List.of(), options.split(" (?=--)", -1));

        assertThat(desk.exitCode()).as(desk.err()).isZero();
        fitsOneScreenAndCautions(desk);
        assertThat(desk.out().replaceAll("\\s+", " "))
                .startsWith("Choose a bath: ")
                .contains("safe from", "48 h", "a prediction");
        assertThat(desk.outLines().stream().filter(line -> line.matches("[0-9]+ °[CF] .*")))
                .hasSize(9);
    }

    @Test
    void aStayTooShortToBeSafeHasNoFigureInTheChoices() {
        Desk desk = plan(List.of("--species", "beef", "--thickness", "75 mm", "--authority", "us-food-code-2022"));

        assertThat(desk.outLines().stream().filter(line -> line.startsWith("135 °F")))
                .singleElement()
                .satisfies(line -> assertThat(line).matches("135 °F +[0-9]+ h [0-9]+ +– .*"));
    }

    /** Prices are invented. */
    @Test
    void twoPlansStandSideBySideInWeightTendernessAndCost() {
        List<String> priced = List.of("--for", "24 h", "--portion", "6 oz", "--price", "$4.99/lb", "--weight", "12 lb");
        List<String> words = new ArrayList<>(BEEF);
        words.addAll(priced);
        Desk prime = plan(words, "--against", "price $9.99/lb");
        Desk smoker = plan(words, "--trim", "10 %", "--against", "smoker 250 °F to 203 °F");
        Desk bath = plan(words, "--against", "bath 155 °F for 24 h, cut brisket-flat-trimmed, trim 20 %");

        assertThat(prime.out().replaceAll("\\s+", " "))
                .contains("the plan costs less even at its worst")
                .contains("a portion of 6 oz");
        assertThat(smoker.out().replaceAll("\\s+", " "))
                .contains("at least 40 % taken past 200 °F (common practice, no source)")
                .contains("the two overlap")
                .contains("10 % trimmed off before")
                .contains("Nothing is said of the other cook's safety");
        assertThat(bath.out()).contains("AGAINST: bath 155 °F for 24 h", "20 % trimmed off before");
        for (Desk desk : List.of(prime, smoker, bath)) {
            assertThat(desk.exitCode()).as(desk.err()).isZero();
            assertThat(desk.outLines())
                    .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(Terminal.WIDTH));
        }
    }

    @Test
    void theTableFitsOneScreenAndItsChartIsAPdf() throws IOException {
        Path pdf = folder.resolve("wall.pdf");
        for (String authority : List.of("us-food-code-2022", "uk-scotland")) {
            Desk desk =
                    plan(List.of("--species", "beef"), "--authority", authority, "--table", "--pdf", pdf.toString());

            assertThat(desk.exitCode()).as(desk.err()).isZero();
            fitsOneScreenAndCautions(desk);
            assertThat(desk.out()).contains("70 mm", "Wall chart: " + pdf);
            assertThat(Files.readString(pdf, java.nio.charset.StandardCharsets.ISO_8859_1))
                    .startsWith("%PDF-1.7");
        }
    }

    /** The demo's low bath made a hot one; weights and bite are invented. */
    @Test
    void whatTheLastOneWeighedAndHowItAteNarrowsTheNext() throws IOException {
        Path log = Files.writeString(folder.resolve("hot.csv"), hotBath());
        String record = Files.readString(Path.of(DemoRun.file("2-low-bath.batch.json")));
        Path batch = folder.resolve("hot.json");
        Files.writeString(
                batch,
                record.replaceFirst(
                        "\\{",
                        "{\"weights\": {\"raw\": \"3 kg\", \"outOfBag\": \"2.1 kg\"}, \"tenderness\": \"tough\","));
        Desk desk = plan(
                List.of("--like", log.toString(), "--batch", batch.toString()), "--bath", "62 °C", "--for", "24 h");

        assertThat(desk.exitCode()).as(desk.err()).isZero();
        fitsOneScreenAndCautions(desk);
        assertThat(desk.out().replaceAll("\\s+", " "))
                .contains("after one weighed cook (before: 25 to 47 %)")
                .contains("before the last was eaten");

        Files.writeString(
                batch, record.replaceFirst("\\{", "{\"weights\": {\"raw\": \"3 kg\", \"served\": \"4 kg\"},"));
        Desk wrong = plan(List.of("--like", log.toString(), "--batch", batch.toString()), "--bath", "62 °C");
        assertThat(wrong.exitCode()).isEqualTo(65);
        assertThat(wrong.err()).contains("gains no weight");
    }

    /** Core and bath stretched from 50 to 62 °C. */
    private static String hotBath() throws IOException {
        List<String> lines = new ArrayList<>();
        for (String line : Files.readAllLines(Path.of(DemoRun.file("2-low-bath.csv")))) {
            String[] cells = line.split(";", -1);
            for (int column : new int[] {2, 4}) {
                if (cells[column].matches("[0-9]+,[0-9]")) {
                    double celsius = Double.parseDouble(cells[column].replace(',', '.'));
                    cells[column] = String.format(Locale.GERMANY, "%.1f", 5 + (celsius - 5) * 57 / 45);
                }
            }
            lines.add(String.join(";", cells));
        }
        return String.join("\n", lines) + "\n";
    }

    @Test
    void theNextBatchIsPlannedLikeALoggedOne() {
        String log = DemoRun.file("2-low-bath.csv");
        String record = DemoRun.file("2-low-bath.batch.json");
        Desk desk = plan(List.of("--like", log, "--batch", record), "--bath", "60 °C", "--explain");

        assertThat(desk.exitCode()).as(desk.err()).isZero();
        assertThat(desk.out())
                .contains("slab 50 mm", "fitted to", "600 readings", "by us-fsis-2021")
                // the demo is made with 1.30e-7 m²/s and 200 W/(m² K)
                .contains("Diffusivity 1.30e-7 m²/s");

        Desk smoked = plan(
                List.of(
                        "--like",
                        DemoRun.file("1-smoked-then-bagged.csv"),
                        "--batch",
                        DemoRun.file("1-smoked-then-bagged.batch.json")),
                "--bath",
                "60 °C");
        assertThat(smoked.exitCode()).as(smoked.err()).isZero();
        assertThat(smoked.out().replaceAll("\\s+", " "))
                .contains("Like: Its smoke was replayed: the core at 62 °C when bagged")
                .contains("Like: Its bath was not fitted: the bath ends at 68.3 °C")
                .contains("The published figures stay.");
    }
}
