package org.holdproof.report.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.holdproof.core.lesson.Cut;
import org.holdproof.core.lesson.Lesson;
import org.holdproof.core.lesson.LessonSetup;
import org.holdproof.core.lesson.Statement;
import org.holdproof.core.rules.AuthorityProfile.Paper;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.report.draw.Box;
import org.holdproof.report.layout.PageReading;
import org.holdproof.report.layout.PageReading.Glyph;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LessonPagesTest {
    private static final Instant WRITTEN = Instant.parse("2031-03-01T09:00:00Z");
    private static final byte[] TABLES = {1};

    private static Lesson lesson(Cut cut, double millimetres, double low, double high) {
        return Lesson.of(new LessonSetup(cut, millimetres, LessonSetup.bathsBetween(low, high)), RuleLibrary.builtIn());
    }

    @ParameterizedTest(name = "{0}, {1} mm, baths {2} to {3} °C, on {4}")
    @CsvSource({
        "BEEF, 70, 46, 62, A4",
        "BEEF, 70, 46, 62, LETTER",
        "CHICKEN, 150, 40, 65, LETTER",
        "TURKEY, 10, 50.5, 52.5, A4",
        "PORK, 45, 57, 65, LETTER",
        "LAMB, 110, 40, 48, LETTER"
    })
    void nothingLiesOverAnythingElseOrBeyondThePage(Cut cut, double millimetres, double low, double high, Paper paper)
            throws IOException {
        byte[] pdf = LessonPages.write(lesson(cut, millimetres, low, high), paper, TABLES, WRITTEN);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getNumberOfPages()).isEqualTo(4);
            List<List<Glyph>> pages = PageReading.glyphs(document);
            for (int page = 0; page < pages.size(); page++) {
                PDRectangle media = document.getPage(page).getMediaBox();
                Box sheet = new Box(12, 12, media.getWidth() - 24, media.getHeight() - 24);
                assertThat(pages.get(page)).as("page %d", page + 1).allMatch(glyph -> sheet.holds(glyph.box()));
                assertThat(overlaps(pages.get(page))).as("page %d", page + 1).isEmpty();
            }
        }
    }

    private static List<String> overlaps(List<Glyph> glyphs) {
        List<Glyph> byTop = glyphs.stream()
                .sorted(Comparator.comparingDouble((Glyph glyph) -> glyph.box().y()))
                .toList();
        List<String> found = new ArrayList<>();
        for (int i = 0; i < byTop.size(); i++) {
            Box a = byTop.get(i).box();
            for (int j = i + 1; j < byTop.size() && byTop.get(j).box().y() < a.bottom(); j++) {
                Box b = byTop.get(j).box();
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
    void bothPagesSayEverythingWithItsSource() throws IOException {
        Lesson lesson = lesson(Cut.BEEF, 70, 46, 62);
        List<String> pages = PageReading.squeezedPages(LessonPages.write(lesson, Paper.A4, TABLES, WRITTEN)).stream()
                .map(page -> page.replace("\u00a0", ""))
                .toList();
        for (String page : pages.subList(0, 2)) {
            assertThat(page).contains(PageReading.squeeze(Lesson.DIRECTION), "HACCP", "53.4°C", "published");
            for (Statement statement :
                    List.of(lesson.growthStops(), lesson.publishedRow(), lesson.toxin(), lesson.spores())) {
                assertThat(page).contains(PageReading.squeeze(statement.text()));
                statement.citations().forEach(citation -> assertThat(page)
                        .contains(PageReading.squeeze("] " + citation.text())));
            }
        }
        lesson.findings()
                .forEach(finding -> assertThat(pages.get(0)).contains(PageReading.squeeze(finding.text() + " [")));
        lesson.exercises().forEach(exercise -> exercise.answers().forEach(answer -> {
            assertThat(pages.get(2)).doesNotContain(PageReading.squeeze(answer));
            assertThat(pages.get(3)).contains(PageReading.squeeze(answer));
        }));
    }

    @Test
    void theSameLessonComesOutByteForByteTheSame() throws IOException {
        Lesson lesson = lesson(Cut.LAMB, 50, 48, 60);
        assertThat(LessonPages.write(lesson, Paper.A4, TABLES, WRITTEN))
                .isEqualTo(LessonPages.write(lesson, Paper.A4, TABLES, WRITTEN));
    }
}
