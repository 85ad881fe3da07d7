package org.holdproof.core.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.rules.Source.How;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The tables on weight, tenderness, colour and yield, and how they are read. */
class QualityTablesTest {
    private static final QualityTables TABLES = RuleLibrary.builtIn().quality();

    private static Stream<Citation> citations() {
        return Stream.of(
                        TABLES.parameters().values().stream().map(ModelParameter::citation),
                        TABLES.cuts().stream().map(TrimmedCut::citation),
                        TABLES.weightLosses().stream().map(WeightLossCase::citation),
                        TABLES.lossRanges().stream().map(LossRange::citation),
                        TABLES.yields().stream().map(PublishedYield::citation),
                        TABLES.tenderPoints().stream().map(TenderPoint::citation),
                        TABLES.facts().stream().map(QualityFact::citation))
                .flatMap(citation -> citation);
    }

    @Test
    void everyTableIsThere() {
        assertThat(TABLES.parameters()).hasSize(17);
        assertThat(TABLES.cuts()).hasSize(8);
        assertThat(TABLES.weightLosses()).hasSize(51);
        assertThat(TABLES.lossRanges()).hasSize(10);
        assertThat(TABLES.yields()).hasSize(41);
        assertThat(TABLES.tenderPoints()).hasSize(11);
        assertThat(TABLES.facts()).hasSize(56);
    }

    /** What has no document behind it says so and names none. */
    @Test
    void commonPracticeIsMarkedAndCitesNothing() {
        List<Citation> practice = citations()
                .filter(citation -> citation.how() == How.COMMON_PRACTICE)
                .toList();

        assertThat(practice).hasSizeGreaterThan(15).allSatisfy(citation -> {
            assertThat(citation.text()).isEqualTo("common practice, no source");
            assertThat(citation.source().id()).isEqualTo("common-practice");
            assertThat(citation.source().url()).isEmpty();
        });
        assertThat(citations().filter(citation -> citation.source().id().equals("common-practice")))
                .hasSameSizeAs(practice);
    }

    @Test
    void noRuleMayRestOnCommonPractice(@TempDir Path folder) throws IOException {
        Files.writeString(
                folder.resolve("growth-facts-site.csv"),
                """
                id,topic,statement,source,document,section,how,note
                site-fact,growth,Nothing grows there,common-practice,none,,common-practice,
                """);

        assertThatThrownBy(() -> RuleLibrary.withSite(folder))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining("one of read, derived, quoted, memory, convention");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "cuts-site.csv|id,title,species,lean_share_low,lean_share_high,rendered_low,rendered_high,source,how,note|"
                        + "cheek,Beef cheek,beef,0.9,0.7,0,5,usda-sr,derived,|0.9 to 1",
                "cuts-site.csv|id,title,species,lean_share_low,lean_share_high,rendered_low,rendered_high,source,how,note|"
                        + "cheek,Beef cheek,ox,0.7,0.9,0,5,usda-sr,derived,|some of beef",
                "loss-ranges-site.csv|id,title,species,from_celsius,to_celsius,low,high,source,how,note|"
                        + "x,Some,beef,60,50,5,20,usda-sr,read,|60 to 130",
                "tender-points-site.csv|id,material,celsius,hours_low,hours_high,used,source,how,note|"
                        + "x,shank,60,24,48,perhaps,usda-sr,read,|yes or nothing",
                "yields-site.csv|id,species,cut,step,basis,yield,yield_low,yield_high,moisture_change,fat_change,pieces,"
                        + "source,how,note|x,beef,flat,braised,cooked / raw,sixty,,,,,,usda-sr,read,|0 to 100"
            })
    void aRowThatCannotBeUsedIsNamed(String file, String header, String row, String expected, @TempDir Path folder)
            throws IOException {
        Files.writeString(folder.resolve(file), header + "\n" + row + "\n");

        assertThatThrownBy(() -> RuleLibrary.withSite(folder))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining(file)
                .hasMessageContaining("2")
                .hasMessageContaining(expected);
    }

    @Test
    void aSiteMayAddItsOwnCut(@TempDir Path folder) throws IOException, UnreadableInputException {
        Files.writeString(
                folder.resolve("cuts-site.csv"),
                """
                id,title,species,lean_share_low,lean_share_high,rendered_low,rendered_high,source,how,note
                cheek,Beef cheek,beef,0.7,0.9,0,5,usda-sr,derived,
                """);

        assertThat(RuleLibrary.withSite(folder).quality().cut("cheek")).isPresent();
    }
}
