package org.holdproof.core.rules.loading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.DeathTime;
import org.holdproof.core.rules.GrowthFact;
import org.holdproof.core.rules.GrowthLag;
import org.holdproof.core.rules.GrowthModel;
import org.holdproof.core.rules.GrowthModel.Concern;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.Source.How;
import org.holdproof.core.rules.ThermalDeath;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GrowthFilesTest {
    private static final RuleLibrary LIBRARY = RuleLibrary.builtIn();

    private final Path folder;

    GrowthFilesTest(@TempDir Path folder) {
        this.folder = folder;
    }

    /** Each figure and how it was obtained, as its source prints it; see the rows' citations. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "cp-rc, 8.8, 46.4, 51.5, 6.06, READ",
        "cp-bb, 10.3, 43.5, 53.4, 5.64, READ",
        "sal-cooked-chicken, 5.0268, 40.3671, 49.0326, 1.7318, READ",
        "sa-2064, 7.7, 40.6, 46.7, 1.97, READ",
        "sa-2064-48c, 7.7, 40.6, 48, 1.97, DERIVED",
    })
    void holdsTheModelsAsPublished(String id, double min, double optimum, double max, double lnPerHour, How how) {
        GrowthModel model = LIBRARY.rules(GrowthModel.class).find(id).orElseThrow();

        assertThat(model.minCelsius()).isEqualTo(min);
        assertThat(model.optimumCelsius()).isEqualTo(optimum);
        assertThat(model.maxCelsius()).isEqualTo(max);
        assertThat(model.optimumLnPerHour()).isCloseTo(lnPerHour, within(5e-5));
        assertThat(model.ceilingLog10()).isEqualTo(9);
        assertThat(model.citation().how()).isEqualTo(how);
        assertThat(model.citation().note()).contains("are assumptions");
    }

    @Test
    void saysWhatIsUnconfirmed() {
        assertThat(LIBRARY.rules(GrowthLag.class).all())
                .hasSize(4)
                .allSatisfy(lag -> assertThat(lag.citation().text()).endsWith("(from memory, unconfirmed)"));
        assertThat(LIBRARY.rules(GrowthModel.class)
                        .find("sa-2064-48c")
                        .orElseThrow()
                        .concern())
                .map(Concern::why)
                .map(GrowthFact::citation)
                .map(Citation::how)
                .as("page 14 of the FSIS guideline")
                .contains(How.READ);
        assertThat(LIBRARY.rules(DeathTime.class).all())
                .filteredOn(time -> time.citation().how() == How.MEMORY)
                .extracting(DeathTime::id)
                .containsExactly("sal-19", "cp-09", "cp-10", "cps-01", "cps-02");
        assertThat(LIBRARY.rules(ThermalDeath.class)
                        .find("perfringens-cells")
                        .orElseThrow()
                        .citation()
                        .how())
                .isEqualTo(How.DERIVED);
        assertThat(LIBRARY.rules(GrowthFact.class).find("F23")).isPresent();
        assertThat(LIBRARY.rules(GrowthFact.class).all()).hasSize(30);
    }

    @Test
    void aSiteMayAddAModelOfItsOwn() throws Exception {
        write(
                "growth-models-site.csv",
                text("growth-models.csv").replace("\ncp-", "\nown-cp-").replaceAll("\ns[^\n]*", ""));
        RuleLibrary library = RuleLibrary.withSite(folder);

        assertThat(library.rules(GrowthModel.class).all()).hasSize(7);
        assertThat(library.rules(GrowthModel.class).find("own-cp-rc")).isPresent();
    }

    @ParameterizedTest(name = "{0}: {1} for {2}")
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
            growth-models.csv | 10.3,43.5,53.4 | 10.3,25.5,53.4 | 2 | optimum_celsius | upper half
            growth-models.csv | 10.3,43.5,53.4 | 10.3,53.5,53.4 | 2 | optimum_celsius | upper half
            growth-models.csv | 5.64,ln-per-hour | 5.64,per-hour | 2 | rate_unit | one of ln-per-hour
            growth-models.csv | 5.64,ln-per-hour | 0,ln-per-hour | 2 | optimum_rate | a number from 0.01
            growth-models.csv | beef;veal | beef;zebu | 2 | species | any or some of beef
            growth-models.csv | 5,F25 | 5,F99 | 5 | concern_fact | an id of growth-facts.csv
            growth-models.csv | cp-rc,C. | cp-bb,C. | 3 | id | an id of its own
            growth-models.csv | huang-rcbb; | nowhere; | 2 | source | the id of a source
            growth-lags.csv | beef,0.007 | beef,0 | 2 | q0 | a number from
            growth-lags.csv | beef,0.007 | ,0.007 | 2 | species | a value
            growth-facts.csv | F01,slow come-up | F01, | 2 | topic | a value
            inactivation.csv | 61,62 | 61,60 | 2 | d_high_minutes | a number from 61
            """)
    void saysWhereAndWhatToDo(String file, String good, String bad, long line, String column, String expected)
            throws Exception {
        String text = text(file);
        int at = text.indexOf(good);
        assertThat(at).as("the text to change").isNotNegative();
        write(file, text.substring(0, at) + bad + text.substring(at + good.length()));

        UnreadableInputException fault =
                catchThrowableOfType(UnreadableInputException.class, () -> RuleLibrary.withSite(folder));

        assertThat(fault).as("the change is noticed").isNotNull();
        assertThat(fault.place().file()).isEqualTo(file);
        assertThat(fault.place().line().orElse(0)).isEqualTo(line);
        assertThat(fault.place().column().or(fault.place()::pointer).orElse("")).isEqualTo(column);
        assertThat(fault.expected()).contains(expected);
        assertThat(fault.remedy()).endsWith(".");
    }

    private static String text(String file) throws UnreadableInputException {
        return new String(TableFiles.builtIn().bytes(file), StandardCharsets.UTF_8);
    }

    private void write(String file, String text) throws Exception {
        Files.writeString(folder.resolve(file), text);
    }
}
