package org.holdproof.report.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.report.archive.AttachedFile;
import org.holdproof.report.font.ReportFonts;
import org.holdproof.report.layout.PageReading.Glyph;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Reads reports of invented cooks back with another library than the one that wrote them. */
class ReportLayoutTest {
    private static final double POINT = 1;
    /** A page may end within a phrase that is counted. */
    private static final int PAGE_ENDS = 20;

    private static final ReportFonts FONTS = ReportFonts.load();

    static Stream<Named<ReportContent>> reports() {
        return Stream.concat(
                Stream.of(
                        Named.of("met, Letter, °F and °C", InventedCooks.met("us-food-code-2022")),
                        Named.of("a low bath, Letter", InventedCooks.lowBath("us-fsis-2021")),
                        Named.of("a late chill", InventedCooks.lateChill("us-food-code-2022")),
                        Named.of("a gap, °C and °F", InventedCooks.gap("canada-cfia")),
                        Named.of("A4, °C", InventedCooks.met("uk-england-wales-ni"))),
                InventedExtremes.all());
    }

    @ParameterizedTest
    @MethodSource("reports")
    void everyFigureVerdictAndSourceIsPrinted(ReportContent content) throws Exception {
        String text = PageReading.squeezed(Printed.bytes(content));
        for (Check check : content.assessment().checks()) {
            assertThat(text).contains(printed(check.title()), printed(check.rule()), ending(check.why()));
            assertThat(text).contains(printed(check.verdict().words()));
            if (check.verdict() != Verdict.MET) {
                assertThat(text).contains(printed(check.next().orElse("")));
            }
            check.citation().ifPresent(citation -> {
                assertThat(text).contains(printed(citation.text()));
                if (citation.how().isUnconfirmed()) {
                    assertThat(text).contains(printed(citation.how().caveat()));
                }
            });
            if (check.unit().filter("min"::equals).isPresent()
                    && check.measured().isPresent()) {
                for (String figure : WordedReport.of(content).figures().measured(check)) {
                    assertThat(text).contains(printed(figure));
                }
            }
        }
        for (Caution caution : content.assessment().cautions()) {
            assertThat(text).contains(printed(caution.text()));
        }
        for (AttachedFile file : content.attachments()) {
            assertThat(text).contains(printed(file.name()), printed(file.description()));
            // The digest stands in two lines beside other columns.
            assertThat(text)
                    .contains(file.sha256().substring(0, 32), file.sha256().substring(32));
        }
        assertThat(text).contains(printed(content.assessment().tablesEdition()));
        assertThat(text)
                .contains(printed(content.assessment().batch().instrument().id()));
    }

    @ParameterizedTest
    @MethodSource("reports")
    void pageOneDecides(ReportContent content) throws Exception {
        byte[] pdf = Printed.bytes(content);
        String text = PageReading.squeezedPages(pdf).get(0);
        assertThat(text).contains(printed(content.assessment().verdict().words()));
        assertThat(text).contains(printed(SafetyWords.TEXT));
        assertThat(text).contains("Thewholecook", "Thechecks", "Whattodonext");
        if (content.seal().isPresent()) {
            assertThat(text)
                    .contains(
                            printed("Seal"),
                            content.seal().get().certificateSha256().toUpperCase(Locale.ROOT));
        } else {
            assertThat(text).contains("Notsealed");
        }
        List<Check> open = content.assessment().checks().stream()
                .filter(check -> check.verdict() == content.assessment().verdict())
                .limit(5)
                .toList();
        assertThat(open).allSatisfy(check -> assertThat(text)
                .contains(printed(check.title())
                        .substring(0, Math.min(20, printed(check.title()).length()))));
    }

    /** An ellipsis is the mark of a text that was cut; none of the invented cooks' own texts holds one. */
    @ParameterizedTest
    @MethodSource("reports")
    void noTextIsCut(ReportContent content) throws Exception {
        assertThat(PageReading.squeezed(Printed.bytes(content))).doesNotContain("…");
    }

