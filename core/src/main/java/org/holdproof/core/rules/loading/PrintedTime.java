package org.holdproof.core.rules.loading;

import org.holdproof.core.input.CsvRow;
import org.holdproof.core.input.UnreadableInputException;

/** The check of a time as printed against the seconds beside it. */
final class PrintedTime {
    private PrintedTime() {}

    /**
     * A plain printed time, {@code 112 min}, must be the seconds beside it; a print in words or with a sign
     * ({@code <1 s}) leaves the seconds to the row.
     */
    static void require(CsvRow row, String printedColumn, String secondsColumn) throws UnreadableInputException {
        String[] words = row.required(printedColumn).split(" ", -1);
        if (words.length != 2 || !CsvRow.isPlainNumber(words[0])) {
            return;
        }
        double unit =
                switch (words[1]) {
                    case "s" -> 1;
                    case "min" -> 60;
                    case "h" -> 3600;
                    default ->
                        throw row.fault(
                                printedColumn, "a time in s, min or h", "Write a figure, a blank and the unit.");
                };
        double printed = Double.parseDouble(words[0]) * unit;
        double seconds = row.number(secondsColumn, 0, Double.MAX_VALUE);
        if (!(Math.abs(printed - seconds) <= 1e-6 * Math.max(1, printed))) {
            throw row.fault(
                    secondsColumn,
                    "the printed time " + row.text(printedColumn) + " in seconds",
                    "Correct one of the two.");
        }
    }
}
