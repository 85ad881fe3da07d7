package org.holdproof.core.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.rules.loading.TableFiles;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** A site's own tables over the built-in ones, archives, and what is said about tables that cannot be used. */
class SiteTablesTest {
    private static final RuleLibrary BUILT_IN = RuleLibrary.builtIn();

    private final Path folder;

    SiteTablesTest(@TempDir Path folder) {
        this.folder = folder;
    }

    // Synthetic: a validated process of an invented site.
    private void writeValidatedProcess() throws IOException {
        write(
                "sources-site.json",
                """
                [{"id": "site-study", "title": "Validation of the roast process", "issuer": "the site", "year": "2025",
                  "edition": "", "section": "", "url": "", "how": "read", "note": "", "readAt": []}]
                """);
        write(
                "lethality/index-site.csv",
                """
                id,title,jurisdiction,applies,organism,target_log10,count,source,document,section,how,note
                site-roast,Roast process,site,whole roasts,Salmonella,6.5,unbroken,site-study,Validation,table 1,read,
                """);
        write(
                "lethality/site-roast.csv",
                """
                temperature,unit,printed_other,fat_percent,printed_time,seconds,exception,source,section,how,note
                56,C,,,75 min,4500,,,,,
                58,C,,,30 min,1800,,,,,
                """);
        write(
                "authorities/site-roast.json",
                """
                {"id": "site-roast", "title": "Validated roast process", "units": ["C"], "paper": "a4",
                 "lethality": [{"species": ["beef"], "forms": ["intact"], "tables": ["site-roast"]}],
                 "cooling": ["CA-PROV-COOL"], "approval": "HD-25-3", "left": []}
                """);
    }

    private void write(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
    }

    @Test
    void addsASitesOwnProcess() throws Exception {
        writeValidatedProcess();

        RuleLibrary library = RuleLibrary.withSite(folder);

        AuthorityProfile profile = library.profile("site-roast").orElseThrow();
        assertThat(profile.title()).isEqualTo("Validated roast process, approval HD-25-3");
        assertThat(profile.lethality().get(0).tables().get(0).rows()).hasSize(2);
        assertThat(profile.lethality().get(0).tables().get(0).citation().text()).isEqualTo("Validation, table 1");
        assertThat(library.rules(LethalityTable.class).all())
                .hasSize(BUILT_IN.rules(LethalityTable.class).all().size() + 1);
        assertThat(library.profile("us-fsis-2021")).isPresent();
        assertThat(library.edition())
                .startsWith("2026-12 with the site's own authorities/site-roast.json, lethality/index-site.csv")
                .isNotEqualTo(BUILT_IN.edition());
    }

