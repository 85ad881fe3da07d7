package org.holdproof.core.log;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * What became of a log file's rows.
 *
 * @param fileName the file's name
 * @param rowsInFile the rows below its headings that say something
 * @param rowsRead the instants read from them
 * @param leftOut how many rows were left out, by the reason in words
 */
public record LogContents(String fileName, long rowsInFile, long rowsRead, Map<String, Long> leftOut) {
    public LogContents {
        leftOut = Collections.unmodifiableMap(new LinkedHashMap<>(leftOut));
    }

    /** In one line: {@code cook.csv: 912 rows in the file, 910 read, 2 left out (2 without a time)}. */
    public String words() {
        long left = leftOut.values().stream().mapToLong(Long::longValue).sum();
        return fileName + ": " + rowsInFile + (rowsInFile == 1 ? " row" : " rows") + " in the file, " + rowsRead
                + " read"
                + (left == 0
                        ? ", none left out"
                        : ", " + left + " left out ("
                                + leftOut.entrySet().stream()
                                        .map(reason -> reason.getValue() + " " + reason.getKey())
                                        .collect(Collectors.joining(", "))
                                + ")");
    }
}
