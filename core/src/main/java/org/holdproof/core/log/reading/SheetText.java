package org.holdproof.core.log.reading;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import javax.xml.stream.XMLStreamException;

/**
 * The readings of a spreadsheet (Office Open XML, ECMA-376; OpenDocument, ISO/IEC 26300) as text divided by semicolons, a
 * line a row. Dates and times are taken as they are typed. Both formats are read here, with the JDK's own ZIP and XML
 * readers, because a log needs one table of cells and nothing else of an office suite.
 */
final class SheetText {
    private static final long MOST_BYTES = 256L << 20;
    private static final int HEAD = 1 << 17;

    private SheetText() {}

    /**
     * The text of the only sheet with readings; empty where the file is no spreadsheet.
     *
     * @throws Refusal if it is damaged or too large, or several of its sheets hold readings
     */
    static Optional<byte[]> of(byte[] file) {
        if (file.length < 4 || file[0] != 'P' || file[1] != 'K' || file[2] != 3 || file[3] != 4) {
            return Optional.empty();
        }
        try {
            NavigableMap<String, byte[]> parts = parts(file);
            List<String> sheets;
            if (parts.containsKey("xl/workbook.xml")) {
                sheets = new WorkbookSheets(parts).texts();
            } else if (parts.containsKey("content.xml")) {
                sheets = OpenDocumentSheets.texts(parts.getOrDefault("content.xml", new byte[0]));
            } else {
                return Optional.empty();
            }
            return Optional.of(only(sheets).getBytes(StandardCharsets.UTF_8));
        } catch (XMLStreamException
                | IOException
                | NumberFormatException
                | IndexOutOfBoundsException
                | DateTimeException damaged) {
            throw new Refusal(
                    0,
                    0,
                    "a damaged spreadsheet",
                    "a spreadsheet that opens",
                    "Open it and save it again, or save the sheet with the readings as CSV.");
        }
    }

    private static String only(List<String> sheets) {
        List<String> withReadings = new ArrayList<>();
        for (String sheet : sheets) {
            try {
                Table.find(sheet.substring(0, Math.min(HEAD, sheet.length())));
                withReadings.add(sheet);
            } catch (Refusal none) {
                // a sheet of something else
            }
        }
        if (withReadings.size() > 1) {
            throw new Refusal(
                    0,
                    0,
                    withReadings.size() + " sheets with readings",
                    "one",
                    "Save each as a file of its own, and list them under \"logs\" in the batch record.");
        }
        return withReadings.isEmpty() ? (sheets.isEmpty() ? "" : sheets.get(0)) : withReadings.get(0);
    }

    private static NavigableMap<String, byte[]> parts(byte[] file) throws IOException {
        TreeMap<String, byte[]> parts = new TreeMap<>();
        long left = MOST_BYTES;
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(file))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                String name = entry.getName();
                boolean wanted = name.equals("content.xml")
                        || name.equals("xl/workbook.xml")
                        || name.equals("xl/styles.xml")
                        || name.equals("xl/sharedStrings.xml")
                        || name.matches("xl/worksheets/[^/]+\\.xml");
                ByteArrayOutputStream bytes = new ByteArrayOutputStream();
                byte[] buffer = new byte[1 << 14];
                for (int count = zip.read(buffer); count >= 0; count = zip.read(buffer)) {
                    left -= count;
                    if (left < 0) {
                        throw new Refusal(
                                0,
                                0,
                                "a spreadsheet of more than " + (MOST_BYTES >> 20) + " MiB",
                                "a log",
                                "Save the sheet with the readings as CSV.");
                    }
                    if (wanted) {
                        bytes.write(buffer, 0, count);
                    }
                }
                if (wanted) {
                    parts.put(name, bytes.toByteArray());
                }
            }
        } catch (ZipException damaged) {
            throw new IOException(damaged);
        }
        return parts;
    }
}
