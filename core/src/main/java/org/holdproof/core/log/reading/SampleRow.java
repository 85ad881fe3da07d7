package org.holdproof.core.log.reading;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;

/**
 * One of the first rows of a file, as cells.
 *
 * @param line the line it starts in, counted from 1
 * @param cells its cells without blanks at their ends
 */
record SampleRow(long line, List<String> cells) {
    private static final int MOST_ROWS = 400;

    SampleRow {
        cells = List.copyOf(cells);
    }

    /** The rows of the start of a file under a separator, blank lines left out; as far as they can be read. */
    static List<SampleRow> rows(String head, char separator) {
        List<SampleRow> rows = new ArrayList<>();
        CsvReader<CsvRecord> reader = CsvReader.builder()
                .fieldSeparator(separator)
                .commentStrategy(CommentStrategy.NONE)
                .allowUnclosedQuote(true)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .ofCsvRecord(head);
        try {
            Iterator<CsvRecord> records = reader.iterator();
            while (rows.size() < MOST_ROWS && records.hasNext()) {
                CsvRecord csvRecord = records.next();
                List<String> cells = new ArrayList<>();
                for (String field : csvRecord.getFields()) {
                    cells.add(bare(strip(field)));
                }
                SampleRow row = new SampleRow(csvRecord.getStartingLineNumber(), cells);
                if (row.width() > 0) {
                    rows.add(row);
                }
            }
        } catch (CsvParseException stray) {
            return rows;
        }
        return rows;
    }

    /** A cell in quotation marks with blanks around them comes with its quotation marks. */
    private static String bare(String cell) {
        boolean marked = cell.length() > 1 && cell.charAt(0) == '"' && cell.charAt(cell.length() - 1) == '"';
        return marked ? strip(cell.substring(1, cell.length() - 1)) : cell;
    }

    static String strip(String text) {
        int from = 0;
        int end = text.length();
        while (from < end && TemperatureCell.isBlank(text.charAt(from))) {
            from++;
        }
        while (from < end && TemperatureCell.isBlank(text.charAt(end - 1))) {
            end--;
        }
        return text.substring(from, end);
    }

    /** How many cells there are up to the last that is not blank. */
    int width() {
        int width = cells.size();
        while (width > 0 && cells.get(width - 1).isEmpty()) {
            width--;
        }
        return width;
    }

    /** The cell of a column counted from 0; empty where the row has none. */
    String cell(int column) {
        return column < cells.size() ? cells.get(column) : "";
    }

    /** Whether it is a remark: its first cell starts with a number sign and says something. */
    boolean isRemark() {
        String first = cell(0);
        return first.length() > 1 && first.charAt(0) == '#';
    }
}
