package org.holdproof.core.log.reading;

import java.io.ByteArrayInputStream;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** The rows of one sheet on their way to text, each on the line of its own number. */
final class SheetRows {
    private static final int MOST_COLUMNS = 4_096;
    private static final int MOST_ROWS = 1 << 20;
    private static final double LARGEST = 1e15;
    private static final MathContext AS_SHOWN = new MathContext(15);

    private final StringBuilder text = new StringBuilder();
    private final List<String> cells = new ArrayList<>();
    private int rows;

    /** An XML reader that follows no reference out of the document. */
    static XMLStreamReader xml(byte[] bytes) throws XMLStreamException {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, true);
        return factory.createXMLStreamReader(new ByteArrayInputStream(bytes));
    }

    /** Puts a cell into a column counted from 0. */
    void cell(int column, String content) {
        if (column < 0 || column >= MOST_COLUMNS) {
            throw new Refusal(
                    rows + 1L, 0, "more than " + MOST_COLUMNS + " columns", "a log", "Export the temperatures only.");
        }
        while (cells.size() <= column) {
            cells.add("");
        }
        cells.set(column, content);
    }

    int column() {
        return cells.size();
    }

    /** Ends the row of this number, counted from 1. */
    void endRow(int number) {
        if (number > MOST_ROWS) {
            throw new Refusal(number, 0, "more than " + MOST_ROWS + " rows", "a log", "Split the sheet by days.");
        }
        while (rows < number - 1) {
            text.append('\n');
            rows++;
        }
        for (int i = 0; i < cells.size(); i++) {
            text.append(i > 0 ? ";" : "");
            String cell = cells.get(i);
            boolean quoted = cell.indexOf(';') >= 0 || cell.indexOf('"') >= 0 || cell.indexOf('\n') >= 0;
            text.append(
                    quoted ? '"' + cell.replace("\"", "\"\"").replace('\n', ' ').replace('\r', ' ') + '"' : cell);
        }
        text.append('\n');
        rows++;
        cells.clear();
    }

    int rows() {
        return rows;
    }

    /** A figure as a sheet shows it, to 15 digits. */
    static String figure(String written) {
        double value = Double.parseDouble(written);
        return Math.abs(value) < LARGEST
                ? new BigDecimal(value).round(AS_SHOWN).stripTrailingZeros().toPlainString()
                : written;
    }

    String text() {
        return text.toString();
    }
}
