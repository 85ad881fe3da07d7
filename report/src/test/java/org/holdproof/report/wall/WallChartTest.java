package org.holdproof.report.wall;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Shape;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.plan.ChillMedium;
import org.holdproof.core.plan.HeatFigures;
import org.holdproof.core.plan.PlanTable;
import org.holdproof.core.plan.PlannedCook;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.report.layout.SafetyWords;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;

/** Read back with Apache PDFBox; conformance judged by veraPDF. The cook is invented. */
class WallChartTest {
    private static final Instant WRITTEN = Instant.parse("2031-03-04T05:06:07Z");

    @BeforeAll
    static void wakeVeraPdf() {
        VeraGreenfieldFoundryProvider.initialise();
    }

    private static PlanTable table(String authority) {
        PlannedCook like = new PlannedCook(
                Species.BEEF,
                Form.INTACT,
                OptionalDouble.empty(),
                Optional.of(Shape.SLAB),
                50,
                5,
                Optional.empty(),
                60,
                OptionalDouble.empty(),
                RuleLibrary.builtIn().profile(authority).orElseThrow(),
                ChillMedium.ICE_SLUSH);
        return PlanTable.of(
                like,
                HeatFigures.published(like.species(), like.fatPercent()),
                List.of(20.0, 50.0, 140.0),
                List.of(new Boundary(50, TemperatureUnit.CELSIUS), new Boundary(66, TemperatureUnit.CELSIUS)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"us-food-code-2022", "uk-scotland"})
    void oneLandscapeSheetHoldsEveryCellTheCautionsAndTheSafetyWords(String authority) throws Exception {
        PlanTable table = table(authority);
        byte[] pdf = WallChart.write(table, RuleLibrary.builtIn(), WRITTEN);

        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
            assertThat(document.getPage(0).getMediaBox().getWidth())
                    .isGreaterThan(document.getPage(0).getMediaBox().getHeight());
            String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
            assertThat(text)
                    .contains("Time in the bath: intact beef, slab", "50 °C", "66 °C", "20 mm", "140 mm")
                    .contains("5 mm thicker", "no safe plan", "from memory", SafetyWords.TEXT);
            for (int row = 0; row < 3; row++) {
                assertThat(table.text(row, 0)).isEqualTo("–");
                assertThat(text).contains(table.text(row, 1));
            }
        }
        assertThat(WallChart.write(table, RuleLibrary.builtIn(), WRITTEN)).isEqualTo(pdf);
    }

    /** ISO 19005-3 level B, as veraPDF 1.30 checks it. */
    @ParameterizedTest
    @ValueSource(strings = {"us-food-code-2022", "uk-scotland"})
    void conformsToPdfA3b(String authority) throws Exception {
        byte[] pdf = WallChart.write(table(authority), RuleLibrary.builtIn(), WRITTEN);
        try (PDFAParser parser =
                        Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFA_3_B);
                PDFAValidator validator = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFA_3_B, false)) {
            assertThat(validator.validate(parser).getTestAssertions().stream()
                            .map(assertion -> assertion.getRuleId().getClause() + ": " + assertion.getMessage()))
                    .isEmpty();
        }
    }
}
