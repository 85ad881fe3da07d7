package org.holdproof.core.log.reading;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** The sheets of an Office Open XML workbook (ECMA-376, part 1, section 18). */
final class WorkbookSheets {
    private static final long DAY_MILLIS = 86_400_000;
    /** The built-in formats of dates and times (ECMA-376, part 1, section 18.8.30). */
    private static final Map<Integer, String> BUILT_IN = Map.ofEntries(
            Map.entry(14, "m/d/y"),
            Map.entry(15, "d-m-y"),
            Map.entry(16, "d-m"),
            Map.entry(17, "m-y"),
            Map.entry(18, "h:mm"),
            Map.entry(19, "h:mm:ss"),
            Map.entry(20, "h:mm"),
            Map.entry(21, "h:mm:ss"),
            Map.entry(22, "m/d/y h:mm"),
            Map.entry(45, "mm:ss"),
            Map.entry(46, "[h]:mm:ss"),
            Map.entry(47, "mm:ss"));

    private final Map<String, byte[]> parts;
    private final List<String> strings = new ArrayList<>();
    private final List<String> formats = new ArrayList<>();
    private boolean from1904;

    WorkbookSheets(Map<String, byte[]> parts) {
        this.parts = parts;
    }

    List<String> texts() throws XMLStreamException {
        readWorkbook();
        readStrings();
        readFormats();
        List<String> texts = new ArrayList<>();
        for (Map.Entry<String, byte[]> part : parts.entrySet()) {
            if (part.getKey().startsWith("xl/worksheets/")) {
                texts.add(sheet(part.getValue()));
            }
        }
        return texts;
    }

    private void readWorkbook() throws XMLStreamException {
        XMLStreamReader xml = SheetRows.xml(parts.getOrDefault("xl/workbook.xml", new byte[0]));
        while (xml.hasNext()) {
            if (xml.next() == XMLStreamConstants.START_ELEMENT
                    && xml.getLocalName().equals("workbookPr")) {
                from1904 = attribute(xml, "date1904")
                        .map(value -> value.equals("1") || value.equals("true"))
                        .orElse(false);
            }
        }
    }

    private void readStrings() throws XMLStreamException {
        byte[] part = parts.get("xl/sharedStrings.xml");
        if (part == null) {
            return;
        }
        XMLStreamReader xml = SheetRows.xml(part);
        StringBuilder text = new StringBuilder();
        while (xml.hasNext()) {
            int event = xml.next();
            if (event == XMLStreamConstants.START_ELEMENT && xml.getLocalName().equals("si")) {
                text.setLength(0);
            } else if (event == XMLStreamConstants.START_ELEMENT
                    && xml.getLocalName().equals("t")) {
                text.append(xml.getElementText());
            } else if (event == XMLStreamConstants.END_ELEMENT
                    && xml.getLocalName().equals("si")) {
                strings.add(text.toString());
            }
        }
    }

    private void readFormats() throws XMLStreamException {
        byte[] part = parts.get("xl/styles.xml");
        if (part == null) {
            return;
        }
        Map<Integer, String> codes = new HashMap<>(BUILT_IN);
        boolean cells = false;
        XMLStreamReader xml = SheetRows.xml(part);
        while (xml.hasNext()) {
            int event = xml.next();
            if (event == XMLStreamConstants.START_ELEMENT) {
                switch (xml.getLocalName()) {
                    case "numFmt" ->
                        codes.put(
                                Integer.parseInt(attribute(xml, "numFmtId").orElse("0")),
                                attribute(xml, "formatCode").orElse(""));
                    case "cellXfs" -> cells = true;
                    case "xf" -> {
                        if (cells) {
                            int id = Integer.parseInt(attribute(xml, "numFmtId").orElse("0"));
                            formats.add(codes.getOrDefault(id, ""));
                        }
                    }
                    default -> {
                        // the look of a cell
                    }
                }
            } else if (event == XMLStreamConstants.END_ELEMENT
                    && xml.getLocalName().equals("cellXfs")) {
                cells = false;
            }
        }
    }

    private String sheet(byte[] part) throws XMLStreamException {
        SheetRows rows = new SheetRows();
        XMLStreamReader xml = SheetRows.xml(part);
        int row = 0;
        int column = -1;
        String type = "n";
        String format = "";
        while (xml.hasNext()) {
            int event = xml.next();
            if (event == XMLStreamConstants.START_ELEMENT) {
                switch (xml.getLocalName()) {
                    case "row" -> {
                        row = attribute(xml, "r").map(Integer::parseInt).orElse(row + 1);
                        column = -1;
                    }
                    case "c" -> {
                        column = attribute(xml, "r").map(WorkbookSheets::column).orElse(column + 1);
                        type = attribute(xml, "t").orElse("n");
                        int style = attribute(xml, "s").map(Integer::parseInt).orElse(-1);
                        format = style >= 0 && style < formats.size() ? formats.get(style) : "";
                    }
                    case "v" -> rows.cell(column, value(xml.getElementText(), type, format));
                    case "t" -> rows.cell(column, xml.getElementText());
                    default -> {
                        // formulas and the like
                    }
                }
            } else if (event == XMLStreamConstants.END_ELEMENT
                    && xml.getLocalName().equals("row")) {
                rows.endRow(row);
            }
        }
        return rows.text();
    }

    private String value(String written, String type, String format) {
        return switch (type) {
            case "s" -> strings.get(Integer.parseInt(written.strip()));
            case "n" -> isTime(format) ? time(Double.parseDouble(written), format) : SheetRows.figure(written.strip());
            case "e" -> "error";
            default -> written;
        };
    }

    private static String bare(String format) {
        return format.replaceAll("\"[^\"]*\"|\\\\.|_.|\\*.", "")
                .replaceAll("\\[(?!h+\\]|m+\\]|s+\\])[^\\]]*\\]", "")
                .toLowerCase(Locale.ROOT);
    }

    private static boolean isTime(String format) {
        return bare(format).split(";", 2)[0].matches(".*[ymdhs].*");
    }

    private String time(double serial, String format) {
        String bare = bare(format).split(";", 2)[0];
        long millis = Math.round(serial * DAY_MILLIS);
        if (bare.contains("[")) {
            long seconds = Math.round(millis / 1000.0);
            return String.format(Locale.ROOT, "%d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60);
        }
        LocalDate zero = from1904 ? LocalDate.of(1904, 1, 1) : LocalDate.of(1899, 12, 30);
        LocalDateTime moment =
                zero.atStartOfDay().plusNanos(millis % DAY_MILLIS * 1_000_000).plusDays(millis / DAY_MILLIS);
        boolean day = bare.matches(".*[yd].*");
        boolean hour = bare.matches(".*[hs].*");
        if (!day) {
            return DateTimeFormatter.ofPattern("HH:mm:ss.SSS", Locale.ROOT).format(moment);
        }
        return hour || !moment.toLocalTime().equals(LocalTime.MIDNIGHT)
                ? DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss.SSS", Locale.ROOT)
                        .format(moment)
                : DateTimeFormatter.ofPattern("yyyy-MM-dd", Locale.ROOT).format(moment);
    }

    /** The column of a cell's reference such as {@code AB12}, counted from 0. */
    private static int column(String reference) {
        int column = 0;
        for (int i = 0; i < reference.length() && Character.isLetter(reference.charAt(i)); i++) {
            column = column * 26 + Character.toUpperCase(reference.charAt(i)) - 'A' + 1;
        }
        return column - 1;
    }

    private static Optional<String> attribute(XMLStreamReader xml, String name) {
        return Optional.ofNullable(xml.getAttributeValue(null, name));
    }
}