    /** The four files that the tables' README teaches, read out of it. */
    @Test
    void loadsTheExampleOfTheReadme() throws Exception {
        String readme;
        try (InputStream in =
                Objects.requireNonNull(RuleLibrary.class.getResourceAsStream("/org/holdproof/tables/README.md"))) {
            readme = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        Matcher example = Pattern.compile(
                        "in `([a-z/-]+-?[a-z]*\\.(?:csv|json))`[^`]*(?:`[^`]+`[^`]*)*?```[a-z]+\\n(.*?)```",
                        Pattern.DOTALL)
                .matcher(readme.substring(readme.indexOf("### A validated process")));
        List<String> written = new ArrayList<>();
        while (example.find()) {
            write(example.group(1), example.group(2));
            written.add(example.group(1));
        }
        assertThat(written)
                .containsExactly(
                        "sources-site.json",
                        "lethality/index-site.csv",
                        "lethality/site-brisket.csv",
                        "authorities/site-brisket.json");

        AuthorityProfile profile =
                RuleLibrary.withSite(folder).profile("site-brisket").orElseThrow();

        assertThat(profile.title()).endsWith("approval HD-2026-14");
        assertThat(profile.lethalityFor(Species.BEEF, Form.INTACT).orElseThrow().rowsFor(OptionalDouble.empty()))
                .extracting(row -> row.at().text() + ", " + row.printedTime())
                .containsExactly("58 °C, 3 h", "62 °C, 30 min");
        AuthorityProfile code = BUILT_IN.profile("us-food-code-2022").orElseThrow();
        assertThat(profile.cooling()).isEqualTo(code.cooling());
        assertThat(profile.lethalityFor(Species.PORK, Form.INTACT))
                .isEqualTo(code.lethalityFor(Species.PORK, Form.INTACT));
    }

    /** A profile that builds on itself, or on none there is, is told. */
    @Test
    void refusesABaseThatIsNone() throws Exception {
        writeValidatedProcess();
        Path profile = folder.resolve("authorities/site-roast.json");
        for (String base : List.of("site-roast", "atlantis")) {
            Files.writeString(
                    profile,
                    Files.readString(profile)
                            .replaceAll(
                                    "(\"base\": \"[a-z-]+\", )?\"units\"", "\"base\": \"" + base + "\", \"units\""));

            assertThatThrownBy(() -> RuleLibrary.withSite(folder))
                    .isInstanceOf(UnreadableInputException.class)
                    .hasMessageContaining("/base")
                    .hasMessageContaining("another profile");
        }
    }

    @Test
    void asksForTheApprovalOfASitesOwnProcess() throws Exception {
        writeValidatedProcess();
        Path profile = folder.resolve("authorities/site-roast.json");
        Files.writeString(profile, Files.readString(profile).replace("\"approval\": \"HD-25-3\", ", ""));

        assertThatThrownBy(() -> RuleLibrary.withSite(folder))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining("site-roast.json")
                .hasMessageContaining("approval");
    }

    @Test
    void replacesAFileOfTheSamePath() throws Exception {
        String text = text("lethality/uk-rounded.csv").replace("45 min,2700", "50 min,3000");
        write("lethality/uk-rounded.csv", text);

        RuleLibrary library = RuleLibrary.withSite(folder);

        assertThat(library.rules(LethalityTable.class)
                        .find("uk-rounded")
                        .orElseThrow()
                        .rows()
                        .get(0)
                        .seconds())
                .isEqualTo(3000);
        assertThat(BUILT_IN.rules(LethalityTable.class)
                        .find("uk-rounded")
                        .orElseThrow()
                        .rows()
                        .get(0)
                        .seconds())
                .isEqualTo(2700);
    }

    @Test
    void ignoresNotesBesideTheTables() throws Exception {
        writeValidatedProcess();
        write("README.txt", "how we validated it");
        write(".hidden", "");

        assertThat(RuleLibrary.withSite(folder).profile("site-roast")).isPresent();
    }

    @Test
    void readsAByteOrderMarkAndCrLf() throws Exception {
        write(
                "lethality/uk-rounded.csv",
                "\uFEFF" + text("lethality/uk-rounded.csv").replace("\n", "\r\n"));

        assertThat(RuleLibrary.withSite(folder)
                        .rules(LethalityTable.class)
                        .find("uk-rounded")
                        .orElseThrow()
                        .rows())
                .hasSize(5);
    }

    @Test
    void anArchiveGivesTheSameTablesAndEdition() throws Exception {
        writeValidatedProcess();
        for (RuleLibrary library : List.of(BUILT_IN, RuleLibrary.withSite(folder))) {
            RuleLibrary again = RuleLibrary.fromArchive(library.archive());

            assertThat(again.edition()).isEqualTo(library.edition());
            assertThat(again.archive()).isEqualTo(library.archive());
            assertThat(again.profiles()).isEqualTo(library.profiles());
            assertThat(again.rules(LethalityTable.class).all())
                    .isEqualTo(library.rules(LethalityTable.class).all());
            assertThat(again.rules(CoolingRule.class).all())
                    .isEqualTo(library.rules(CoolingRule.class).all());
            assertThat(again.sources()).isEqualTo(library.sources());
        }
    }

    @Test
    void theEditionListsEveryBuiltInFile() throws Exception {
        URI edition = Objects.requireNonNull(RuleLibrary.class.getResource("/org/holdproof/tables/edition.json"))
                .toURI();
        if (edition.getScheme().equals("jar")) {
            try (FileSystem jar = FileSystems.newFileSystem(edition, Map.of())) {
                assertListed(jar.getPath("/org/holdproof/tables"));
            }
        } else {
            assertListed(Objects.requireNonNull(Path.of(edition).getParent()));
        }
    }

    private static void assertListed(Path tables) throws Exception {
        try (Stream<Path> files = Files.walk(tables)) {
            assertThat(files.filter(Files::isRegularFile)
                            .map(file -> tables.relativize(file).toString().replace('\\', '/'))
                            .filter(name -> !name.equals("README.md"))
                            // physics, read by the conduction model, not rules
                            .filter(name -> !name.startsWith("heat/")))
                    .containsExactlyInAnyOrderElementsOf(TableFiles.builtIn().paths());
        }
    }

    @ParameterizedTest(name = "{0}: {1} for {2}")
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
            lethality/uk-rounded.csv | 45 min,2700 | 45 min,2800 | 2 | seconds | the printed time 45 min
            lethality/uk-rounded.csv | 45 min,2700 | 45 min,NaN | 2 | seconds | a number from 0
            lethality/uk-rounded.csv | 45 min,2700 | 45 min,1e3 | 2 | seconds | a number from 0
            lethality/uk-rounded.csv | 45 min,2700 | 45 min, | 2 | seconds | a value
            lethality/uk-rounded.csv | 2 min,120 | 12 min,720 | 4 | seconds | no longer time than at 65 °C
            lethality/uk-rounded.csv | 65,C | 65,K | 3 | unit | C or F
            lethality/uk-rounded.csv | 65,C | 149,C | 3 | temperature | from 40 to 130 °C
            lethality/uk-rounded.csv | 65,C | 60,C | 3 | temperature | rows by rising temperature
            lethality/uk-rounded.csv | 65,C | 149,F | 3 | unit | one scale
            lethality/uk-rounded.csv | uk-fsa-equivalents | nowhere | 2 | source | the id of a source
            lethality/uk-rounded.csv | temperature | temp | 1 | | temperature,unit
            lethality/fsis-2021-meat-6.5-log.csv | 130,F,54.4 | 130,F,54.9 | 2 | printed_other | rounded from 130 °F
            lethality/fsis-2021-meat-6.5-log.csv | conversion | rises | 9 | printed_other | rounded from 137 °F
            lethality/fsis-2021-turkey-7-log.csv | 136,F,57.8,12, | 136,F,57.8,13, | 0 | fat_percent | one row for each
            lethality/index.csv | uk-rounded, | uk-round, | 22 | id | a table at lethality/uk-round.csv
            lethality/index.csv | uk-rounded, | us-ny-271-2.10-roasts, | 22 | id | an id of its own
            kinetics.csv | 17.231 | 0 | 2 | d_minutes | a number from
            kinetics.csv | 130,160,F | 160,130,F | 2 | floor | at most the cap
            cooling.csv | 135,70,F,120 | 70,135,F,120 | 2 | to | less than 70 °F
            cooling.csv | 135,70,F,120 | 135,70,F, | 2 | max_minutes | a limit
            cooling.csv | 135,70,F,120 | ,70,F,120 | 2 | from | the temperature the clock starts at
            cooling.csv | falls-through,135,70 | fell-through,135,70 | 2 | start | one of falls-through
            cooling.csv | same-as-first,135,41,F,360,at-most | same-as-first,135,41,F,360,at-least | 3 | comparison | at-most or below
            cooling.csv | 1,falls-through,135,70 | 1,same-as-first,135,70 | 2 | start | a start of its own
            cooling.csv | ,2,same-as-first,135 | ,3,same-as-first,135 | 3 | stage | stage 2
            holding.csv | hot-minimum,135,,F,at-least | hot-minimum,135,,F,at-most | 2 | comparison | at-least or above
            holding.csv | come-up,130,50 | come-up,130, | 13 | kind | a from below its limit
            reheating.csv | 165,F,at-least,15 | 165,F,at-most,15 | 2 | comparison | at-least or above
            bath-times.csv | 2 h,7200 | 2 h,7201 | 2 | seconds | the printed time 2 h
            authorities/us-fsis-2021.json | "beef" | "beeef" | 0 | /lethality/0/species/0 | one of beef
            authorities/us-fsis-2021.json | US-FSIS-CUT | US-FSIS-B1 | 0 | /comeUp | an id of holding.csv
            authorities/us-fsis-2021.json | US-FSIS-CUT | US-FDA-HOT | 0 | /comeUp | a rule of kind come-up
            authorities/us-fsis-2021.json | "paper" | "sheet" | 0 | /sheet | one of id
            authorities/us-fsis-2021.json | "letter" | letter | 0 | | JSON
            authorities/us-fsis-2021.json | "id": "us-fsis-2021" | "id": "usda" | 0 | /id | the file's own name
            sources.json | "how": "read" | "how": "guessed" | 0 | /0/how | one of read
            """)
    void saysWhereAndWhatToDo(String file, String good, String bad, long line, String column, String expected)
            throws Exception {
        String text = text(file);
        assertThat(text).contains(good);
        int at = text.indexOf(good);
        write(file, text.substring(0, at) + (bad == null ? "" : bad) + text.substring(at + good.length()));

        UnreadableInputException fault =
                catchThrowableOfType(UnreadableInputException.class, () -> RuleLibrary.withSite(folder));

        assertThat(fault).as("the change is noticed").isNotNull();
        assertThat(fault.place().file()).isEqualTo(file);
        if (line > 0) {
            assertThat(fault.place().line().orElse(0)).isEqualTo(line);
        }
        assertThat(fault.place().column().or(fault.place()::pointer).orElse(""))
                .isEqualTo(column == null ? "" : column);
        assertThat(fault.expected()).contains(expected);
        assertThat(fault.remedy()).isNotBlank();
        assertThat(fault.getMessage())
                .startsWith(file)
                .contains("found " + fault.found(), "expected " + fault.expected());
    }

    @Test
    void refusesAFileNoRuleIsReadFrom() throws Exception {
        write("coolin.csv", "id\n");

        assertThatThrownBy(() -> RuleLibrary.withSite(folder))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageStartingWith("coolin.csv: found a file no rule is read from")
                .hasMessageContaining("Rename the file");
    }

    @Test
    void refusesATableNoIndexNames() throws Exception {
        write("lethality/site-roast.csv", text("lethality/uk-rounded.csv"));

        assertThatThrownBy(() -> RuleLibrary.withSite(folder))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining("lethality/site-roast.csv: found a table no index names");
    }

    @Test
    void refusesAnEmptyOrMissingFolder() {
        assertThatThrownBy(() -> RuleLibrary.withSite(folder))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining("found no table");
        assertThatThrownBy(() -> RuleLibrary.withSite(folder.resolve("nowhere")))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining("found nothing; expected a folder");
    }

    @Test
    void refusesTextThatIsNotUtf8() throws Exception {
        Files.write(folder.resolve("cooling-site.csv"), new byte[] {'i', 'd', (byte) 0xB0, '\n'});

        assertThatThrownBy(() -> RuleLibrary.withSite(folder))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining("with the encoding UTF-8");
    }

    static IntStream seeds() {
        return IntStream.range(0, 60);
    }

    /** However a table is damaged, it is either still a table or the damage is told. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void damageIsEitherHarmlessOrTold(int seed) throws Exception {
        Random random = new Random(seed);
        Map<String, byte[]> files = unzip(BUILT_IN.archive());
        List<String> names = new ArrayList<>(files.keySet());
        for (int round = 0; round < 10; round++) {
            String name = names.get(random.nextInt(names.size()));
            byte[] good = Objects.requireNonNull(files.get(name));
            files.put(name, damaged(good, random));
            assertHarmlessOrTold(zip(files));
            files.put(name, good);
        }
        byte[] archive = BUILT_IN.archive();
        for (int round = 0; round < 10; round++) {
            assertHarmlessOrTold(damaged(archive, random));
        }
    }

    private static void assertHarmlessOrTold(byte[] zip) {
        try {
            assertThat(RuleLibrary.fromArchive(zip).edition()).isNotBlank();
        } catch (UnreadableInputException e) {
            assertThat(e.getMessage()).contains(": found ", "; expected ");
            assertThat(e.remedy()).matches("(?s).*[.?]");
        }
    }

    private static byte[] damaged(byte[] good, Random random) {
        int at = random.nextInt(good.length);
        int to = Math.min(good.length, at + 1 + random.nextInt(40));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        switch (random.nextInt(5)) {
            case 0 -> out.write(good, 0, at);
            case 1 -> {
                out.write(good, 0, at);
                out.write(good, to, good.length - to);
            }
            case 2 -> {
                out.write(good, 0, to);
                out.write(good, at, good.length - at);
            }
            case 3 -> {
                byte[] odd = "\",\n{}[]-.0 9e\u0000".getBytes(StandardCharsets.UTF_8);
                out.write(good, 0, at);
                out.write(odd[random.nextInt(odd.length)]);
                out.write(good, at, good.length - at);
            }
            default -> {
                byte[] bytes = good.clone();
                bytes[at] = (byte) random.nextInt(256);
                out.writeBytes(bytes);
            }
        }
        return out.toByteArray();
    }

    private static Map<String, byte[]> unzip(byte[] archive) throws IOException {
        Map<String, byte[]> files = new TreeMap<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(archive))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                files.put(entry.getName(), in.readAllBytes());
            }
        }
        return files;
    }

    private static byte[] zip(Map<String, byte[]> files) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(bytes)) {
            out.setLevel(0);
            for (Map.Entry<String, byte[]> file : files.entrySet()) {
                out.putNextEntry(new ZipEntry(file.getKey()));
                out.write(file.getValue());
                out.closeEntry();
            }
        }
        return bytes.toByteArray();
    }

    private static String text(String file) throws UnreadableInputException {
        return new String(TableFiles.builtIn().bytes(file), StandardCharsets.UTF_8);
    }
}
