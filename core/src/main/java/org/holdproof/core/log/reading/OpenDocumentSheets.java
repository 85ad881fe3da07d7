package org.holdproof.core.log.reading;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** The sheets of an OpenDocument spreadsheet (ISO/IEC 26300-1, section 9). */
final class OpenDocumentSheets {
    private static final int MOST_REPEATED = 64;

    private OpenDocumentSheets() {}

    static List<String> texts(byte[] content) throws XMLStreamException {
        List<String> texts = new ArrayList<>();
        XMLStreamReader xml = SheetRows.xml(content);
        while (xml.hasNext()) {
            if (xml.next() == XMLStreamConstants.START_ELEMENT
                    && xml.getLocalName().equals("table")) {
                texts.add(sheet(xml));
            }
        }
        return texts;
    }

    private static String sheet(XMLStreamReader xml) throws XMLStreamException {
        SheetRows rows = new SheetRows();
        int row = 0;
        int repeated = 1;
        int column = 0;
        while (xml.hasNext()) {
            int event = xml.next();
            if (event == XMLStreamConstants.END_ELEMENT && xml.getLocalName().equals("table")) {
                return rows.text();
            }
            if (event == XMLStreamConstants.START_ELEMENT && xml.getLocalName().equals("table-row")) {
                repeated = attribute(xml, "number-rows-repeated")
                        .map(Integer::parseInt)
                        .orElse(1);
                column = 0;
            } else if (event == XMLStreamConstants.START_ELEMENT
                    && (xml.getLocalName().equals("table-cell")
                            || xml.getLocalName().equals("covered-table-cell"))) {
                int times = attribute(xml, "number-columns-repeated")
                        .map(Integer::parseInt)
                        .orElse(1);
                String cell = cell(xml);
                for (int i = 0; i < Math.min(times, MOST_REPEATED) && !cell.isEmpty(); i++) {
                    rows.cell(column + i, cell);
                }
                column += times;
            } else if (event == XMLStreamConstants.END_ELEMENT
                    && xml.getLocalName().equals("table-row")) {
                row += repeated;
                if (rows.column() > 0) {
                    rows.endRow(row);
                }
            }
        }
        return rows.text();
    }

    /** What is typed where a type is given, otherwise what is shown; leaves the reader behind the cell. */
    private static String cell(XMLStreamReader xml) throws XMLStreamException {
        String name = xml.getLocalName();
        Optional<String> type = attribute(xml, "value-type");
        Optional<String> typed =
                switch (type.orElse("")) {
                    case "float", "percentage", "currency" ->
                        attribute(xml, "value").map(SheetRows::figure);
                    case "date" -> attribute(xml, "date-value");
                    case "time" -> attribute(xml, "time-value").map(OpenDocumentSheets::duration);
                    default -> Optional.empty();
                };
        StringBuilder shown = new StringBuilder();
        int event = xml.next();
        while (!(event == XMLStreamConstants.END_ELEMENT && xml.getLocalName().equals(name))) {
            if (event == XMLStreamConstants.CHARACTERS) {
                shown.append(xml.getText());
            }
            event = xml.next();
        }
        return typed.orElse(shown.toString().strip());
    }

    private static String duration(String written) {
        long seconds = Duration.parse(written).toSeconds();
        return String.format(Locale.ROOT, "%02d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60);
    }

    /** An attribute by its local name, whatever its namespace. */
    private static Optional<String> attribute(XMLStreamReader xml, String name) {
        for (int i = 0; i < xml.getAttributeCount(); i++) {
            if (xml.getAttributeLocalName(i).equals(name)) {
                return Optional.of(xml.getAttributeValue(i));
            }
        }
        return Optional.empty();
    }
}