    @ParameterizedTest
    @MethodSource("reports")
    void whatMustBeReadOnPageOneIsNotSmall(ReportContent content) throws Exception {
        try (PDDocument document = Loader.loadPDF(Printed.bytes(content))) {
            List<Double> sizes = PageReading.sizes(document, 1);
            assertThat(sizes.stream().min(Double::compare).orElseThrow()).isGreaterThan(7.3);
            // Charts and the running head and foot are set smaller; nothing else is.
            assertThat(sizes.stream().filter(size -> size < 8.49).map(size -> Math.round(size * 10) / 10.0))
                    .allSatisfy(size -> assertThat(size).isIn(7.4, 7.8, 8.0));
        }
    }

    @ParameterizedTest
    @MethodSource("reports")
    void everyPageSaysWhatItBelongsTo(ReportContent content) throws Exception {
        List<String> pages = PageReading.squeezedPages(Printed.bytes(content));
        String batch = printed(content.assessment().batch().batch());
        for (int page = 1; page <= pages.size(); page++) {
            String text = pages.get(page - 1);
            assertThat(text)
                    .contains("Page" + page + "of" + pages.size())
                    .contains("Report" + content.shortId())
                    .contains("Batch" + batch.substring(0, Math.min(12, batch.length())))
                    .contains(printed(content.assessment().verdict().words()));
        }
    }

    @ParameterizedTest
    @MethodSource("reports")
    void textStaysInsideTheMarginsAndOffOtherText(ReportContent content) throws Exception {
        try (PDDocument document = Loader.loadPDF(Printed.bytes(content))) {
            List<List<Glyph>> pages = PageReading.glyphs(document);
            for (int page = 0; page < pages.size(); page++) {
                var sheet = document.getPage(page).getCropBox();
                List<Glyph> glyphs = pages.get(page);
                assertThat(glyphs).isNotEmpty();
                for (Glyph glyph : glyphs) {
                    assertThat(glyph.box().x())
                            .as("%s on page %d", glyph, page + 1)
                            .isGreaterThanOrEqualTo(ReportLayout.MARGIN - POINT);
                    assertThat(glyph.box().right())
                            .as("%s on page %d", glyph, page + 1)
                            .isLessThanOrEqualTo(sheet.getWidth() - ReportLayout.MARGIN + POINT);
                    assertThat(glyph.box().y()).isGreaterThanOrEqualTo(ReportLayout.MARGIN - POINT);
                    assertThat(glyph.box().bottom())
                            .isLessThanOrEqualTo(sheet.getHeight() - ReportLayout.MARGIN + POINT);
                }
                assertThat(overlaps(glyphs)).as("page %d", page + 1).isEmpty();
            }
        }
    }

    private static List<String> overlaps(List<Glyph> glyphs) {
        List<Glyph> byTop = glyphs.stream()
                .sorted(Comparator.comparingDouble((Glyph glyph) -> glyph.box().y()))
                .toList();
        List<String> found = new ArrayList<>();
        for (int i = 0; i < byTop.size(); i++) {
            var a = byTop.get(i).box();
            for (int j = i + 1; j < byTop.size() && byTop.get(j).box().y() < a.bottom(); j++) {
                var b = byTop.get(j).box();
                double across = Math.min(a.right(), b.right()) - Math.max(a.x(), b.x());
                double down = Math.min(a.bottom(), b.bottom()) - b.y();
                if (across > 0.4 && down > 0.4) {
                    found.add(byTop.get(i) + " over " + byTop.get(j));
                }
            }
        }
        return found;
    }

    @Test
    void aReasonLongerThanAPageIsPrintedToItsEnd() throws Exception {
        String text = PageReading.squeezed(Printed.bytes(InventedExtremes.longReason()));
        // Once under its check and once under its corrective action, each sentence.
        assertThat(text.split("endinsight", -1)).hasSizeGreaterThan(2 * 400 - PAGE_ENDS);
    }

    @Test
    void everyFaultIsPrinted() throws Exception {
        String text = PageReading.squeezed(Printed.bytes(InventedExtremes.full()));
        for (int i = 0; i < 500; i++) {
            assertThat(text).contains("whatwasfoundinplace" + i);
        }
    }

    @ParameterizedTest
    @MethodSource("reports")
    void theSameContentIsDrawnTheSame(ReportContent content) throws Exception {
        assertThat(pageStreams(Printed.bytes(content))).isEqualTo(pageStreams(Printed.bytes(content)));
    }

