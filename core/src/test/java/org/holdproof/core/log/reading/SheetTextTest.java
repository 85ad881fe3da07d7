package org.holdproof.core.log.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.holdproof.core.input.SourceFile;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.ProbeLog;
import org.junit.jupiter.api.Test;

/**
 * Spreadsheets as the standards have them (ECMA-376, part 1; ISO/IEC 26300-1), written out by hand. Day 48000 of the 1900
 * system is 2031-06-01 (ECMA-376, part 1, section 18.17.4.1: day 1 is 1900-01-01, with a 29 February 1900 that was not).
 */
class SheetTextTest {
    private static final String MAIN = "xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"";

    private static byte[] zip(Map<String, String> parts) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, String> part : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(part.getValue().getBytes(StandardCharsets.UTF_8));
                zip.closeEntry();
            }
        }
        return bytes.toByteArray();
    }

    private static Map<String, String> workbook(String rows) {
        Map<String, String> parts = new LinkedHashMap<>();
        parts.put("xl/workbook.xml", "<workbook " + MAIN + "><workbookPr/><sheets/></workbook>");
        parts.put(
                "xl/styles.xml",
                "<styleSheet " + MAIN
                        + "><numFmts><numFmt numFmtId=\"164\" formatCode=\"dd.mm.yyyy\\ hh:mm\"/></numFmts>"
                        + "<cellStyleXfs><xf numFmtId=\"22\"/></cellStyleXfs>"
                        + "<cellXfs><xf numFmtId=\"0\"/><xf numFmtId=\"22\"/><xf numFmtId=\"164\"/></cellXfs></styleSheet>");
        parts.put(
                "xl/sharedStrings.xml",
                "<sst " + MAIN + "><si><t>Time</t></si><si><r><t>Core</t></r><r><t> °C</t></r></si></sst>");
        parts.put(
                "xl/worksheets/sheet1.xml", "<worksheet " + MAIN + "><sheetData>" + rows + "</sheetData></worksheet>");
        return parts;
    }

    private static final String ROWS =
            """
            <row r="3"><c r="A3" t="s"><v>0</v></c><c r="C3" t="s"><v>1</v></c></row>
            <row r="4"><c r="A4" s="1"><v>48000.3333333333</v></c><c r="C4"><v>54.400000000000006</v></c></row>
            <row r="5"><c r="A5" s="2"><v>48000.3340277778</v></c><c r="C5"><v>54.5</v></c></row>
            <row r="6"><c r="A6" s="2"><v>48000.3347222222</v></c></row>
            """;

    @Test
    void aWorkbooksTypedDatesAreTakenAsTyped() throws IOException {
        ProbeLog log = Logs.read(zip(workbook(ROWS)), Logs.zone("UTC"));
        assertThat(Logs.names(log)).containsExactly("Core");
        assertThat(Logs.instant(log, 0)).isEqualTo("2031-06-01T08:00:00Z");
        assertThat(Logs.instant(log, 1)).isEqualTo("2031-06-01T08:01:00Z");
        assertThat(log.celsius(0, 0)).isCloseTo(54.4, within(1e-12));
        assertThat(log.celsius(0, 2)).isNaN();
        assertThat(log.line(0)).as("the sheet's own row number").isEqualTo(4);
    }

    @Test
    void anOpenDocumentSheetIsReadAlike() throws IOException {
        String row =
                "<table:table-row><table:table-cell office:value-type=\"date\" office:date-value=\"2031-06-01T08:0%d:00\">"
                        + "<text:p>6/1/31</text:p></table:table-cell><table:table-cell office:value-type=\"float\""
                        + " office:value=\"54.%d\"><text:p>54,%d</text:p></table:table-cell>"
                        + "<table:table-cell table:number-columns-repeated=\"1022\"/></table:table-row>";
        String content = "<office:document-content xmlns:office=\"urn:oasis:names:tc:opendocument:xmlns:office:1.0\""
                + " xmlns:table=\"urn:oasis:names:tc:opendocument:xmlns:table:1.0\""
                + " xmlns:text=\"urn:oasis:names:tc:opendocument:xmlns:text:1.0\"><office:body><office:spreadsheet>"
                + "<table:table table:name=\"Log\"><table:table-row><table:table-cell><text:p>Time</text:p></table:table-cell>"
                + "<table:table-cell><text:p>Core °C</text:p></table:table-cell></table:table-row>"
                + row.formatted(0, 4, 4) + row.formatted(1, 5, 5)
                + "<table:table-row table:number-rows-repeated=\"1048000\"><table:table-cell/></table:table-row>"
                + "</table:table></office:spreadsheet></office:body></office:document-content>";
        ProbeLog log = Logs.read(zip(Map.of("content.xml", content)), Logs.zone("UTC"));
        assertThat(log.rows()).isEqualTo(2);
        assertThat(Logs.instant(log, 1)).isEqualTo("2031-06-01T08:01:00Z");
        assertThat(Logs.readings(log, 0)).containsExactly(54.4, 54.5);
    }

    @Test
    void severalSheetsWithReadingsAreRefused() throws IOException {
        Map<String, String> parts = workbook(ROWS);
        parts.put("xl/worksheets/sheet2.xml", parts.get("xl/worksheets/sheet1.xml"));
        assertThat(Logs.refused(zip(parts), Logs.zone("UTC")).found()).contains("2 sheets");
    }

    @Test
    void aReferenceOutOfTheDocumentIsNotFollowed() throws IOException {
        Map<String, String> parts = workbook(ROWS);
        parts.put(
                "xl/sharedStrings.xml",
                "<!DOCTYPE sst [<!ENTITY x SYSTEM \"file:///etc/passwd\">]><sst " + MAIN
                        + "><si><t>&x;</t></si><si><t>Core</t></si></sst>");
        assertThat(Logs.refused(zip(parts), Logs.zone("UTC")).getMessage()).doesNotContain("root:");
    }

    @Test
    void otherArchivesAndDamagedSheetsAreRefused() throws IOException {
        assertThat(Logs.refused(zip(Map.of("a.txt", "x")), Logs.NONE).found()).contains("ZIP");
        byte[] whole = zip(workbook(ROWS));
        for (int cut = 5; cut < whole.length; cut += 37) {
            try {
                LogReader.read(SourceFile.of("log.xlsx", Arrays.copyOf(whole, cut)), Logs.zone("UTC"));
            } catch (UnreadableInputException refused) {
                assertThat(refused.remedy()).isNotBlank();
            }
        }
    }
}
