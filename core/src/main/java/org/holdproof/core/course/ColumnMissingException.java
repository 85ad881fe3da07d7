package org.holdproof.core.course;

import java.util.List;

/** The batch record names a column the log does not have. The message is for the person at the desk. */
public final class ColumnMissingException extends Exception {

    /**
     * @param file the log's file name
     * @param wanted the column the record names
     * @param found the columns the log has
     */
    public ColumnMissingException(String file, String wanted, List<String> found) {
        super(file + ": no temperature column named \"" + wanted + "\"; found "
                + String.join(", ", found.stream().map(name -> '"' + name + '"').toList())
                + ". Name one of these under columns in the batch record.");
    }
}
