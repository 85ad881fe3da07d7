package org.holdproof.core.batch;

/**
 * Where a value of a batch record stands.
 *
 * @param file the file's name as the user gave it
 * @param pointer its JSON pointer (RFC 6901)
 * @param line counted from 1
 * @param column the character of the line, counted from 1
 */
record Place(String file, String pointer, int line, int column) {

    UnreadableBatchException fault(String found, String expected, String remedy) {
        return new UnreadableBatchException(file, line, column, pointer, found, expected, remedy);
    }

    /** The same place, for a member that should be there and is not. */
    Place member(String name) {
        return new Place(file, pointer + "/" + escaped(name), line, column);
    }

    Place item(int index) {
        return new Place(file, pointer + "/" + index, line, column);
    }

    Place at(int newLine, int newColumn) {
        return new Place(file, pointer, newLine, newColumn);
    }

    private static String escaped(String name) {
        return name.replace("~", "~0").replace("/", "~1");
    }
}