    private static List<String> pageStreams(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            List<String> streams = new ArrayList<>();
            for (PDPage page : document.getPages()) {
                ByteArrayOutputStream bytes = new ByteArrayOutputStream();
                page.getContents().transferTo(bytes);
                streams.add(bytes.toString(java.nio.charset.StandardCharsets.ISO_8859_1));
                for (COSName font : page.getResources().getFontNames()) {
                    streams.add(page.getResources().getFont(font).getName());
                }
            }
            return streams;
        }
    }

    @Test
    void thePaperIsTheAuthoritys() throws Exception {
        assertThat(firstSheet(InventedCooks.met("us-food-code-2022"))).isEqualTo(List.of(612f, 792f));
        // ISO 216: 210 mm by 297 mm, in whole points.
        assertThat(firstSheet(InventedCooks.met("uk-england-wales-ni"))).isEqualTo(List.of(595f, 842f));
    }

    private static List<Float> firstSheet(ReportContent content) throws IOException {
        try (PDDocument document = Loader.loadPDF(Printed.bytes(content))) {
            var sheet = document.getPage(0).getMediaBox();
            return List.of(sheet.getWidth(), sheet.getHeight());
        }
    }

    @Test
    void everyFontIsEmbedded() throws Exception {
        try (PDDocument document = Loader.loadPDF(Printed.bytes(InventedCooks.gap("canada-cfia")))) {
            for (PDPage page : document.getPages()) {
                for (COSName font : page.getResources().getFontNames()) {
                    assertThat(page.getResources().getFont(font).isEmbedded()).isTrue();
                }
            }
        }
    }

    @Test
    void theOutlineLeadsToTheSections() throws Exception {
        byte[] pdf = Printed.bytes(InventedCooks.met("us-food-code-2022"));
        List<String> pages = PageReading.squeezedPages(pdf);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            List<String> titles = new ArrayList<>();
            int last = 0;
            for (PDOutlineItem item :
                    document.getDocumentCatalog().getDocumentOutline().children()) {
                titles.add(item.getTitle());
                int page = document.getPages().indexOf(item.findDestinationPage(document));
                assertThat(page).isGreaterThanOrEqualTo(last);
                last = page;
                assertThat(pages.get(page)).contains(printed(item.getTitle()));
            }
            assertThat(titles)
                    .contains(
                            "Each check in full",
                            "Lethality",
                            "Cooling",
                            "Readings",
                            "Instrument",
                            "Corrective actions",
                            "Sources",
                            "How it was judged",
                            "Cautions");
        }
    }

    @Test
    void aVerdictOnNothingIsNotReported() {
        ReportContent content = InventedCooks.met("us-food-code-2022");
        Assessment old = content.assessment();
        Assessment empty = new Assessment(
                Verdict.MET,
                old.batch(),
                old.authority(),
                old.tablesEdition(),
                old.span(),
                List.of(),
                List.of(),
                old.lethality(),
                old.integrated(),
                old.fastestCore(),
                old.record());
        assertThatIllegalArgumentException()
                .isThrownBy(() -> InventedCooks.content(empty, content.log()))
                .withMessageContaining("without a check");
    }

    @Test
    void nobodysSealSaysSo() throws Exception {
        ReportContent sealed = InventedCooks.met("us-food-code-2022");
        ReportContent open = new ReportContent(
                sealed.assessment(), sealed.log(), sealed.attachments(), Optional.empty(), sealed.writtenAt());
        assertThat(PageReading.squeezed(Printed.bytes(open)))
                .contains(printed("This report is not sealed"))
                .doesNotContain(printed("Sealed by"));
    }

    @Test
    void gapsAreNamedOnTheChart() throws Exception {
        assertThat(PageReading.squeezedPages(Printed.bytes(InventedCooks.gap("canada-cfia")))
                        .get(0))
                .contains("noreadings");
    }

    private static String printed(String text) {
        return PageReading.squeeze(FONTS.showable(text));
    }

    /** A text's end: between pages a longer one is broken up by their headers. */
    private static String ending(String text) {
        String squeezed = printed(text);
        return squeezed.substring(Math.max(0, squeezed.length() - 400));
    }
}
